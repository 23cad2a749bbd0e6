/** A branch of the plane: its sections laid along a centre line, and the tube that comes of it. */
import { type Line, line, type Spot, smoothStep, spotAt } from "../curve.ts";
import type { Opening, Point, Shape } from "../geometry.ts";
import type { Section } from "./sections.ts";

export interface Branch {
  readonly sections: readonly Section[];
  readonly line: Line;
  /** mm: length that the sections count */
  readonly length: number;
}

/** The sections count from the line's first point; a curved line may be a little longer than they are. */
export function branch(sections: readonly Section[], points: readonly Point[]): Branch {
  return { sections, line: line(points), length: sections[sections.length - 1]!.to };
}

/** Where the branch is `distance` mm along its sections. */
export const spotOn = ({ line, length }: Branch, distance: number): Spot => spotAt(line, distance / length);

/** mm: lumen width `distance` mm along; narrowings are cosine-shaped as in Young & Tsai's models. */
export function widthOn({ sections }: Branch, distance: number): number {
  const section = sections.find(({ to }) => distance <= to) ?? sections[sections.length - 1]!;
  const { kind, from, to, before, after, narrowest } = section;
  const part = (distance - from) / (to - from);
  if (kind === "areaChange") return before + (after - before) * smoothStep(0, 1, part);
  if (narrowest !== undefined)
    return before - ((before - narrowest) * (1 - Math.cos(2 * Math.PI * part))) / 2;
  return before;
}

/** Sampled every 1.5 mm or closer. `widen` multiplies the width (a bulge), 1 when left out. */
export function tubeOf(
  branch: Branch,
  from: number,
  to: number,
  widen: (distance: number) => number = () => 1,
): Shape {
  const count = Math.max(2, Math.ceil((to - from) / 1.5) + 1);
  const stops = Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
  return {
    tube: {
      points: stops.map((distance) => spotOn(branch, distance).at),
      width: stops.map((distance) => widthOn(branch, distance) * widen(distance)),
    },
  };
}

/** The straight cut at the branch's outer end: its first point for a vein, its last for a lung artery. */
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
