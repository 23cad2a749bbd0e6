/**
 * Runs one field at the pace it is asked for, in short slices, and sends its moments: one with a lead first on the lead's coarse
 * grid, so that blood is soon seen to flow, then on its own. Knows no thread; the worker lends it one.
 */

import { entryAt, present } from "../sim/checked/present.ts";
import type { FieldShape, FlowField } from "../sim/flow-field/flow-field.ts";
import { buildField, type FieldSession } from "../sim/flow-field/index.ts";
import { type Slice, slices } from "./field-slices.ts";
import type { FromField, ToField } from "./worker-messages.ts";

/** s of wall clock between two sent moments */
const MOMENT = 1 / 30;
/** s of wall clock within which it is heard from, whatever happens */
const ALIVE = 0.4;
/** s of wall clock between two looks of a field that is ahead, and of one that is asked for nothing */
const AHEAD = 0.006;
const ASLEEP = 0.15;
/** s of blood time that a field may fall behind before it gives them up */
const BEHIND = 0.1;
/** s of blood time computed at once after new walls, so that the first picture already flows */
const WARM = 0.04;
/** m/s: blood never runs so fast here; a field that says so has failed and restarts from rest */
const IMPOSSIBLE = 12;
/** Fresh starts that one geometry is granted. */
const MAX_STARTS = 3;

export interface RunnerOptions {
  /** s, wall clock */
  readonly clock: () => number;
  readonly post: (message: FromField, transfer: Transferable[]) => void;
}

export interface FieldRunner {
  hear(message: ToField): void;
  /** Computes one slice; answers the s that may pass until the next, if nothing is heard before. */
  work(): number;
  /** The same in parts, for a computer elsewhere: what is to be advanced now, and by how many s of blood time. */
  due(): { readonly field: FieldSession | null; readonly seconds: number };
  /** It was advanced. */
  passed(field: FieldSession, slice: Slice): void;
  /** Sends what there is to send; answers as `work`. */
  rest(): number;
}

type Build = Extract<ToField, { kind: "build" }>;

export function fieldRunner(options: RunnerOptions): FieldRunner {
  const { advance, ...parts } = runnerParts(options);
  return {
    ...parts,
    work() {
      const { field, seconds } = parts.due();
      if (field && seconds > 0) parts.passed(field, advance(field, seconds));
      return parts.rest();
    },
  };
}

function runnerParts({ clock, post }: RunnerOptions) {
  const solver = ownedSession();
  const pace = pacer(clock);
  const gauge = slices(clock);
  let boundary: Extract<ToField, { kind: "boundary" }>["boundary"] | undefined;
  let pending: Build | null = null;
  let current: Build | null = null;
  let starts = 0;
  let lastMoment = Number.NEGATIVE_INFINITY;
  let sentTime = Number.NEGATIVE_INFINITY;
  const spare = spareArrays();
  const { say, silent } = voice(clock, post);
  /** of the finer grid, until its first moment takes it along */
  let refined: FieldShape | undefined;

  const build = (what: Build) => {
    const refines = solver.isCoarse && what === current;
    try {
      const rebuilt = solver.build(what) === "rebuilt";
      if (rebuilt) pace.fromRest();
      if (rebuilt || refines) gauge.forget();
      if (boundary) solver.session?.setBoundary(boundary);
    } catch (error) {
      solver.drop();
      say({ kind: "refused", shapeId: what.shapeId, reason: String(error) });
      return;
    }
    current = what;
    spare.forget();
    pace.warm();
    sentTime = Number.NEGATIVE_INFINITY;
    const shape = present(solver.session).shape();
    refined = refines ? shape : undefined;
    if (!refined) say({ kind: "built", shapeId: what.shapeId, shape, coarse: solver.isCoarse });
  };

  const send = (field: FieldSession, { shapeId }: Build) => {
    const moment: FlowField = { ...field.read(spare.take()), shapeId, time: pace.time };
    if (!possible(moment)) {
      again(shapeId);
      return;
    }
    sentTime = pace.time;
    lastMoment = clock();
    say({ kind: "field", field: moment, capable: gauge.ability ?? 0, ...(refined && { shape: refined }) });
    refined = undefined;
    if (solver.isCoarse) pending ??= current;
    const means = field.takeMeans();
    if (means) say({ kind: "means", means: { ...means, shapeId } });
  };

  /** From rest, for the same walls; given up after a few times. */
  const again = (shapeId: number) => {
    solver.release();
    if (++starts < MAX_STARTS) pending ??= current;
    else say({ kind: "refused", shapeId, reason: "the flow could not be computed" });
  };

  const due = () => {
    const next = pending;
    pending = null;
    if (next) build(next);
    pace.elapse();
    // Until something flows in there is nothing to compute.
    return { field: solver.session, seconds: boundary ? pace.due : 0 };
  };

  const rest = () => {
    const session = boundary ? solver.session : null;
    if (session && current && pace.time > sentTime && clock() - lastMoment >= MOMENT) send(session, current);
    if (silent() > ALIVE) say({ kind: "alive" });
    if (session && pace.due > 0) return 0;
    return session && pace.runs ? AHEAD : ASLEEP;
  };

  return {
    hear(message: ToField) {
      switch (message.kind) {
        case "build":
          // Several may wait while a slice runs: only the last one counts.
          pending = message;
          starts = 0;
          break;
        case "boundary":
          boundary = message.boundary;
          if (!pending) solver.session?.setBoundary(boundary);
          break;
        case "run":
          pace.run(message.rate);
          break;
        case "return":
          spare.give(message.arrays);
          break;
      }
    },
    advance: gauge.advance,
    due,
    passed(field: FieldSession, slice: Slice) {
      pace.passed(slice.passed);
      gauge.note(field, slice);
    },
    rest,
  };
}

/** Says things to the page; `silent`: s since the last one. */
function voice(clock: () => number, post: RunnerOptions["post"]) {
  let last = clock();
  return {
    say(message: FromField) {
      last = clock();
      post(message, transfersOf(message));
    },
    silent: () => clock() - last,
  };
}

/** Arrays that came back, all of one grid. */
function spareArrays() {
  const spare: Float32Array[] = [];
  return {
    take: () => spare.splice(0, 3),
    give(arrays: readonly Float32Array[]) {
      if (arrays[0]?.length === spare[0]?.length || spare.length === 0) spare.push(...arrays);
    },
    forget() {
      spare.length = 0;
    },
  };
}

/** The one field session; the same pathway with other sizes keeps its flow, another one starts at rest. */
function ownedSession() {
  let session: FieldSession | null = null;
  let builtFor = "";
  let coarse = false;
  const drop = () => {
    session = null;
    builtFor = "";
    coarse = false;
  };
  return {
    get session() {
      return session;
    },
    /** Its grid is the lead's: the same order once more makes it as fine as was asked. */
    get isCoarse() {
      return coarse;
    },
    /** Throws where the walls leave no room for a flow. */
    build({ geometry, fluid, lead, ...grid }: Build): "reshaped" | "rebuilt" {
      const key = JSON.stringify([geometry.name, fluid]);
      if (session && key === builtFor) {
        session.reshape(geometry, grid);
        coarse = false;
        return "reshaped";
      }
      session?.release();
      session = buildField(
        geometry,
        fluid,
        lead ? { ...grid, cellsAcross: lead.cellsAcross, depth: "round", lead } : { ...grid, depth: "round" },
      );
      builtFor = key;
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

/** The field's own time, and how far the clock and the rate asked for want it to have come. */
function pacer(clock: () => number) {
  let time = 0;
  let goal = 0;
  let rate = 0;
  let last = clock();
  return {
    /** s of blood time */
    get time() {
      return time;
    },
    /** s of blood time still to be computed */
    get due() {
      return goal - time;
    },
    get runs() {
      return rate > 0;
    },
    run(next: number) {
      rate = next;
    },
    elapse() {
      const now = clock();
      const elapsed = Math.min(0.25, now - last);
      last = now;
      goal = Math.max(time - BEHIND, Math.min(goal + rate * elapsed, time + Math.max(BEHIND, WARM)));
    },
    passed(seconds: number) {
      time += seconds;
    },
    fromRest() {
      time = 0;
    },
    warm() {
      goal = time + WARM;
    },
  };
}

/** Arrays that go over to the page instead of being copied. */
function transfersOf(message: FromField): Transferable[] {
  const arrays =
    message.kind === "field"
      ? [message.field.u, message.field.v, message.field.pressure]
      : message.kind === "means"
        ? [message.means.speed, message.means.pressure, message.means.loss]
        : [];
  return arrays.map((array) => array.buffer as ArrayBuffer);
}

/** Every 7th cell suffices: a field that fails does so everywhere within a few steps. */
function possible({ u, v }: FlowField): boolean {
  for (let k = 0; k < u.length; k += 7) {
    if (!(Math.abs(entryAt(u, k)) < IMPOSSIBLE && Math.abs(entryAt(v, k)) < IMPOSSIBLE)) return false;
  }
  return true;
}
