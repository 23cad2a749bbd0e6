/** What the surgeon has sewn in: a conduit with the rings that keep it open, and the running sutures that hold it. */
import { lastOf } from "../../sim/checked/present.ts";
import { line as lineOf, spotAt } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import { beside, type Graft } from "./graft-course.ts";
import { type Ink, strokes, trace } from "./painted-sheet.ts";
import { CLOTH, type Cloth, threadOf } from "./tones.ts";

type Junction = NonNullable<ChestFrame["junction"]>;

/** mm of a 5-year-old: thickness of the fabric, a ring and the way to the next, from stitch to stitch, and a stitch's length. */
const FABRIC = 1.5;
const RING = 0.95;
const PITCH = 3.4;
const STITCH = 1.7;
const BITE = 2.2;
/** How far the back of a ring or seam bows up, of the width: it is seen a little from above. */
const BOW = 0.12;
/** What the blood before it leaves of a seam's back. */
const BACK = 0.55;

/** How much of the fabric's colour its inside shows behind the blood. */
const INSIDE = { dark: 0.08, light: 0.2 } as const;

/** @param size mm of the body for one of a 5-year-old */
export function paintGraft(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const cloth = { ...CLOTH[theme.name], thread: threadOf(theme) };
  ink.save();
  ink.lineCap = "butt";
  paintConduit(ink, graft, size, cloth);
  ink.restore();
}

/** Its back wall and the backs of its seams, seen through the blood. */
export function paintSewnBehind(ink: Ink, { graft, junction, scale: s }: ChestFrame, theme: Theme): void {
  const cloth = { ...CLOTH[theme.name], thread: threadOf(theme) };
  if (junction) paintBack(ink, ...acrossJunction(junction), s, cloth.thread);
  if (graft?.kind !== "conduit") return;
  const places = Array.from({ length: 41 }, (_, i) => i / 40);
  trace(
    ink,
    [...places.map((at) => beside(graft, at, 1)), ...places.map((at) => beside(graft, at, -1)).reverse()],
    true,
  );
  ink.fillStyle = cloth.body;
  ink.globalAlpha = INSIDE[theme.name];
  ink.fill();
  const rings = ringsOf(graft, s);
  for (let k = 1; k < rings; k++) {
    const back = arched(beside(graft, k / rings, -1), beside(graft, k / rings, 1));
    strokes(ink, back, s, [
      [1.3, cloth.fold],
      [0.9, cloth.body],
    ]);
  }
  ink.globalAlpha = 1;
  for (const end of [0, 1]) paintBack(ink, beside(graft, end, -1), beside(graft, end, 1), s, cloth.thread);
}

/** The back of a seam, bowed as a ring. */
export const arched = (from: Point, to: Point): Point[] => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  return Array.from({ length: 25 }, (_, i): Point => {
    const bow = BOW * Math.sin((Math.PI * i) / 24) ** 0.7;
    return [from[0] + (dx * i) / 24 - bow * dy, from[1] + (dy * i) / 24 + bow * dx];
  });
};

function paintBack(ink: Ink, from: Point, to: Point, size: number, thread: string): void {
  ink.save();
  ink.globalAlpha = BACK;
  stitches(ink, arched(from, to), 0.62 * size, thread);
  ink.restore();
}

/** The fabric edge on, with its rings cut across. */
function paintConduit(ink: Ink, graft: Graft, size: number, cloth: Cloth): void {
  const { body, fold, thread } = cloth;
  const rings = ringsOf(graft, size);
  ink.fillStyle = body;
  for (const side of [1, -1]) {
    shade(ink, graft, side, size);
    ink.lineWidth = 0.35 * size;
    ink.strokeStyle = fold;
    for (let k = 1; k < rings; k++) {
      const [x, y] = beside(graft, k / rings, side, FABRIC * size);
      ink.beginPath();
      ink.arc(x, y, RING * size, 0, 2 * Math.PI);
      ink.fill();
      ink.stroke();
    }
    const places = Array.from({ length: 61 }, (_, i) => i / 60);
    const edge = (mm: number) => places.map((along) => beside(graft, along, side, mm * size));
    trace(ink, [...edge(FABRIC), ...edge(-0.1).reverse()], true);
    ink.fill();
    ink.stroke();
  }
  for (const end of [0, 1]) paintEnds(ink, beside(graft, end, -1), beside(graft, end, 1), size, thread);
}

/** What passes behind it goes into its shade. */
function shade(ink: Ink, graft: Graft, side: number, size: number): void {
  ink.save();
  ink.globalAlpha = 0.05;
  ink.lineCap = "round";
  const edge = Array.from({ length: 31 }, (_, i) => beside(graft, i / 30, side, FABRIC * size));
  for (let k = 1; k <= 8; k++) strokes(ink, edge.slice(k, -k), size, [[0.9 * k, SHADE]]);
  ink.restore();
}

const SHADE = "#2a0508";

const acrossJunction = ({ at: [x, y], width }: Junction): readonly [Point, Point] => [
  [x - width / 2, y],
  [x + width / 2, y],
];

/** Where the superior vena cava is sewn end to side to the pulmonary arteries. */
export const paintJunction = (ink: Ink, junction: Junction, size: number, theme: Theme): void =>
  paintEnds(ink, ...acrossJunction(junction), size, threadOf(theme));

/** The seam on both cut edges of the wall. */
function paintEnds(ink: Ink, from: Point, to: Point, size: number, thread: string): void {
  paintEnd(ink, to, [to[0] - from[0], to[1] - from[1]], size, thread);
  paintEnd(ink, from, [from[0] - to[0], from[1] - to[1]], size, thread);
}

/** The seam on one of them. @param out away from the lumen */
export function paintEnd(ink: Ink, [x, y]: Point, [dx, dy]: Point, size: number, thread: string): void {
  const across = Math.hypot(dx, dy);
  for (const reach of [0.3, 1.2, 2.1]) {
    const out = (reach * size) / across;
    stitch(ink, [x + out * dx, y + out * dy], [0.35 * dx - dy, 0.35 * dy + dx], size, thread);
  }
}

/** A running suture along a line. */
export function stitches(ink: Ink, along: readonly Point[], size: number, thread: string): void {
  const seam = lineOf(along);
  const count = Math.round(lastOf(seam.run) / (1.35 * STITCH * size));
  for (let k = 0; k <= count; k++) {
    const { at, left } = spotAt(seam, k / count);
    stitch(ink, at, [left[0] + 0.35, left[1] + 0.35], size, thread);
  }
}

function stitch(ink: Ink, [x, y]: Point, way: Point, size: number, colour: string): void {
  const half = (BITE * size) / 2 / Math.hypot(...way);
  ink.beginPath();
  ink.moveTo(x - half * way[0], y - half * way[1]);
  ink.lineTo(x + half * way[0], y + half * way[1]);
  ink.lineWidth = 0.5 * size;
  ink.strokeStyle = colour;
  ink.stroke();
}

const ringsOf = ({ line }: Graft, size: number): number =>
  Math.max(4, Math.round(lastOf(lineOf(line).run) / (PITCH * size)));
