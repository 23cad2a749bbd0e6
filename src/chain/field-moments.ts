/** Reads a field's moments for the page, into arrays that came back from it, each as soon as the next is due. */
import { entryAt } from "../sim/checked/present.ts";
import type { FieldShape, FlowField } from "../sim/flow-field/flow-field.ts";
import type { FieldSession } from "../sim/flow-field/index.ts";
import type { FromField } from "./worker-messages.ts";

/** s of wall clock between two sent moments */
const MOMENT = 1 / 30;
/** m/s: blood never runs so fast here; a field that says so has failed and restarts from rest */
const IMPOSSIBLE = 12;

type Moment = Extract<FromField, { kind: "field" }>;

export function fieldMoments(clock: () => number) {
  const spare = spareArrays();
  let last = Number.NEGATIVE_INFINITY;
  let sentTime = Number.NEGATIVE_INFINITY;
  /** of another grid for the same order, until its first moment takes it along */
  let other: FieldShape | undefined;
  return {
    give: spare.give,
    /** Walls or grid are other ones, and a moment is due whatever time it is: of `shape`, where the page is to hear of that with it. */
    changed(shape: FieldShape | undefined) {
      spare.forget();
      sentTime = Number.NEGATIVE_INFINITY;
      other = shape;
    },
    /** @param time s of blood */
    due: (time: number) => time > sentTime && clock() - last >= MOMENT,
    /** The moment at `time`; undefined where the flow cannot be. */
    take(field: FieldSession, shapeId: number, time: number): Pick<Moment, "field" | "shape"> | undefined {
      const moment: FlowField = { ...field.read(spare.take()), shapeId, time };
      if (!possible(moment)) return undefined;
      sentTime = time;
      last = clock();
      const shape = other;
      other = undefined;
      return { field: moment, ...(shape && { shape }) };
    },
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

/** Every 7th cell suffices: a field that fails does so everywhere within a few steps. */
function possible({ u, v }: FlowField): boolean {
  for (let k = 0; k < u.length; k += 7) {
    if (!(Math.abs(entryAt(u, k)) < IMPOSSIBLE && Math.abs(entryAt(v, k)) < IMPOSSIBLE)) return false;
  }
  return true;
}
