/** A valve's own frame, and a great artery's root opened at its front so that the valve shows. */

import { entryAt } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { paintOrgan } from "../../anatomy/paint-organ.ts";
import { laidOver, scratch } from "../../anatomy/paint-tube.ts";
import { boundsOf, type Ink, strokes, trace } from "../../anatomy/painted-sheet.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { asTissue, type Round } from "../../anatomy/tones.ts";
import type { Gate, ValvePlan } from "./heart-plan.ts";

/** Half of the ring, and a place by `u` across it towards its second hinge and `v` down the way of its blood, in halves of the ring. */
export function frameOf({ hinges: [a, b], funnel }: Gate) {
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const [ux, uy] = [(b[0] - a[0]) / 2, (b[1] - a[1]) / 2];
  // Into a ventricle blood goes to the right of the line between the hinges, out of it to the left.
  const turn = funnel ? -1 : 1;
  const at = (u: number, v: number): Point => [
    middle[0] + u * ux - turn * v * uy,
    middle[1] + u * uy + turn * v * ux,
  ];
  return { half: Math.hypot(ux, uy), at };
}

/** One side of the root from the ring over the sinus to where the closed vessel begins. */
const SIDE: readonly Point[] = [
  [1.18, 0.4],
  [1.2, 0.75],
  [1.06, 1.1],
  [0.98, 1.4],
];
/** The cut edge of what stays closed, across the vessel. */
const RIM: readonly Point[] = [
  [-1.5, 0.95],
  [-0.8, 1.3],
  [0, 1.46],
  [0.8, 1.3],
  [1.5, 0.95],
];

/** The back wall with its sinuses, and both sides in section; painted before the closed vessel. */
export function paintOpenRoot(ink: Ink, plan: ValvePlan, tones: Round): void {
  const { at, half } = frameOf(plan);
  const side = (sign: number) =>
    smoothLine(
      [[1, -0.1] as const, ...SIDE].map(([u, v]) => at(sign * u, v)),
      6,
    );
  const [one, other] = [side(-1), side(1)];
  const inside = [...one, ...[...other].reverse()];
  const bounds = boundsOf([inside], half);
  const own = scratch(ink, bounds);
  own.lineCap = "butt";
  for (const wall of [one, other])
    strokes(own, wall, half, [
      [0.44, tones.wall],
      [0.28, tones.body],
    ]);
  paintOrgan(own, inside, asTissue(tones), { depth: 0.5 * half });
  clearInto(own, at);
  laidOver(ink, own, bounds);
}

/** Below the ring it goes on into the ventricle. */
function clearInto(own: Ink, at: (u: number, v: number) => Point): void {
  const fall = own.createLinearGradient(...at(0, -0.5), ...at(0, 0.05));
  fall.addColorStop(0, "#000");
  fall.addColorStop(1, "#0000");
  own.globalCompositeOperation = "destination-out";
  own.fillStyle = fall;
  trace(own, [at(-2, -1), at(-2, 0.1), at(2, 0.1), at(2, -1)], true);
  own.fill();
}

/** Takes away the closed vessel's front over the root, and leaves a cut edge. */
export function cutRoot(ink: Ink, plan: ValvePlan, tones: Round): void {
  const { at, half } = frameOf(plan);
  const rim = smoothLine(
    RIM.map(([u, v]) => at(u, v)),
    6,
  );
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  trace(ink, [...rim, at(1.9, 0.6), at(1.9, -3), at(-1.9, -3), at(-1.9, 0.6)], true);
  ink.fill();
  ink.globalCompositeOperation = "source-atop";
  strokes(ink, rim, half, [
    [0.3, tones.wall],
    [0.14, tones.body],
  ]);
  ink.restore();
}

export const planOf = (plans: readonly ValvePlan[], name: ValvePlan["name"]): ValvePlan =>
  entryAt(
    plans,
    plans.findIndex((plan) => plan.name === name),
  );
