/** Where the trunk ends, and what is seen through the liver of the vessels on the back wall. */
import type { Graphics } from "pixi.js";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { roundOf } from "../anatomy/tones.ts";
import type { Brush } from "../drawing/brush.ts";
import { curve, type Spot, spotsOf, traceCurve } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationAlong } from "./circuit-blood.ts";
import type { Laid } from "./dots.ts";
import { TRUNK } from "./figure-shape.ts";
import { PAINTED } from "./outlines.ts";

/** For a mask: what lies inside the trunk ends at its skin. */
export function fillTrunk(ink: Graphics): Graphics {
  traceCurve(ink, curve(TRUNK, 16));
  return ink.closePath().fill({ color: 0xffffff });
}

/** How much of what lies behind the liver is seen through it. */
const THROUGH = 0.4;
/** Plane units that the liver goes down in a breath: the vessel is seen through it there too. */
const LOWER = 14;

/** Faintly over the liver, what runs behind it. */
export function drawThroughLiver(
  ink: Brush,
  laid: readonly Laid[],
  circulation: Circulation,
  theme: Theme,
): void {
  const liver = present(PAINTED.find(({ name }) => name === "liver")).points;
  const isIn = (x: number, y: number) => crossings(liver, x).filter((each) => each < y).length % 2 === 1;
  for (const { vessel, line } of laid) {
    const at = spotsOf(line).filter(([x, y]) => isIn(x, y) || isIn(x, y - LOWER));
    if (at.length < 2) continue;
    const { edge, body, light } = roundOf(saturationAlong(circulation, vessel, 0), theme);
    for (const [color, width] of [
      [edge, vessel.width],
      [body, 0.7 * vessel.width],
      [light, 0.3 * vessel.width],
    ] as const)
      ink.poly(at.flat(), false).stroke({ color, width, alpha: THROUGH });
  }
}

/** Heights at which a closed outline is crossed by the vertical through `x`. */
function crossings(outline: readonly Spot[], x: number): readonly number[] {
  return outline.flatMap(([ax, ay], i) => {
    const [bx, by] = entryAt(outline, (i + 1) % outline.length);
    return ax < x !== bx < x ? [ay + ((x - ax) / (bx - ax)) * (by - ay)] : [];
  });
}
