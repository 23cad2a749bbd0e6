/** The field session that a runner owns. */
import { buildField, type FieldSession } from "../sim/flow-field/index.ts";
import type { ToField } from "./worker-messages.ts";

type Build = Extract<ToField, { kind: "build" }>;

/** One at a time; the same pathway with other sizes keeps its flow, another one starts at rest. */
export function ownedSession() {
  let session: FieldSession | null = null;
  let builtFor = "";
  const drop = () => {
    session = null;
    builtFor = "";
  };
  const keyOf = ({ geometry, fluid }: Build) => JSON.stringify([geometry.name, fluid]);
  return {
    get session() {
      return session;
    },
    /** Its flow goes on in what is to be built. */
    fits: (what: Build) => session !== null && keyOf(what) === builtFor,
    /** As ordered, but on a grid of so many `cellsAcross`. Throws where the walls leave no room for a flow. */
    build(what: Build, cellsAcross: number): void {
      const { geometry, fluid, lead, soundSteps } = what;
      const grid = { cellsAcross, ...(soundSteps && { soundSteps }) };
      if (session && keyOf(what) === builtFor) {
        session.reshape(geometry, grid);
        return;
      }
      session?.release();
      session = buildField(geometry, fluid, { ...lead, ...grid, depth: "round" });
      builtFor = keyOf(what);
    },
    drop,
    release() {
      session?.release();
      drop();
    },
  };
}
