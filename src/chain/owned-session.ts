/** The field session that a runner owns. */
import { buildField, type FieldSession } from "../sim/flow-field/index.ts";
import type { ToField } from "./worker-messages.ts";

type Build = Extract<ToField, { kind: "build" }>;

/** One at a time; the same pathway with other sizes keeps its flow, another one starts at rest. */
export function ownedSession() {
  let session: FieldSession | null = null;
  let builtFor = "";
  let coarse = false;
  const drop = () => {
    session = null;
    builtFor = "";
    coarse = false;
  };
  const keyOf = ({ geometry, fluid }: Build) => JSON.stringify([geometry.name, fluid]);
  return {
    get session() {
      return session;
    },
    /** Its grid is the lead's: the same order once more makes it as fine as was asked. */
    get isCoarse() {
      return coarse;
    },
    /** Its flow goes on in what is to be built. */
    fits: (what: Build) => session !== null && keyOf(what) === builtFor,
    /** Throws where the walls leave no room for a flow. */
    build(what: Build): "reshaped" | "rebuilt" {
      const { geometry, fluid, lead, ...grid } = what;
      if (session && keyOf(what) === builtFor) {
        session.reshape(geometry, grid);
        coarse = false;
        return "reshaped";
      }
      session?.release();
      session = buildField(geometry, fluid, {
        ...grid,
        depth: "round",
        ...(lead && { cellsAcross: lead.cellsAcross, lead: lead.seconds }),
      });
      builtFor = keyOf(what);
      coarse = lead !== undefined;
      return "rebuilt";
    },
    drop,
    release() {
      session?.release();
      drop();
    },
  };
}
