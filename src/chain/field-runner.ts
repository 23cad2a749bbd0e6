/**
 * Runs one field at the pace it is asked for, in short slices, and sends its moments: other walls first on a coarse grid, so that
 * blood is soon seen to flow between them, then on its own. Knows no thread; the worker lends it one.
 */

import { present } from "../sim/checked/present.ts";
import type { BoundaryConditions } from "../sim/flow-field/flow-field.ts";
import type { FieldSession } from "../sim/flow-field/index.ts";
import { fieldMoments } from "./field-moments.ts";
import { type Slice, slices } from "./field-slices.ts";
import { gridClimb } from "./grid-climb.ts";
import { ownedSession } from "./owned-session.ts";
import type { FromField, ToField } from "./worker-messages.ts";

/** s of wall clock within which it is heard from, whatever happens */
const ALIVE = 0.4;
/** s of wall clock between two looks of a field that is ahead, and of one that is asked for nothing */
const AHEAD = 0.006;
const ASLEEP = 0.15;
/** s of blood time that a field may fall behind before it gives them up */
const BEHIND = 0.1;
/** s of blood time computed at once after new walls, so that the first picture already flows */
const WARM = 0.04;
/** Fresh starts that one geometry is granted. */
const MAX_STARTS = 3;

export interface RunnerOptions {
  /** s, wall clock */
  readonly clock: () => number;
  readonly post: (message: FromField, transfer: Transferable[]) => void;
  /** counts across between which the speed of this computer chooses; the usual ones when left out */
  readonly rungs?: readonly number[];
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
  const { advance, judge, ...parts } = runnerParts(options);
  return {
    ...parts,
    work() {
      const { field, seconds } = parts.due();
      const began = options.clock();
      const slice = field && seconds > 0 ? advance(field, seconds) : undefined;
      if (field && slice) {
        parts.passed(field, slice);
        judge(slice.passed, options.clock() - began);
      }
      return parts.rest();
    },
  };
}

function runnerParts({ clock, post, rungs }: RunnerOptions) {
  const solver = ownedSession();
  const pace = pacer(clock);
  const gauge = slices(clock);
  const moments = fieldMoments(clock);
  const grid = gridClimb(clock, rungs, (before, now, shape) => {
    gauge.regrid(before, now);
    moments.changed(shape);
  });
  let boundary: BoundaryConditions | undefined;
  let pending: Build | null = null;
  let current: Build | null = null;
  let starts = 0;
  const { say, silent, anew, built } = voice(clock, post);
  const build = (what: Build) => {
    pending = null;
    const again = solver.fits(what);
    const before = grid.runs;
    try {
      solver.build(what, grid.begin(what, again));
      gauge.regrid(again ? before : undefined, grid.runs);
      if (!again) pace.fromRest();
      if (boundary) solver.session?.setBoundary(boundary);
    } catch (error) {
      solver.drop();
      say({ kind: "refused", shapeId: what.shapeId, reason: String(error) });
      return;
    }
    current = what;
    pace.warm();
    moments.changed(undefined);
    // The same pathway's blood is seen to flow in its old walls until it does in the new ones.
    anew();
    if (!again || !boundary) built(what, present(solver.session), grid);
    if (!boundary) solver.session?.prepare();
  };

  const send = (field: FieldSession, order: Build) => {
    const moment = moments.take(field, order.shapeId, pace.time);
    if (!moment) {
      again(order.shapeId);
      return;
    }
    built(order, field, grid);
    say({ kind: "field", ...moment, capable: gauge.ability ?? 0, cellsAcross: grid.cellsAcross });
    grid.seen();
    const means = field.takeMeans();
    if (means) say({ kind: "means", means: { ...means, shapeId: order.shapeId } });
  };

  /** From rest, for the same walls; given up after a few times. */
  const again = (shapeId: number) => {
    solver.release();
    if (++starts < MAX_STARTS) pending ??= current;
    else say({ kind: "refused", shapeId, reason: "the flow could not be computed" });
  };

  const due = () => {
    if (pending) build(pending);
    pace.elapse();
    // Until something flows in there is nothing to compute.
    return { field: solver.session, seconds: boundary ? pace.due : 0 };
  };

  const rest = () => {
    if (boundary && solver.session && current && moments.due(pace.time)) send(solver.session, current);
    if (silent() > ALIVE) say({ kind: "alive" });
    // A flow that broke down has been released by now, and begins anew.
    const session = boundary ? solver.session : null;
    if (pending || (session && (grid.lay(session) || pace.due > 0))) return 0;
    return session && pace.runs ? AHEAD : ASLEEP;
  };

  return {
    judge: grid.judge,
    hear(message: ToField) {
      switch (message.kind) {
        case "build":
          // Several may wait while a slice runs: only the last one counts.
          pending = message;
          starts = 0;
          break;
        case "boundary":
          boundary = message.boundary;
          grid.changed();
          if (!pending) solver.session?.setBoundary(boundary);
          break;
        case "run":
          pace.run(message.rate);
          grid.ask(message.seen ?? 0);
          break;
        case "return":
          moments.give(message.arrays);
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

/** Says things to the page, what is built once; `silent`: s since the last one. */
function voice(clock: () => number, post: RunnerOptions["post"]) {
  let last = clock();
  let told = false;
  const say = (message: FromField) => {
    last = clock();
    post(message, transfersOf(message));
  };
  return {
    say,
    silent: () => clock() - last,
    anew() {
      told = false;
    },
    built(
      { shapeId }: Build,
      field: FieldSession,
      { runs, cellsAcross }: { runs: number; cellsAcross: number },
    ) {
      if (told) return;
      told = true;
      say({ kind: "built", shapeId, shape: field.shape(), coarse: runs < cellsAcross });
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
