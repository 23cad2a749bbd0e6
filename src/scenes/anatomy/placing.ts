/** Places in the chest and in the heart, given in millimetres of a 5-year-old and carried to the body that is drawn. */
import { entryAt } from "../../sim/checked/present.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";

/** mm of a 5-year-old from the atrium's middle down to the opening below and up to the one above. */
const BELOW = 42;
const ABOVE = 58;

/** What carries a table's numbers to the plane. */
export interface Placing {
  readonly frame: ChestFrame;
  /** x from the superior vena cava's axis towards the patient's left, y up from the atrium's middle */
  inChest(x: number, y: number): Point;
  /** x from where the heart begins */
  inHeart(x: number, y: number): Point;
}

export function placing(frame: ChestFrame): Placing {
  const { scale: s, level, ivc, svc } = frame;
  const low = (level - ivc.centre[1]) / BELOW;
  const high = (svc.centre[1] - level) / ABOVE;
  return {
    frame,
    inChest: (x, y) => [x * s, level + y * (y < 0 ? low : high)],
    inHeart: (x, y) => [frame.heart + x * frame.heartScale, level + y * frame.heartScale],
  };
}

/** A smooth open line through the points, by Catmull-Rom; `steps` points for each stretch. */
export function smoothLine(through: readonly Point[], steps = 10): Point[] {
  const last = through.length - 1;
  const at = (i: number): Point => entryAt(through, Math.min(last, Math.max(0, i)));
  const line: Point[] = [];
  for (let i = 0; i < last; i++)
    for (let k = 0; k < steps; k++) {
      const t = k / steps;
      const mix = (c: 0 | 1): number => {
        const [p, q, r, w] = [at(i - 1)[c], at(i)[c], at(i + 1)[c], at(i + 2)[c]];
        return q + 0.5 * t * (r - p + t * (2 * p - 5 * q + 4 * r - w + t * (3 * (q - r) + w - p)));
      };
      line.push([mix(0), mix(1)]);
    }
  line.push(at(last));
  return line;
}
