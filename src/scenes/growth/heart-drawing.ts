/** Heart, great veins and the tube between them in a standing body: all but the tube grow with it. */
import type { Graphics } from "pixi.js";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import { tissue } from "../anatomy/tones.ts";
import { curve, type Spot, spots, traceCurve } from "../drawing/curve-drawing.ts";
import { chestOf, type FigurePlace } from "../drawing/figure.ts";
import type { Theme } from "../theme/theme.ts";

/** mm: an adult's height, to which tube and veins are drawn this much larger than life, so that they can be seen. */
const ADULT = 1750;
const LARGER = 2.6;

/** From the front, y down, its apex to the body's left: half the heart's width each unit. */
const HEART = spots(
  "-0.5 -0.75, 0.1 -0.85, 0.7 -0.5, 1.1 0.2, 1.15 0.8, 0.85 1.05, 0.3 0.85, -0.5 0.65, -0.95 0.2, -0.9 -0.4, -0.5 -0.75",
);
const GROOVE = spots("0.3 -0.75, 0.55 -0.1, 0.75 0.5, 0.9 0.95");
const ARCH = spots("-0.1 -0.7, -0.15 -1.3, 0.15 -1.65, 0.6 -1.6, 0.75 -1.1");
/** Half the heart's width, and how far veins run, in parts of the body's height. */
const HALF_HEART = 0.045;
const UPPER = 0.07;
const LOWER = 0.15;
const ASIDE = 0.065;

/** A tube's length in widths: as when it is put in. */
const LENGTH = 2.4;

/** CSS px for each mm of tube and veins. @param adult CSS px of the tallest body */
const perTubeMillimetre = (adult: number): number => (LARGER * adult) / ADULT;

export function drawHeartAndTube(
  ink: Graphics,
  request: CirculationRequest,
  { x, ground, height }: FigurePlace,
  adult: number,
  { colour, name }: Theme,
): void {
  const sizes = pathwaySizes(request);
  const px = perTubeMillimetre(adult);
  const across = px * sizes.trunk;
  const long = LENGTH * across;
  const middle = ground - chestOf(request.body.ageYears) * height;
  const [top, bottom] = [middle - long / 2, middle + long / 2];
  const half = HALF_HEART * height;
  const heart: Spot = [x + 0.022 * height, middle];
  const tube = heart[0] - 0.9 * half - across / 2;
  const vein = (width: number, from: Spot, to: Spot) =>
    ink
      .moveTo(...from)
      .lineTo(...to)
      .stroke({ color: colour.poor, width: Math.max(1.5, px * width), cap: "round" });
  vein(sizes.left, [tube, top], [tube + 2 * ASIDE * height, top + 0.022 * height]);
  vein(sizes.right, [tube, top], [tube - ASIDE * height, top + 0.03 * height]);
  vein(sizes.svc, [tube, top], [tube, top - UPPER * height]);
  vein(sizes.ivc, [tube, bottom - 1], [tube + 0.012 * height, bottom + LOWER * height]);
  const muscle = tissue("muscle", { name });
  const lay = (points: readonly Spot[]) =>
    traceCurve(
      ink,
      curve(
        points.map(([u, v]): Spot => [heart[0] + u * half, heart[1] + v * half]),
        1,
      ),
    );
  lay(ARCH);
  ink.stroke({ color: muscle.edge, width: 0.42 * half, cap: "round" });
  lay(HEART);
  ink.fill({ color: muscle.body }).stroke({ color: muscle.edge, width: 1 });
  lay(GROOVE);
  ink.stroke({ color: muscle.light, width: 1 });
  ink
    .rect(tube - across / 2, top, across, long)
    .fill({ color: tissue("valve", { name }).body })
    .stroke({ color: name === "dark" ? colour.stageDeep : colour.wallEdge, width: 1.2 });
}
