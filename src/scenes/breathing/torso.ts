/** The trunk around the chest, from the neck to the belly with arms at its sides: skin, collar bones, and what of it holds the organs. */
import type { Graphics } from "pixi.js";
import type { Point } from "../../sim/geometry/geometry.ts";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { type Bounds, eraseAlong, type Ink, strokes, trace } from "../anatomy/painted-sheet.ts";
import { smoothLine } from "../anatomy/placing.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { inChest } from "../circuit/chest-plan.ts";
import { muted } from "../circuit/paint-figure.ts";
import { curve, type Spot, spots, spotsOf, traceCurve } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { paintCutBone } from "./cut-bone.ts";

/** What is shown, from the neck to below the liver; plane units, as the body's midline. */
export const CHEST = { left: 116, top: 24, right: 884, bottom: 796 } as const;
export const MIDLINE = 500;
const mirrored = (points: readonly Spot[]): readonly Spot[] =>
  points.map(([x, y]): Spot => [2 * MIDLINE - x, y]);
const whole = (half: readonly Spot[]): readonly Spot[] => [...half, ...mirrored(half).toReversed()];

const SKIN = whole(
  spots(
    "430 0, 433 84, 422 112, 386 134, 310 152, 236 170, 178 198, 146 242, 128 304, 119 372, 114 480, 158 480, 163 410, 174 366, 187 344, 191 364, 187 420, 183 520, 181 640, 180 800",
  ),
);
/** Fold before the armpit. */
const CREASE = spots("188 346, 194 322, 206 300");
/** Plane units: where an arm fades out, and the room of the right one, apart from the flank. */
const ARM = {
  from: 350,
  to: 464,
  room: spots("60 260, 168 260, 186 340, 178 400, 171 600, 60 600"),
} as const;
/** Lower and upper border to the shoulder from where it is cut: the front of the chest is taken off, with breastbone and collar bones' inner ends. */
const COLLAR_BONE = spots(
  "398 173, 400 181, 398 189, 390 190, 356 198, 316 200, 280 194, 246 190, 222 194, 206 190, 202 180, 214 175, 248 176, 284 180, 318 185, 354 183, 386 175, 398 173",
);
/** Plane units of a collar bone's cut, and mm of half its axes. */
const CUT = { x: 398, y: 181, wide: 1.7, high: 2.7 } as const;
const TRUNK = whole(
  spots(
    "430 0, 433 84, 422 112, 386 134, 310 152, 236 176, 206 250, 194 340, 186 420, 183 520, 181 640, 180 800",
  ),
);

/** Part of the skin's own colour, so that the body stays behind its organs. */
const SHARE = { dark: 0.5, light: 0.7 } as const;

const skinOf = (theme: Theme) => muted(legTissue("skin", theme), theme.colour.stage, SHARE[theme.name]);

export function paintTorso(ink: Ink, theme: Theme): void {
  const tones = skinOf(theme);
  const outline = curve(SKIN, 8);
  paintOrgan(ink, spotsOf(outline).map(inChest), tones, { depth: 12, edge: 1.1 });
  for (const side of [CREASE, mirrored(CREASE)]) {
    const fold = smoothLine(side.map(inChest));
    strokes(ink, fold, 1, [[3.2, tones.shade]]);
    strokes(ink, fold, 1, [[0.9, tones.edge]]);
  }
  for (const room of [ARM.room, mirrored(ARM.room)]) {
    trace(ink, room.map(inChest), true);
    eraseAlong(ink, inChest([0, ARM.from]), inChest([0, ARM.to]));
  }
}

/** Before the vessels to the arms. */
export function paintCollarBones(ink: Ink, theme: Theme): void {
  const bone = legTissue("bone", theme);
  for (const side of [COLLAR_BONE, mirrored(COLLAR_BONE)])
    paintOrgan(ink, smoothLine(side.map(inChest)), bone, { depth: 2.4, edge: 0.6 });
  for (const x of [CUT.x, 2 * MIDLINE - CUT.x]) {
    const [cx, cy] = inChest([x, CUT.y]);
    paintCutBone(
      ink,
      (rim) =>
        Array.from({ length: 24 }, (_, i): Point => {
          const turn = (Math.PI * i) / 12;
          return [cx + (CUT.wide - rim) * Math.cos(turn), cy + (CUT.high - rim) * Math.sin(turn)];
        }),
      theme,
    );
  }
}

/** Room between two spots of the plane, mm. */
const room = (lowest: Spot, highest: Spot): Bounds => {
  const [[left, bottom], [right, top]] = [inChest(lowest), inChest(highest)];
  return [left, bottom, right, top];
};
export const TORSO_BOUNDS = room([96, 810], [904, -10]);
export const COLLAR_BOUNDS = room([180, 496], [820, 150]);

/** For a mask: what lies inside ends at the skin. */
export function fillTorso(ink: Graphics): Graphics {
  traceCurve(ink, curve(TRUNK, 16));
  return ink.closePath().fill({ color: 0xffffff });
}
