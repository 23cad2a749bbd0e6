/** The way of a plate's hairline past the plates that stand between it and the height of its place. */
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Box } from "../scene.ts";

export interface Joined {
  readonly onLeft: boolean;
  /** CSS px, what the words take */
  readonly box: Box;
  /** CSS px, the place that it names */
  readonly to: Point;
  /** CSS px of x: where it comes to the height of its place when nothing is in the way */
  readonly bend: number;
}

/** CSS px of x, for each: where its line goes to the height of its place past plates in its way, nearer the body for each of them; null where it slants freely. */
export const turnsOf = (plates: readonly Joined[], step: number): readonly (number | null)[] =>
  plates.map((plate) => {
    const passed = plates.filter((other) => other !== plate && isInTheWay(other, plate));
    if (passed.length === 0) return null;
    const edges = [plate, ...passed].map(innerEdge);
    return plate.onLeft
      ? Math.max(...edges) + step * passed.length
      : Math.min(...edges) - step * passed.length;
  });

/** Whether another plate of the same side is touched by the slant from a plate to its place's height. */
function isInTheWay(other: Joined, plate: Joined): boolean {
  if (other.onLeft !== plate.onLeft) return false;
  const [from, to] = [middleOf(plate.box), plate.to[1]];
  const top = Math.max(other.box.y, Math.min(from, to));
  const bottom = Math.min(other.box.y + other.box.height, Math.max(from, to));
  if (top >= bottom) return false;
  const edge = innerEdge(plate);
  return [top, bottom].some((y) => {
    const x = edge + ((y - from) / (to - from)) * (plate.bend - edge);
    return plate.onLeft ? x < innerEdge(other) : x > innerEdge(other);
  });
}

export const middleOf = ({ y, height }: Box): number => y + height / 2;

export const innerEdge = ({ onLeft, box }: Pick<Joined, "onLeft" | "box">): number =>
  onLeft ? box.x + box.width : box.x;
