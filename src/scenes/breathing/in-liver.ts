/** The liver's veins within it: bare where they open at its back, deeper the further from there, their ends lost in its tissue. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { type Bounds, type Ink, trace } from "../anatomy/painted-sheet.ts";
import { roundOf } from "../anatomy/tones.ts";
import { CHEST_AT } from "../circuit/chest-plan.ts";
import { saturationAlong } from "../circuit/circuit-blood.ts";
import type { Laid } from "../circuit/dots.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { inChest } from "./torso.ts";

/** Plane units: where the veins open, half the width of the vein there, within what distance they lie bare, and from where on they lie as deep as they get. */
const OPENING: Spot = [468, 528];
const MOUTH = 17;
const BARE = 34;
const DEEP = 150;
/** 0..1: how much of a vein is seen where it lies deepest, and plane units over which its end goes. */
const SEEN = 0.72;
const LOST = 44;
/** Plane units of a vein's wall, on both sides together. */
const WALL = 4;

export const LIVER_BOUNDS: Bounds = [...inChest([180, 720]), ...inChest([680, 480])];

const mm = (units: number): number => units / CHEST_AT.scale;
const clamped = (part: number): number => Math.min(1, Math.max(0, part));

/** In mm, y up. @param laid the liver's veins, each towards where it opens */
export function paintLiverVeins(
  ink: Ink,
  laid: readonly Laid[],
  circulation: Circulation,
  theme: Theme,
): void {
  const middle = inChest(OPENING);
  const veins = laid.map(({ vessel, line }) => {
    const points = Array.from(line.x, (x, i): Point => inChest([x, entryAt(line.y, i)]));
    const far = Math.max(...points.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1]))) / mm(1);
    const tones = roundOf(saturationAlong(circulation, vessel, 0), theme);
    /** @param bare plane units from the opening within which it is not drawn */
    const fall = (colour: string, bare: number) => {
      const made = ink.createRadialGradient(...middle, 0, ...middle, mm(far));
      for (let k = 0; k <= STOPS; k++) {
        const away = (far * k) / STOPS;
        const deep = 1 - (1 - SEEN) * clamped((away - BARE) / (DEEP - BARE));
        const end = vessel.fades ? clamped((far - away) / LOST) : 1;
        const alpha = Math.round(255 * deep * end * clamped(away - bare));
        made.addColorStop(k / STOPS, colour + alpha.toString(16).padStart(2, "0"));
      }
      return made;
    };
    return { points, width: vessel.width, tones, fall };
  });
  for (const [tone, part, more, bare] of [
    ["wall", 1, WALL, MOUTH],
    ["edge", 1, 0, -1],
    ["body", 0.7, 0, -1],
    ["light", 0.32, 0, -1],
  ] as const)
    for (const { points, width, tones, fall } of veins) {
      trace(ink, points);
      ink.lineWidth = mm(part * width + more);
      ink.strokeStyle = fall(tones[tone], bare);
      ink.stroke();
    }
}

const STOPS = 24;
