/** Pressure drop of the lower body's blood through the pathway, read from a field. */
import type { FieldReadings, OpeningReading } from "./flow-field.ts";

/** mmHg of total pressure, from the lower vein's opening to the pulmonary arteries weighted by their flow; null where one of them is missing or nothing leaves. */
export function lowerVeinDrop({ openings }: Pick<FieldReadings, "openings">): number | null {
  const opening = (name: string) => openings.find((each) => each.name === name);
  const [from, left, right] = [opening("ivc"), opening("left"), opening("right")];
  if (!from || !left || !right) return null;
  const out = left.flow + right.flow;
  if (out === 0) return null;
  const part = ({ flow, totalPressure }: OpeningReading) => (flow / out) * totalPressure;
  return from.totalPressure - part(left) - part(right);
}
