/** Runs one field at the pace it is asked for, in short slices, and sends its moments. Knows no thread; the worker lends it one. */

import type { FlowField } from "../sim/field/flow-field.ts";
import { buildField, type FieldSession } from "../sim/field/index.ts";
import type { FromField, ToField } from "./messages.ts";

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

export function fieldRunner({ clock, post }: RunnerOptions): FieldRunner {
  let session: FieldSession | null = null;
  let builtFor = "";
  let shapeId = -1;
  let pending: Extract<ToField, { kind: "build" }> | null = null;
  let drive: Extract<ToField, { kind: "drive" }>["drive"] | undefined;
  let rate = 0;
  let bloodTime = 0;
  let goal = 0;
  let lastWork = clock();
  let lastMoment = Number.NEGATIVE_INFINITY;
  let lastWord = clock();
  let sentTime = Number.NEGATIVE_INFINITY;
  /** blood seconds in a wall-clock second of computing */
  let ability: number | undefined;
  const spare: Float32Array[] = [];

  const say = (message: FromField, transfer: Transferable[] = []) => {
    lastWord = clock();
    post(message, transfer);
  };

  const build = ({ geometry, fluid, cellsAcross, shapeId: id }: Extract<ToField, { kind: "build" }>) => {
    // The same pathway with other sizes keeps its flow; another one starts at rest.
    const key = JSON.stringify([geometry.name, fluid, cellsAcross]);
    try {
      if (session && key === builtFor) session.reshape(geometry);
      else {
        session?.release();
        session = buildField(geometry, fluid, { cellsAcross, depth: "round" });
        bloodTime = 0;
        ability = undefined;
      }
      if (drive) session.drive(drive);
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
    // One step shows how many fit into the slice.
    let count = ability ? Math.max(1, Math.floor((ability * SLICE) / 4 / field.step)) : 1;
    while (passed < wanted && clock() - begin < SLICE) {
      count = Math.min(count, Math.max(1, Math.ceil((wanted - passed) / field.step)));
      passed += field.advance(count);
      steps += count;
    }
    const spent = clock() - begin;
    bloodTime += passed;
    if (spent <= 0) return;
    field.timed(steps, spent);
    ability = ability === undefined ? passed / spent : ability + FOLLOW * (passed / spent - ability);
  };

  const send = (field: FieldSession) => {
    const moment: FlowField = { ...field.read(spare.splice(0, 3)), shapeId, time: bloodTime };
    sentTime = bloodTime;
    lastMoment = clock();
    say(
      { kind: "field", field: moment, capable: ability ?? 0 },
      [moment.u, moment.v, moment.pressure].map((array) => array.buffer as ArrayBuffer),
    );
  };

  return {
    hear(message) {
      switch (message.kind) {
        case "build":
          // Several may wait while a slice runs: only the last one counts.
          pending = message;
          break;
        case "drive":
          drive = message.drive;
          if (!pending) session?.drive(drive);
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
