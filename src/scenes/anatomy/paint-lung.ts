/** A lung: its lobes as a pale ground, and in them the trees of arteries and veins. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Opening, Point } from "../../sim/geometry/geometry.ts";
import { lipOf, windowEnd } from "../layers/window-ends.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { beforeArtery, REACH } from "./hilum.ts";
import type { LungShape } from "./lung-shape.ts";
import { paintOrgan } from "./paint-organ.ts";
import { LIGHT, laidOver, scratch } from "./paint-tube.ts";
import { type Bounds, type Ink, trace } from "./painted-sheet.ts";
import { type Round, tissue } from "./tones.ts";
import { stemsOf, type Tree } from "./tree.ts";

interface Bloods {
  readonly arteries: Round;
  readonly veins: Round;
}

/** mm of the thinnest twig */
const THINNEST = 0.4;

/** @param size mm of the body for one of a 5-year-old */
export function paintLung(ink: Ink, lung: LungShape, bloods: Bloods, size: number, theme: Theme): void {
  const look = tissue("lung", theme);
  paintOrgan(ink, lung.outline, look, { depth: 11 * size, alpha: 0.86, edge: 0.6 * size });
  ink.save();
  trace(ink, lung.outline, true);
  ink.clip();
  for (const fissure of lung.fissures) {
    trace(ink, fissure);
    ink.lineWidth = 1.8 * size;
    ink.strokeStyle = look.shade;
    ink.globalAlpha = 0.5;
    ink.stroke();
    ink.lineWidth = 0.55 * size;
    ink.strokeStyle = look.edge;
    ink.globalAlpha = 0.6;
    ink.stroke();
  }
  ink.restore();
  // Each lung's lower vein lies behind its arteries, the upper one before them.
  const [upper, lower] = stemsOf(lung.veins);
  paintTree(ink, lung.veins.nodes, lower, bloods.veins, size);
  paintTree(ink, lung.arteries.nodes, [...lung.arteries.nodes.keys()], bloods.arteries, size);
  paintTree(ink, lung.veins.nodes, upper, bloods.veins, size);
}

/** Part of its lumen's width by which the widest limb's outside is wider, and mm by which it is at most. */
const OUTSIDE = 0.38;
const MAX_MORE = 3.8;
/** Tone from the edge (0) over the body (1) to the light (2), part of the width, and how far it lies towards the light: as on a tube. */
const PASSES = Array.from({ length: 13 }, (_, k) => {
  const depth = k / 12;
  return [depth < 0.6 ? depth / 0.6 : (depth - 0.2) / 0.4, 1 - 0.86 * depth, 0.17 * depth] as const;
});

/** Takes away what a lung's artery covers. */
export function underArtery(ink: Ink, { arteries }: LungShape, size: number): void {
  ink.globalCompositeOperation = "destination-out";
  paintTree(ink, arteries.nodes, [...arteries.nodes.keys()], SOLID, size);
}

const SOLID: Round = { wall: "#000000", edge: "#000000", body: "#000000", light: "#000000" };

/** Outline, body and light of all twigs, each in its own pass, so that forks join without seams. */
function paintTree(
  ink: Ink,
  nodes: Tree["nodes"],
  drawn: readonly number[],
  { wall, edge, body, light }: Round,
  size: number,
): void {
  const widest = Math.max(...nodes.map(({ width }) => width));
  const outer = Math.min(OUTSIDE, MAX_MORE / widest);
  const pass = (colour: string, part: number, more: number, aside: number) => {
    ink.strokeStyle = colour;
    for (const i of drawn) {
      const { at, parent, width } = entryAt(nodes, i);
      if (parent < 0) continue;
      const from = entryAt(nodes, parent);
      const outside = Math.max(THINNEST * size, width * (1 + outer * (width / widest) ** 1.5));
      const [dx, dy] = [aside * outside * LIGHT[0], aside * outside * LIGHT[1]];
      ink.lineWidth = outside * part + more * size * Math.min(1, outside / (2 * size));
      ink.beginPath();
      ink.moveTo(from.at[0] + dx, from.at[1] + dy);
      ink.lineTo(at[0] + dx, at[1] + dy);
      ink.stroke();
    }
  };
  pass(wall, 1, OUTLINE, 0);
  for (const [tone, part, aside] of PASSES)
    pass(tone < 1 ? mix(edge, body, tone) : mix(body, light, tone - 1), part, 0, aside);
}

/** mm by which the outline reaches beyond */
const OUTLINE = 0.8;

/** Each pulmonary artery goes on from its window before the pericardium and its edge. */
export function paintStems(
  ink: Ink,
  bounds: Bounds,
  { lungs, pericardium, frame: { scale } }: Anatomy,
  tones: Round,
): void {
  const own = scratch(ink, bounds);
  for (const { arteries, hilum } of lungs) {
    const near = [...arteries.nodes.keys()].filter((i) => {
      const { at, parent } = entryAt(arteries.nodes, i);
      return parent >= 0 && Math.hypot(at[0] - hilum[0], at[1] - hilum[1]) < STEM * scale;
    });
    paintTree(own, arteries.nodes, near, tones, scale);
  }
  const room = scratch(ink, bounds);
  trace(room, pericardium, true);
  room.fill();
  room.lineWidth = 2 * scale;
  room.stroke();
  own.globalCompositeOperation = "destination-in";
  laidOver(own, room, bounds);
  laidOver(ink, own, bounds);
}

/** mm of a 5-year-old from its mouth */
const STEM = 38;

/** Each pulmonary artery as a closed vessel from its window's end to its opening, before all that crosses there; beyond it goes over into its tree. */
export function paintSleeves(ink: Ink, bounds: Bounds, { lungs, frame, heart }: Anatomy, tones: Round): void {
  for (const { arteries, hilum, side } of lungs) {
    const own = scratch(ink, bounds);
    const { width, normal } = frame[side];
    const far = ([x, y]: Point): number => Math.hypot(x - hilum[0], y - hilum[1]);
    const near = [...arteries.nodes.keys()].filter((i) => {
      const { at, parent, width: own } = entryAt(arteries.nodes, i);
      return parent >= 0 && far(at) < 2 * width && own > 0.8 * width;
    });
    paintTree(own, arteries.nodes, near, tones, frame.scale);
    const end = windowEnd(frame[side], frame);
    const beyond = (mm: number, across: number): Point => [
      end.centre[0] + mm * normal[0] - across * normal[1],
      end.centre[1] + mm * normal[1] + across * normal[0],
    ];
    own.globalCompositeOperation = "destination-in";
    trace(
      own,
      [
        ...lipOf(end),
        beyond(0, -width),
        beyond(3 * width, -width),
        beyond(3 * width, width),
        beyond(0, width),
      ],
      true,
    );
    const fall = own.createLinearGradient(...spotAt(frame[side], 0), ...spotAt(frame[side], 0.5 * width));
    fall.addColorStop(0, "#000");
    fall.addColorStop(1, "#0000");
    own.fillStyle = fall;
    own.fill();
    // The left one runs behind the atrium's appendage.
    own.globalCompositeOperation = "destination-out";
    for (const part of [heart.atrium, heart.appendage]) {
      trace(own, part, true);
      own.fill();
    }
    laidOver(ink, own, bounds);
  }
}

/** That stretch once more, over the artery's closed front. */
export function paintBeforeArtery(ink: Ink, bounds: Bounds, anatomy: Anatomy, tones: Round): void {
  const [{ veins }] = anatomy.lungs;
  const { scale } = anatomy.frame;
  const over = beforeArtery(anatomy);
  const middle = over[over.length >> 1];
  if (!middle) return;
  const own = scratch(ink, bounds);
  paintTree(own, veins.nodes, stemsOf(veins)[0], tones, scale);
  const [x, y] = middle.at;
  const fall = own.createRadialGradient(x, y, 0.6 * REACH * scale, x, y, REACH * scale);
  fall.addColorStop(0, "#000");
  fall.addColorStop(1, "#0000");
  own.globalCompositeOperation = "destination-in";
  own.fillStyle = fall;
  own.fillRect(bounds[0], bounds[1], bounds[2] - bounds[0], bounds[3] - bounds[1]);
  laidOver(ink, own, bounds);
}

const spotAt = ({ centre, normal }: Pick<Opening, "centre" | "normal">, mm: number): Point => [
  centre[0] + mm * normal[0],
  centre[1] + mm * normal[1],
];
