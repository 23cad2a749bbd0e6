/** The great vessels of a heart with two ventricles: what runs behind it, the aorta, and the veins and the trunk before that. */
import { entryAt } from "../../../sim/checked/present.ts";
import { line } from "../../../sim/geometry/centreline.ts";
import type { Anatomy } from "../../anatomy/chest-anatomy.ts";
import type { Tube } from "../../anatomy/great-vessels.ts";
import { paintPericardium } from "../../anatomy/paint-heart.ts";
import { belowDiaphragm, layLiverOver } from "../../anatomy/paint-in-liver.ts";
import { bandOf, laidOver, paintTubes, scratch } from "../../anatomy/paint-tube.ts";
import { type Bounds, type Ink, trace } from "../../anatomy/painted-sheet.ts";
import { portal, type Round, roundOf } from "../../anatomy/tones.ts";
import type { Theme } from "../../theme/theme.ts";
import { CORONARY, OPENS, SAC, VALVES, type ValvePlan } from "./heart-plan.ts";
import { greatVessels } from "./heart-vessels.ts";
import { deepOf, paintOutflow } from "./paint-chambers.ts";
import { cutRoot, frameOf, paintOpenRoot, planOf } from "./root.ts";

/** Percent in each chamber's and vessel's blood. */
export interface Carried {
  readonly arterial: number;
  readonly pulmonaryVein: number;
  readonly svc: number;
  readonly ivc: number;
  readonly mixed: number;
}

/** mm: walls of great vessels, and how far their shadows fall on what lies behind. */
const WALL = 1.2;
const CAST = 2.6;

interface Sheet {
  readonly ink: Ink;
  readonly bounds: Bounds;
}

/** A group of vessels that open into each other, with its shadow; one that clears at its end casts none there. */
function group(
  { ink, bounds }: Sheet,
  tubes: readonly Tube[],
  tones: Round,
  then?: (own: Ink) => void,
): void {
  const paint = (drawn: readonly Tube[], cast?: number) => {
    const own = scratch(ink, bounds);
    paintTubes(own, drawn, tones, WALL);
    then?.(own);
    laidOver(ink, own, bounds, cast);
  };
  const clears = tubes.some(({ fades }) => fades);
  if (clears) paint(tubes.map(solidPart), CAST);
  paint(tubes, clears ? undefined : CAST);
}

/** As far as it hides what lies behind it, and its shadow with it. */
function solidPart({ fades, over = 0.42, line: way, ...tube }: Tube): Tube {
  const left = Math.round((over + 0.08) * way.length);
  const solid = fades === "start" ? way.slice(left) : fades ? way.slice(0, -left) : way;
  return { ...tube, line: solid };
}

export function paintDescending(sheet: Sheet, tube: Tube, { arterial }: Carried, theme: Theme): void {
  group(sheet, [tube], roundOf(arterial, theme));
  paintPericardium(sheet.ink, SAC, 1, theme);
}

export function paintRear(ink: Ink, bounds: Bounds, anatomy: Anatomy, carried: Carried, theme: Theme): void {
  const { returning, rightArtery, leftArtery } = greatVessels(anatomy);
  const sheet = { ink, bounds };
  // The left one goes into its lung behind its veins; its first part is painted again before the aorta.
  group(sheet, [leftArtery], roundOf(carried.mixed, theme));
  for (const vein of returning) group(sheet, [vein], roundOf(carried.pulmonaryVein, theme));
  group(sheet, [rightArtery], roundOf(carried.mixed, theme));
}

/** The aorta from the left ventricle's outflow and its opened root to the end of its arch, with its branches. */
export function paintAorta(ink: Ink, bounds: Bounds, anatomy: Anatomy, carried: Carried, theme: Theme): void {
  const { aorta, branches } = greatVessels(anatomy);
  const tones = roundOf(carried.arterial, theme);
  const plan = planOf(VALVES, "aortic");
  paintOutflow(ink, carried.arterial, theme);
  paintOpenRoot(ink, plan, tones);
  paintCoronary(ink, plan, tones, theme);
  group({ ink, bounds }, [...branches, aorta], tones, (own) => cutRoot(own, plan, tones));
}

function paintCoronary(ink: Ink, plan: ValvePlan, tones: Round, theme: Theme): void {
  ink.beginPath();
  ink.ellipse(...frameOf(plan).at(...CORONARY), 1.1, 0.75, 0.5, 0, 2 * Math.PI);
  ink.fillStyle = deepOf(tones, theme);
  ink.fill();
  ink.lineWidth = 0.4;
  ink.strokeStyle = tones.light;
  ink.stroke();
}

/** Where no vein that feeds it is painted, the upper one goes over into what is drawn above it. */
const FROM_ABOVE = { fades: "start", over: 0.3 } as const;

/** The great veins, whose fronts clear where they open into the right atrium. @param fed veins that make the upper one */
export function paintVeins(
  { ink, bounds }: Sheet,
  anatomy: Anatomy,
  carried: Carried,
  theme: Theme,
  fed: readonly Tube[] = [],
): void {
  const { upperVein, lowerVein } = greatVessels(anatomy);
  for (const [veins, saturation, [closed, open]] of [
    [fed.length > 0 ? [...fed, upperVein] : [{ ...upperVein, ...FROM_ABOVE }], carried.svc, OPENS.upper],
    [[lowerVein], carried.ivc, OPENS.lower],
  ] as const) {
    const tones = roundOf(saturation, theme);
    group({ ink, bounds }, veins, tones, (own) => {
      const fall = own.createLinearGradient(0, closed, 0, open);
      fall.addColorStop(0, "#0000");
      fall.addColorStop(1, "#000");
      own.globalCompositeOperation = "destination-out";
      own.fillStyle = fall;
      const [left, bottom, right, top] = bounds;
      own.fillRect(left, bottom, right - left, top - bottom);
    });
  }
}

/** What runs in and behind the liver, under its tissue, and the portal vein before it. */
export function paintLiverVeins(
  ink: Ink,
  bounds: Bounds,
  { veins, abdomen }: Anatomy,
  carried: Carried,
  theme: Theme,
): void {
  const own = scratch(ink, bounds);
  paintTubes(own, belowDiaphragm({ veins }), roundOf(carried.ivc, theme), WALL);
  layLiverOver(own, abdomen.liver, theme);
  laidOver(ink, own, bounds);
  group({ ink, bounds }, abdomen.portal, portal(theme));
}

/** mm: where the left pulmonary artery has passed before the aorta. */
const PAST_AORTA = 54;

/** The pulmonary trunk before the aorta, and what it divides into; the right one goes on behind the aorta. */
export function paintTrunk(ink: Ink, bounds: Bounds, anatomy: Anatomy, carried: Carried, theme: Theme): void {
  const { trunk, leftArtery, rightArtery, aorta } = greatVessels(anatomy);
  const tones = roundOf(carried.mixed, theme);
  const plan = planOf(VALVES, "pulmonary");
  paintOpenRoot(ink, plan, tones);
  const top = aorta.line.reduce((high, [, y], i) => (y > entryAt(aorta.line, high)[1] ? i : high), 0);
  const ascending = aorta.line.slice(0, top);
  const right = { ...rightArtery, line: rightArtery.line.filter(([x]) => x > 12) };
  const left = { ...leftArtery, line: leftArtery.line.filter(([x]) => x < PAST_AORTA), over: 0.12 };
  group({ ink, bounds }, [right, left, trunk], tones, (own) => {
    // Where the aorta lies only the trunk lies before it.
    trace(own, bandOf(line(ascending), aorta, { part: 1, wall: WALL, of: 0.3 }), true);
    own.save();
    own.clip();
    own.clearRect(bounds[0], bounds[1], bounds[2] - bounds[0], bounds[3] - bounds[1]);
    paintTubes(own, [left, trunk], tones, WALL);
    own.restore();
    cutRoot(own, plan, tones);
  });
}
