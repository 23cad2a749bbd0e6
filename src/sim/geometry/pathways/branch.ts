/** A branch of the plane: its sections laid along a centre line, and the tube that comes of it. */

import { entryAt, lastOf, present } from "../../checked/present.ts";
import { type Line, line, type Spot, smoothStep, spotAt } from "../centreline.ts";
import type { Opening, Point, Shape } from "../geometry.ts";
import type { Section } from "./sections.ts";

/** A branch: its sections and its centre line, mm. */
export interface Branch {
  readonly sections: readonly Section[];
  readonly line: Line;
  /** mm: length that the sections count */
  readonly length: number;
}

/** The sections count from the line's first point; a curved line may be a little longer than they are. */
export function branch(sections: readonly Section[], points: readonly Point[]): Branch {
  return { sections, line: line(points), length: lastOf(sections).to };
}

/** The place (mm) on the branch at `distance` (mm) along its sections, clamped to its ends. */
export const spotOn = ({ line, length }: Branch, distance: number): Spot => spotAt(line, distance / length);

/** Lumen width (mm) `distance` mm along; narrowings are cosine-shaped as in Young & Tsai's models (1973). */
export function widthOn({ sections }: Branch, distance: number): number {
  const section = sections.find(({ to }) => distance <= to) ?? lastOf(sections);
  const { kind, from, to, before, after, narrowest } = section;
  const part = (distance - from) / (to - from);
  if (kind === "areaChange") return before + (after - before) * smoothStep(0, 1, part);
  if (narrowest !== undefined)
    return before - ((before - narrowest) * (1 - Math.cos(2 * Math.PI * part))) / 2;
  return before;
}

/**
 * The lumen from one distance (mm) to another as a tube; no extra points where line and width are straight.
 * @param widen multiplies the width (a bulge), dimensionless; 1 when left out
 */
export function tubeOf(
  branch: Branch,
  from: number,
  to: number,
  widen: (distance: number) => number = () => 1,
): Shape {
  const count = Math.max(2, Math.ceil(to - from) + 1);
  const stops = Array.from({ length: count }, (_, i) => {
    const distance = from + ((to - from) * i) / (count - 1);
    return [...spotOn(branch, distance).at, widthOn(branch, distance) * widen(distance)] as Stop;
  });
  const kept = straightened(stops, 0, count - 1);
  kept.push(entryAt(stops, count - 1));
  return { tube: { points: kept.map(([x, y]) => [x, y]), width: kept.map(([, , width]) => width) } };
}

/** x, y and width, mm */
type Stop = readonly [number, number, number];

/** mm by which a left-out point may miss */
const STRAIGHT = 0.04;

/** Stops needed from `first` up to, without, `last` (Douglas & Peucker 1973, width as a third coordinate). */
function straightened(stops: readonly Stop[], first: number, last: number): Stop[] {
  const begin = entryAt(stops, first);
  const end = entryAt(stops, last);
  let worst = STRAIGHT;
  let at = -1;
  for (let i = first + 1; i < last; i++) {
    const t = (i - first) / (last - first);
    const miss = Math.hypot(
      ...begin.map((value, k) => value + t * (entryAt(end, k) - value) - present(entryAt(stops, i)[k])),
    );
    if (miss > worst) {
      worst = miss;
      at = i;
    }
  }
  return at < 0 ? [begin] : [...straightened(stops, first, at), ...straightened(stops, at, last)];
}

/** The straight cut at the branch's outer end: its first point for a vein, its last for a pulmonary artery. */
export function openingOf(branch: Branch, name: "ivc" | "svc" | "left" | "right"): Opening {
  const inward = name === "ivc" || name === "svc";
  const end = inward ? 0 : branch.length;
  const { at, along } = spotOn(branch, end);
  const sign = inward ? -1 : 1;
  const cut = {
    name,
    centre: at,
    normal: [sign * along[0], sign * along[1]] as const,
    width: widthOn(branch, end),
  };
  return inward ? { ...cut, velocity: 0 } : { ...cut, pressure: 0 };
}
