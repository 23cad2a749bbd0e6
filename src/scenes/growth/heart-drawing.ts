/** Heart, great veins and the tube or chamber between them in a standing body: all but that grow with it. */
import type { Graphics } from "pixi.js";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import { tissue } from "../anatomy/tones.ts";
import { curve, type Spot, spots, traceCurve } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import type { FigurePlace } from "./figure-drawing.ts";
import { chestOf } from "./standing-figure.ts";

/** mm: an adult's height, to which tube, chamber and veins are drawn this much larger than life, so that they can be seen. */
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

/** Parts of its width by which a chamber lies behind the heart, of which it is the right atrium. */
const BEHIND = 0.3;

/** CSS px for each mm of tube, chamber and veins. @param adult CSS px of the tallest body */
const perTubeMillimetre = (adult: number): number => (LARGER * adult) / ADULT;

export function drawHeartAndTube(
  ink: Graphics,
  request: CirculationRequest,
  { x, ground, height }: FigurePlace,
  adult: number,
  theme: Theme,
): void {
  const { colour, name } = theme;
  const sizes = pathwaySizes(request);
  const px = perTubeMillimetre(adult);
  const across = px * sizes.trunk;
  const long = px * sizes.trunkLength;
  const chambered = sizes.stage === "atriopulmonary";
  const middle = ground - chestOf(request.body.ageYears) * height;
  const [top, bottom] = [middle - long / 2, middle + long / 2];
  const half = HALF_HEART * height;
  const heart: Spot = [x + 0.022 * height, middle];
  const tube = heart[0] - 0.9 * half - (chambered ? 0.5 - BEHIND : 0.5) * across;
  const vein = (width: number, from: Spot, to: Spot) =>
    ink
      .moveTo(...from)
      .lineTo(...to)
      .stroke({ color: colour.poor, width: Math.max(1.5, px * width), cap: "round" });
  vein(sizes.left, [tube, top], [tube + 2 * ASIDE * height, top + 0.022 * height]);
  vein(sizes.right, [tube, top], [tube - ASIDE * height, top + 0.03 * height]);
  vein(sizes.svc, [tube, top], [tube, top - UPPER * height]);
  vein(sizes.ivc, [tube, bottom - 1], [tube + 0.012 * height, bottom + LOWER * height]);
  const part: Part = { x: tube, middle, across, long };
  if (chambered) drawChamber(ink, part, theme);
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
  if (!chambered) drawTube(ink, part, theme);
}

/** CSS px: the middle, the width and the height. */
interface Part {
  readonly x: number;
  readonly middle: number;
  readonly across: number;
  readonly long: number;
}

function drawTube(ink: Graphics, { x, middle, across, long }: Part, theme: Theme): void {
  const { colour, name } = theme;
  ink
    .rect(x - across / 2, middle - long / 2, across, long)
    .fill({ color: tissue("valve", theme).body })
    .stroke({ color: name === "dark" ? colour.stageDeep : colour.wallEdge, width: 1.2 });
}

/** The widened right atrium: round, its light from above and the body's right. */
function drawChamber(ink: Graphics, { x, middle, across, long }: Part, theme: Theme): void {
  const { shade, body, light, edge } = tissue("atrium", theme);
  ink
    .ellipse(x, middle, across / 2, long / 2)
    .fill({ color: body })
    .stroke({ color: theme.name === "dark" ? shade : edge, width: 1.2 });
  for (const [size, alpha] of LIGHTS)
    ink
      .ellipse(x - 0.12 * across, middle - 0.14 * long, (size * across) / 2, (size * long) / 2)
      .fill({ color: light, alpha });
}

/** Parts of the chamber's size that grow lighter, from outside in. */
const LIGHTS = [
  [0.62, 0.3],
  [0.36, 0.4],
] as const;
