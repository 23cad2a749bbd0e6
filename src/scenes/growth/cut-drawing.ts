/** Where in the chest a tube or chamber is cut, and the way from there to what is seen of the cut. */
import type { Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { type ChestPlace, risingIn } from "./chest-place.ts";
import { type SectionPlace, sectionLayout } from "./cross-section.ts";

/** Part of the tube's way at which it is cut. */
const CUT_AT = 0.3;

/** No wider than what it cuts. */
export function drawCut(ink: Graphics, { request }: SweepPoint, chest: ChestPlace, { colour }: Theme): void {
  const { x, y, wide } = risingIn(request, chest)(CUT_AT);
  for (const [color, width] of [
    [colour.stage, 5],
    [colour.ink, 2.4],
  ] as const)
    ink
      .moveTo(x - wide / 2, y)
      .lineTo(x + wide / 2, y)
      .stroke({ color, width });
}

interface Way {
  readonly chest: ChestPlace;
  readonly section: SectionPlace;
  /** CSS px down, from where on it has no sides */
  readonly open: number;
}

/** A soft wedge from the cut to both sides of its face. */
export function drawWay(
  ink: Graphics,
  point: SweepPoint,
  { chest, section, open }: Way,
  { colour }: Theme,
): void {
  const { x, y, wide } = risingIn(point.request, chest)(CUT_AT);
  const { half, wall } = sectionLayout(point, section);
  const [left, right] = [-1, 1].map((side): Spot => [x + (side * wide) / 2, y]) as [Spot, Spot];
  const [to, end] = [-1, 1].map((side): Spot => [section.x + side * (half + wall), section.y]) as [
    Spot,
    Spot,
  ];
  ink.poly([...left, ...to, ...end, ...right]).fill({ color: colour.inkSoft, alpha: 0.1 });
  const share = (open - y) / (section.y - y);
  for (const [from, towards] of [
    [left, to],
    [right, end],
  ] as const)
    ink
      .moveTo(...from)
      .lineTo(from[0] + share * (towards[0] - from[0]), open)
      .stroke({ color: colour.inkSoft, width: 1, alpha: 0.55 });
}
