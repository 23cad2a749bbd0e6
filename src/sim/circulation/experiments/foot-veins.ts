/**
 * Blood through the valve below the calf. The model's leg veins are one compartment that capillaries fill all the time; the part
 * of them below the calf is held apart here: it fills at the model's rate and empties upward only while its pressure is above
 * that in the squeezed veins. Over a cycle as much passes the valve as has come in; the circulation itself isn't changed.
 */
import { entryAt } from "../../checked/present.ts";
import { fromLitresPerMinute, fromMillilitre, toLitresPerMinute, toMillilitre } from "../../units.ts";
import type { Traces } from "../answer/answer.ts";

/** mL/mmHg for each m2 of body: a fiftieth of all veins' compliance (teaching value). */
const COMPLIANCE = 1.4;
/** s in which the veins below the calf empty through the open valve (teaching value). */
const EMPTYING = 0.1;
/** Repeats after which it repeats itself. */
const REPEATS = 12;

const known = new WeakMap<Float64Array, Float64Array>();

/** L/min at the traces' times. @param bodySize m2 */
export function lowerValveFlow(traces: Traces, filling: Float64Array, bodySize: number): Float64Array {
  const before = known.get(filling);
  if (before) return before;
  const { time, period } = traces;
  const { calf } = traces.pressures;
  const last = time.length - 1;
  const step = period / last;
  const compliance = COMPLIANCE * bodySize;
  const outside = (i: number) => compliance * (calf ? Math.max(0, entryAt(calf, i)) : 0);
  const passed = new Float64Array(time.length);
  let held = Math.min(...Array.from({ length: last }, (_, i) => outside(i)));
  for (let k = 0; k < REPEATS * last; k++) {
    const i = (k % last) + 1;
    const full = held + step * toMillilitre(fromLitresPerMinute(entryAt(filling, i)));
    // Implicit, so that no step is too long.
    const out = Math.max(0, ((full - outside(i)) * step) / (EMPTYING + step));
    held = full - out;
    passed[i] = toLitresPerMinute(fromMillilitre(out / step));
  }
  passed[0] = entryAt(passed, last);
  known.set(filling, passed);
  return passed;
}
