/** Where the edge of a picture cuts a part of the body, the ground's own colour over it, so that it is lost little by little. */
import { smoothStep } from "../../sim/geometry/centreline.ts";
import type { Ink } from "../anatomy/painted-sheet.ts";
import { seeThrough } from "../theme/colour.ts";

const STOPS = 8;

/** In the units and the way of counting of `ink`. */
interface Lost {
  readonly left: number;
  readonly right: number;
  /** height of the edge, and the height at which all is seen */
  readonly edge: number;
  readonly seen: number;
  /** beyond the edge, hidden too */
  readonly beyond: number;
}

export function paintLostEnd(ink: Ink, { left, right, edge, seen, beyond }: Lost, ground: string): void {
  const way = Math.sign(seen - edge);
  const fall = ink.createLinearGradient(0, edge, 0, seen);
  for (let k = 0; k <= STOPS; k++)
    fall.addColorStop(k / STOPS, seeThrough(ground, smoothStep(0, 1, 1 - k / STOPS)));
  ink.fillStyle = fall;
  ink.fillRect(left, edge - way * beyond, right - left, seen - edge + way * beyond);
}
