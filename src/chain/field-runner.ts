/** Runs one field at the pace it is asked for, in short slices, and sends its moments. Knows no thread; the worker lends it one. */

import type { FlowField } from "../sim/flow-field/flow-field.ts";
import { buildField, type FieldSession } from "../sim/flow-field/index.ts";
import type { FromField, ToField } from "./worker-messages.ts";

/** s of wall clock computed without listening */
const SLICE = 0.012;
/** s of wall clock between two sent moments */
const MOMENT = 1 / 30;
/** s of wall clock within which it is heard from, whatever happens */
const ALIVE = 0.4;
/** s of blood time that a field may fall behind before it gives them up */
const BEHIND = 0.1;
/** s of blood time computed at once after new walls, so that the first picture already flows */
const WARM = 0.04;
/** How quickly the measured ability follows, per slice. */
const FOLLOW = 0.1;
/** m/s: blood never runs so fast here; a field that says so has failed and starts anew from rest */
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
  /** Computes one slice; answers the s that may pass until the next. */
  work(): number;
}

type Build = Extract<ToField, { kind: "build" }>;

export function fieldRunner({ clock, post }: RunnerOptions): FieldRunner {
  let session: FieldSession | null = null;
  let builtFor = "";
  let shapeId = -1;
  let pending: Build | null = null;
  let boundary: Extract<ToField, { kind: "boundary" }>["boundary"] | undefined;
  let rate = 0;
  let bloodTime = 0;
  let goal = 0;
  let lastWork = clock();
  let lastMoment = Number.NEGATIVE_INFINITY;
  let lastWord = clock();
  let sentTime = Number.NEGATIVE_INFINITY;
  /** blood seconds in a wall-clock second of computing */
  let ability: number | undefined;
  /** s of wall clock for one step */
  let stepCost: number | undefined;
  let current: Build | null = null;
  let starts = 0;
  const spare: Float32Array[] = [];

  const say = (message: FromField, transfer: Transferable[] = []) => {
    lastWord = clock();
    post(message, transfer);
  };

  const build = ({ geometry, fluid, cellsAcross, shapeId: id }: Build) => {
    // The same pathway with other sizes keeps its flow; another one starts at rest.
    const key = JSON.stringify([geometry.name, fluid, cellsAcross]);
    try {
      if (session && key === builtFor) session.reshape(geometry);
      else {
        session?.release();
        session = buildField(geometry, fluid, { cellsAcross, depth: "round" });
        bloodTime = 0;
        ability = undefined;
        stepCost = undefined;
      }
      if (boundary) session.setBoundary(boundary);
    } catch (error) {
      session = null;
      builtFor = "";
      say({ kind: "refused", shapeId: id, reason: String(error) });
      return;
    }
    builtFor = key;
    shapeId = id;
    spare.length = 0;
    goal = bloodTime + WARM;
    sentTime = Number.NEGATIVE_INFINITY;
    const shape = session.shape();
    say({ kind: "built", shapeId, shape });
  };

  const advance = (field: FieldSession, wanted: number) => {
    const begin = clock();
    let steps = 0;
    let passed = 0;
    // A single step first shows how many fit into a quarter of the slice.
    const fit = stepCost ? Math.max(1, Math.floor(SLICE / 4 / stepCost)) : 1;
    while (passed < wanted && clock() - begin < SLICE) {
      const count = Math.min(fit, Math.max(1, Math.ceil((wanted - passed) / field.step)));
      passed += field.advance(count);
      steps += count;
    }
    const spent = clock() - begin;
    bloodTime += passed;
    if (spent <= 0) return;
    field.timed(steps, spent);
    stepCost = follow(stepCost, spent / steps);
    ability = follow(ability, passed / spent);
  };

  const send = (field: FieldSession) => {
    const moment: FlowField = { ...field.read(spare.splice(0, 3)), shapeId, time: bloodTime };
    if (!possible(moment)) {
      again();
      return;
    }
    sentTime = bloodTime;
    lastMoment = clock();
    say(
      { kind: "field", field: moment, capable: ability ?? 0 },
      [moment.u, moment.v, moment.pressure].map((array) => array.buffer as ArrayBuffer),
    );
    const means = field.takeMeans();
    if (!means) return;
    say(
      { kind: "means", means: { ...means, shapeId } },
      [means.speed, means.pressure, means.loss].map((array) => array.buffer as ArrayBuffer),
    );
  };

  /** From rest, for the same walls; given up after a few times. */
  const again = () => {
    session?.release();
    session = null;
    builtFor = "";
    if (++starts < MAX_STARTS) pending ??= current;
    else say({ kind: "refused", shapeId, reason: "the flow could not be computed" });
  };

  return {
    hear(message) {
      switch (message.kind) {
        case "build":
          // Several may wait while a slice runs: only the last one counts.
          pending = message;
          starts = 0;
          break;
        case "boundary":
          boundary = message.boundary;
          if (!pending) session?.setBoundary(boundary);
          break;
        case "run":
          rate = message.rate;
          break;
        case "return":
          if (message.arrays[0]?.length === spare[0]?.length || spare.length === 0)
            spare.push(...message.arrays);
          break;
      }
    },
    work() {
      if (pending) {
        const next = pending;
        pending = null;
        current = next;
        build(next);
      }
      const now = clock();
      const elapsed = Math.min(0.25, now - lastWork);
      lastWork = now;
      goal = Math.max(
        bloodTime - BEHIND,
        Math.min(goal + rate * elapsed, bloodTime + Math.max(BEHIND, WARM)),
      );
      if (session && goal > bloodTime) advance(session, goal - bloodTime);
      if (session && bloodTime > sentTime && clock() - lastMoment >= MOMENT) send(session);
      if (clock() - lastWord > ALIVE) say({ kind: "alive" });
      return session && goal > bloodTime ? 0 : 0.006;
    },
  };
}

const follow = (before: number | undefined, now: number): number =>
  before === undefined ? now : before + FOLLOW * (now - before);

/** Every 7th cell suffices: a field that fails does so everywhere within a few steps. */
function possible({ u, v }: FlowField): boolean {
  for (let k = 0; k < u.length; k += 7) {
    if (!(Math.abs(u[k]!) < IMPOSSIBLE && Math.abs(v[k]!) < IMPOSSIBLE)) return false;
  }
  return true;
}
