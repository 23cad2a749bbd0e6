/** The liver's veins within it: bare where they open at its back, deeper the further from there, thinner towards their ends. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { type Bounds, type Ink, trace } from "../anatomy/painted-sheet.ts";
import { roundOf } from "../anatomy/tones.ts";
import { CHEST_AT, inChest } from "../circuit/chest-plan.ts";
import { saturationAlong } from "../circuit/circuit-blood.ts";
import type { Laid } from "../circuit/dots.ts";
import type { Vessel } from "../circuit/vessel.ts";
import { type Spot, spotsOf } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";

/** Plane units: where the veins open, how far from there they are seen whole, and from where on they lie as deep as they get. */
const OPENING: Spot = [468, 528];
const MOUTH = { from: 4, to: 16 } as const;
const BARE = 34;
const DEEP = 150;
/** 0..1: how much of a vein is hidden where it lies deepest. */
const HIDDEN = 0.3;
/** Plane units of a vein's wall, on both sides together. */
const WALL = 4;
/** Part of its width that an end has, and part of its length over which it grows to its own. */
const END = 0.15;
const GROWS = 0.6;
/** Plane units within which one vein goes on from another. */
const MEETS = 14;

export const LIVER_BOUNDS: Bounds = [...inChest([180, 720]), ...inChest([680, 480])];

export const isInLiver = ({ name }: Vessel): boolean => name.startsWith("hepatic");

/** Width of those veins that end where this one begins; 0 where none does: it is an end. */
export function widthBefore({ points }: Vessel, veins: readonly Vessel[]): number {
  const [x, y] = entryAt(points, 0);
  const before = veins.filter((each) => {
    const [ex, ey] = lastOf(each.points);
    return Math.hypot(ex - x, ey - y) < MEETS;
  });
  return Math.max(0, ...before.map(({ width }) => width));
}

const mm = (units: number): number => units / CHEST_AT.scale;

/** In mm, y up. @param laid the liver's veins, each towards where it opens */
export function paintLiverVeins(
  ink: Ink,
  laid: readonly Laid[],
  circulation: Circulation,
  theme: Theme,
): void {
  const all = laid.map(({ vessel }) => vessel);
  const veins = laid.map(({ vessel, line }) => ({
    points: spotsOf(line).map(inChest),
    from: widthBefore(vessel, all) || END * vessel.width,
    to: vessel.width,
    tones: roundOf(saturationAlong(circulation, vessel, 0), theme),
  }));
  for (const [tone, part, more] of [
    ["wall", 1, WALL],
    ["edge", 1, 0],
    ["body", 0.7, 0],
    ["light", 0.32, 0],
  ] as const)
    for (const { points, from, to, tones } of veins) {
      ink.strokeStyle = tones[tone];
      for (let i = 1; i < points.length; i++) {
        const width = from + (to - from) * Math.min(1, i / (GROWS * points.length));
        ink.lineWidth = mm(part * width + more * (width / to));
        trace(ink, points.slice(i - 1, i + 1));
        ink.stroke();
      }
    }
  wipe(ink, [MOUTH.from, MOUTH.to], [1, 0]);
  wipe(ink, [BARE, DEEP], [0, HIDDEN]);
}

/** Wipes out what is painted, in part, between two distances from the opening and beyond. */
function wipe(ink: Ink, [near, far]: Point, [inner, outer]: Point): void {
  const middle = inChest(OPENING);
  const fall = ink.createRadialGradient(...middle, mm(near), ...middle, mm(far));
  fall.addColorStop(0, `rgba(0,0,0,${inner})`);
  fall.addColorStop(1, `rgba(0,0,0,${outer})`);
  const [left, bottom, right, top] = LIVER_BOUNDS;
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  ink.fillStyle = fall;
  ink.fillRect(left, bottom, right - left, top - bottom);
  ink.restore();
}
