/**
 * The cross where veins and pulmonary arteries meet, its four inner edges rounded. One polygon, so that no tube's round end bulges out. Its
 * arms end as points within the tubes: a square end would make a corner at the wall, and a lumen counts as shallow in a corner.
 */
import type { Point, Shape } from "../geometry.ts";

/** mm: the polygon, and how far it reaches from the joint's centre on each side. */
export interface Joint {
  readonly shape: Shape;
  /** mm: how far it reaches sideways from the upper vein's axis, and the heights where the plain tubes take over */
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

interface Stems {
  /** mm: diameters */
  readonly svc: number;
  readonly left: number;
  readonly right: number;
  /** mm: diameter and axis of the lower stem; left out when nothing joins from below */
  readonly lower?: { readonly diameter: number; readonly offset: number };
  readonly flare: number;
}

/** mm by which shapes overlap so that no seam shows */
const OVERLAP = 1;

/** The joint of veins and pulmonary arteries; diameters, offset and flare in mm. */
export function joint({ svc, left, right, lower, flare }: Stems): Joint {
  const upper = svc / 2;
  const wide = lower ? lower.diameter / 2 : 0;
  const offset = lower ? lower.offset : 0;
  const rightEdge = Math.max(upper, lower ? wide + offset : 0) + flare + OVERLAP;
  const leftEdge = Math.max(upper, lower ? wide - offset : 0) + flare + OVERLAP;
  const top = stemReach(svc, Math.min(left, right), Math.max(left, right), flare);
  const bottom = lower ? -stemReach(lower.diameter, Math.min(left, right), Math.max(left, right), flare) : 0;
  const points: Point[] = [
    [-leftEdge - right / 2, 0],
    ...rounded([-upper, right / 2], flare, -1, 1, true),
    [-upper, top],
    [0, top + upper],
    [upper, top],
    ...rounded([upper, left / 2], flare, 1, 1, false),
    [rightEdge + left / 2, 0],
  ];
  if (lower) {
    points.push(
      ...rounded([offset + wide, -left / 2], flare, 1, -1, true),
      [offset + wide, bottom],
      [offset, bottom - wide],
      [offset - wide, bottom],
      ...rounded([offset - wide, -right / 2], flare, -1, -1, false),
    );
  } else points.push([rightEdge, -left / 2], [-leftEdge, -right / 2]);
  return { shape: { polygon: { points } }, left: leftEdge, right: rightEdge, bottom, top };
}

/** How far from the arteries' axis a stem's tube may end: its round end has to stay inside the cross. */
function stemReach(stem: number, thinner: number, thicker: number, flare: number): number {
  const edge = thicker / 2 + flare + OVERLAP;
  return Math.max(edge, stem / 2 - thinner / 2 + OVERLAP);
}

/** Quarter circle that rounds an inner corner; `inwards` walks from the artery's wall to the stem's. */
function rounded(corner: Point, flare: number, sideways: number, upwards: number, inwards: boolean): Point[] {
  if (flare <= 0) return [corner];
  const steps = 10;
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const angle = ((i / steps) * Math.PI) / 2;
    return [
      corner[0] + sideways * flare * (1 - Math.sin(angle)),
      corner[1] + upwards * flare * (1 - Math.cos(angle)),
    ] as const;
  });
  return inwards ? points : points.reverse();
}
