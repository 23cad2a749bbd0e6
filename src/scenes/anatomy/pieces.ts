/** The chest as pieces that are painted apart because they move apart, back to front. */
import { lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import type { Holds, Tube } from "./great-vessels.ts";
import { paintDiaphragm, paintLiver } from "./paint-abdomen.ts";
import { paintGraft } from "./paint-graft.ts";
import {
  paintAtrium,
  paintMuscle,
  paintRoot,
  paintVentricleBed,
  paintVentricleCavity,
} from "./paint-heart.ts";
import { paintLung } from "./paint-lung.ts";
import { paintRemains, remainsOutline } from "./paint-remains.ts";
import { laidOver, paintTube, scratch } from "./paint-tube.ts";
import { type Bounds, boundsOf, type Ink, trace } from "./painted-sheet.ts";
import { hollow, roundOf } from "./tones.ts";

export const PIECES = [
  "rightLung",
  "leftLung",
  "back",
  "abdomen",
  "atrium",
  "bed",
  "cavity",
  "muscle",
  "veins",
  "remains",
  "graft",
  "front",
] as const;
export type PieceName = (typeof PIECES)[number];

export interface Piece {
  readonly bounds: Bounds;
  /** mm: what it moves and swells about */
  readonly pivot: Point;
  readonly paint: (ink: Ink) => void;
  /** it lies in the ventricle's own lengths, from its base along its axis */
  readonly inVentricle?: true;
}

type Saturations = Circulation["saturations"];

/** mm of a 5-year-old: walls of great vessels, and of those that show their own marks as the pathway does. */
const WALL = 1;
const HOLLOW_WALL = 1.7;
/** What stays of the aorta over the left pulmonary artery, which passes behind it: so much that a hint of the flow comes through. */
const GLASS = 0.9;

/** @param seen closed lines (mm, x and y in turn) around the pathway's vessels, which the aorta lets through */
export function piecesOf(
  anatomy: Anatomy,
  saturations: Saturations,
  seen: readonly (readonly number[])[],
  theme: Theme,
): Readonly<Record<PieceName, Piece>> {
  const { heart, abdomen, frame } = anatomy;
  const s = frame.scale;
  const round = (holds: Holds) => roundOf(saturations[holds], theme);
  const tubes = (ink: Ink, drawn: readonly Tube[]) => {
    for (const tube of drawn) paintTube(ink, tube, round(tube.holds), WALL * s);
  };
  const over = (drawn: readonly Tube[]) =>
    boundsOf(
      drawn.map(({ line }) => line),
      12 * s,
    );
  const room = boundsOf([heart.atrium], 4 * heart.size);
  const own = { bounds: boundsOf([heart.muscle], 3), pivot: [0, 0], inVentricle: true } as const;
  const lower = [abdomen.liver, abdomen.diaphragm];
  return {
    rightLung: lung(anatomy, 0, saturations, theme),
    leftLung: lung(anatomy, 1, saturations, theme),
    back: { bounds: over(anatomy.behind), pivot: [0, 0], paint: (ink) => tubes(ink, anatomy.behind) },
    abdomen: {
      bounds: boundsOf(lower, 8 * s),
      pivot: [0, 0],
      paint(ink) {
        paintLiver(ink, abdomen, s, theme);
        paintDiaphragm(ink, abdomen, s, theme);
      },
    },
    atrium: {
      bounds: room,
      pivot: [(room[0] + room[2]) / 2, (room[1] + room[3]) / 2],
      paint: (ink) => paintAtrium(ink, heart, saturations.arterial, theme),
    },
    bed: { ...own, paint: (ink) => paintVentricleBed(ink, heart, theme) },
    cavity: { ...own, paint: (ink) => paintVentricleCavity(ink, heart, saturations.arterial, theme) },
    muscle: { ...own, paint: (ink) => paintMuscle(ink, heart, theme) },
    veins: {
      bounds: over([...anatomy.veins, ...abdomen.portal]),
      pivot: [0, 0],
      paint(ink) {
        for (const vein of anatomy.veins) {
          const inLiver = vein.name.includes("epatic");
          if (inLiver) paintTube(ink, vein, round("ivc"), WALL * s);
          else paintTube(ink, vein, hollow(theme), HOLLOW_WALL * s);
        }
        // The portal vein enters the liver before the inferior vena cava.
        for (const vein of abdomen.portal) paintTube(ink, vein, round("ivc"), WALL * s);
      },
    },
    remains: {
      bounds: boundsOf([remainsOutline(heart)], 4 * heart.size),
      pivot: [0, 0],
      paint: (ink) => paintRemains(ink, heart, theme),
    },
    graft: {
      bounds: frame.graft ? boundsOf([frame.graft.line], 20 * s) : [0, 0, 1, 1],
      pivot: [0, 0],
      paint(ink) {
        if (frame.graft) paintGraft(ink, frame.graft, s, theme);
      },
    },
    front: {
      bounds: over(anatomy.before),
      pivot: [0, 0],
      paint(ink) {
        const layer = scratch(ink, over(anatomy.before));
        tubes(layer, anatomy.before);
        paintRoot(layer, lastOf(anatomy.before), saturations.arterial, theme);
        letThrough(layer, anatomy, seen);
        laidOver(ink, layer, over(anatomy.before));
      },
    },
  };
}

function lung({ lungs, frame }: Anatomy, side: 0 | 1, saturations: Saturations, theme: Theme): Piece {
  const shape = lungs[side];
  const bloods = {
    arteries: roundOf((saturations.svc + saturations.ivc) / 2, theme),
    veins: roundOf(saturations.pulmonaryVein, theme),
  };
  return {
    bounds: boundsOf([shape.outline], 10 * frame.scale),
    pivot: shape.hilum,
    paint: (ink) => paintLung(ink, shape, bloods, frame.scale, theme),
  };
}

/** Where the aorta passes the pathway it turns to glass; the vein from the left arm lies before its branches. */
function letThrough(ink: Ink, { veins, frame }: Anatomy, seen: readonly (readonly number[])[]): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  ink.fillStyle = ink.strokeStyle = "#000";
  ink.beginPath();
  for (const loop of seen) {
    for (let i = 0; i < loop.length; i += 2)
      ink[i === 0 ? "moveTo" : "lineTo"](loop[i] ?? 0, loop[i + 1] ?? 0);
    ink.closePath();
  }
  ink.globalAlpha = 1 - GLASS;
  ink.fill();
  ink.globalAlpha = 1;
  for (const vein of veins.filter(({ name }) => /Brachio/.test(name))) {
    trace(ink, vein.line);
    ink.lineCap = "butt";
    ink.lineWidth = (vein.from + vein.to) / 2 + 2 * HOLLOW_WALL * frame.scale;
    ink.stroke();
  }
  ink.restore();
}
