/** The aorta on its way behind heart and liver, through the arch between the diaphragm's legs: dashed over what hides it. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { outlineDistance } from "../../sim/geometry/distance.ts";
import { roundOf } from "../anatomy/tones.ts";
import { saturationAlong } from "../circuit/circuit-blood.ts";
import type { Laid } from "../circuit/dots.ts";
import { curve, type Spot, spots, spotsOf } from "../drawing/curve-drawing.ts";
import { dashed } from "../layers/path-line.ts";
import type { Theme } from "../theme/theme.ts";

/** Plane units of dash and gap, and of the lines; how much of its colour is seen. */
const DASH = [8, 6] as const;
const LINE = 1.8;
const SEEN = { inside: 0.16, border: 0.75 } as const;
/** Where it leaves the chest: before the twelfth thoracic vertebra (textbook anatomy, from memory). */
const ARCH = curve(spots("508 584, 516 562, 536 551, 556 562, 562 584"));

/** @param covers closed outlines of what lies before it */
export function drawHiddenAorta(
  ink: Graphics,
  aorta: readonly Laid[],
  covers: readonly (readonly Spot[])[],
  circulation: Parameters<typeof saturationAlong>[0],
  theme: Theme,
): void {
  const distances = covers.map(outlineDistance);
  const isHidden = (x: number, y: number) => distances.some((distance) => distance(x, y) < 0);
  for (const { vessel, line } of aorta) {
    const { wall, body } = roundOf(saturationAlong(circulation, vessel, 0), theme);
    const middle: Spot[] = [];
    const sides: [number[], number[]] = [[], []];
    for (let i = 1; i < line.x.length; i++) {
      const [x, y] = [entryAt(line.x, i), entryAt(line.y, i)];
      if (!isHidden(x, y)) continue;
      const [dx, dy] = [x - entryAt(line.x, i - 1), y - entryAt(line.y, i - 1)];
      const half = vessel.width / 2 / (Math.hypot(dx, dy) || 1);
      middle.push([x, y]);
      for (const [k, way] of [-1, 1].entries()) sides[k]?.push(x - way * half * dy, y + way * half * dx);
    }
    if (middle.length < 2) continue;
    ink
      .poly(middle.flat(), false)
      .stroke({ color: body, width: vessel.width, alpha: SEEN.inside, cap: "butt" });
    for (const side of sides) dashed(ink, side, DASH, { color: wall, width: LINE, alpha: SEEN.border });
  }
  dashed(ink, spotsOf(ARCH).flat(), [4, 3], {
    color: theme.colour.inkSoft,
    width: LINE,
    alpha: SEEN.border,
  });
}
