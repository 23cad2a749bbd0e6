/** Veins in and behind the liver, under its tissue. */
import type { Point } from "../../sim/geometry/geometry.ts";
import { WALL as HOLLOW_WALL } from "../layers/fade.ts";
import { seeThrough } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import type { FeedingVein } from "./feeding-veins.ts";
import type { Saturations } from "./joined.ts";
import { laidOver, paintTubes, scratch } from "./paint-tube.ts";
import { type Bounds, type Ink, trace } from "./painted-sheet.ts";
import { hollow, portal, roundOf, tissue } from "./tones.ts";

/** mm of a 5-year-old: walls. */
const WALL = 1.3;
const THIN = 0.4;
/** How much of the liver's tissue lies over the veins in it. */
const IN_LIVER = 0.4;

/** What runs in and behind the liver: it moves with the diaphragm. */
export const belowDiaphragm = ({ veins }: Pick<Anatomy, "veins">): readonly FeedingVein[] =>
  veins.filter(({ group }) => group === "cava" || group === "hepatic");

export function paintInLiver(
  ink: Ink,
  bounds: Bounds,
  { veins, abdomen, frame }: Anatomy,
  { ivc }: Saturations,
  theme: Theme,
): void {
  const s = frame.scale;
  const those = (group: FeedingVein["group"]) => veins.filter((vein) => vein.group === group);
  const below = scratch(ink, bounds);
  const cava = hollow(ivc, theme);
  paintTubes(below, those("cava"), cava, HOLLOW_WALL);
  const hepatic = scratch(ink, bounds);
  paintTubes(hepatic, those("hepatic"), roundOf(ivc, theme), WALL * s);
  hepatic.globalCompositeOperation = "destination-in";
  trace(hepatic, abdomen.liver, true);
  hepatic.fill();
  laidOver(below, hepatic, bounds);
  // Their mouths open into its lumen.
  paintTubes(below, those("cava"), cava, 0);
  // The portal vein enters the liver before the inferior vena cava.
  const before = scratch(ink, bounds);
  paintTubes(before, abdomen.portal, portal(theme), THIN * s);
  const { centre } = frame.ivc;
  layLiverOver(below, abdomen.liver, theme, [centre[1], centre[1] - DEEPER * s]);
  layLiverOver(before, abdomen.liver, theme);
  for (const own of [below, before]) laidOver(ink, own, bounds);
}

/** mm of a 5-year-old from the pathway's lower end, over which the liver comes to lie over the vein that goes on there */
const DEEPER = 12;

/** Vessels that run in the liver throw no shadow on it; its tissue lies over them. @param own holds nothing else @param from heights (mm) between which it begins to do so */
export function layLiverOver(
  own: Ink,
  liver: readonly Point[],
  theme: Theme,
  [top, whole]: readonly [number, number] = [0, 0],
): void {
  const { body } = tissue("liver", theme);
  own.globalCompositeOperation = "source-atop";
  own.globalAlpha = IN_LIVER;
  const fall = own.createLinearGradient(0, top, 0, whole);
  fall.addColorStop(0, seeThrough(body, 0));
  fall.addColorStop(1, body);
  own.fillStyle = top === whole ? body : fall;
  trace(own, liver, true);
  own.fill();
}
