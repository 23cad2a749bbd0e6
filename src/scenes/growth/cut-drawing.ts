/** Where in the chest a tube or chamber is cut, and the way from there to what is seen of the cut. */
import type { Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { type ChestPlace, risingIn, trunkSize } from "./chest-place.ts";
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

/** Steps and CSS px over which the wedge comes. */
const [COMES, FADING] = [8, 28];

/** How strong its lines are before the trunk, and under it. */
const [BEFORE, BELOW] = [0.4, 0.55];

/** From the cut to both sides of its face: before the trunk two faint lines, under it a soft wedge between them. */
export function drawWay(
  under: Graphics,
  over: Graphics,
  point: SweepPoint,
  { chest, section, open }: Way,
  { colour }: Theme,
): void {
  const { x, y, wide } = risingIn(point.request, chest)(CUT_AT);
  const { half, wall } = sectionLayout(point, section);
  const foot = chest.y + (trunkSize(point.request)[1] * chest.perMillimetre) / 2;
  /** at a height, on both sides */
  const across = (level: number): readonly [Spot, Spot] => {
    const share = (level - y) / (section.y - y);
    const middle = x + share * (section.x - x);
    const reach = wide / 2 + share * (half + wall - wide / 2);
    return [
      [middle - reach, level],
      [middle + reach, level],
    ];
  };
  // It comes as the trunk goes.
  for (let k = 0; k < COMES; k++) {
    const [from, to] = [
      foot - (1 - k / COMES) * FADING,
      k + 1 < COMES ? foot - (1 - (k + 1) / COMES) * FADING : section.y,
    ];
    const [[left, right], [next, end]] = [across(from), across(to)];
    under
      .poly([...left, ...next, ...end, ...right])
      .fill({ color: colour.inkSoft, alpha: (0.1 * (k + 1)) / COMES });
  }
  const [tops, feet, ends] = [across(y), across(foot), across(open)];
  for (const side of [0, 1] as const)
    for (const [from, to, alpha] of [
      [tops[side], feet[side], BEFORE],
      [feet[side], ends[side], BELOW],
    ] as const)
      over
        .moveTo(...from)
        .lineTo(...to)
        .stroke({ color: colour.inkSoft, width: 1, alpha });
}
