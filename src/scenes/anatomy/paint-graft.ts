/** What the surgeon has sewn in: a conduit of woven fabric with its fine corrugation, or a tunnel's patch, and the running sutures that hold it. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { line as lineOf, spotAt } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import { type Ink, trace } from "./painted-sheet.ts";
import { CLOTH, type Cloth, threadOf } from "./tones.ts";

export type Graft = NonNullable<ChestFrame["graft"]>;
type Junction = NonNullable<ChestFrame["junction"]>;

/** mm of a 5-year-old: thickness of the fabric, from ring to ring, from stitch to stitch, and a stitch's length. */
const FABRIC = 2;
const PITCH = 1.9;
const STITCH = 1.7;
const BITE = 2.6;
/** How far a ring's front bows down, of the width. */
const BOW = 0.13;

/** Part of the graft's length over which its direction is taken. */
const REACH = 0.06;

/** @param size mm of the body for one of a 5-year-old */
export function paintGraft(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const cloth = { ...CLOTH[theme.name], thread: threadOf(theme) };
  ink.save();
  ink.lineCap = "butt";
  paintConduit(ink, graft, size, cloth);
  ink.restore();
}

/** A place beside the graft's middle: `side` 1 is the patient's left; `beyond` mm outside its lumen. */
export const beside = ({ line, widths }: Graft, along: number, side: number, beyond = 0): Point => {
  const whole = lineOf(line);
  const { at } = spotAt(whole, along);
  // Across the course's general way: its single steps would jolt what stands beside it.
  const [near, far] = [spotAt(whole, along - REACH).at, spotAt(whole, along + REACH).at];
  const step = Math.hypot(far[0] - near[0], far[1] - near[1]) || 1;
  const left: Point = [(near[1] - far[1]) / step, (far[0] - near[0]) / step];
  const width = entryAt(widths, Math.round(along * (widths.length - 1)));
  const reach = -side * (width / 2 + Math.sign(Math.abs(side)) * beyond);
  return [at[0] + reach * left[0], at[1] + reach * left[1]];
};

/** The fabric edge on, its outside drawn in at each ring. */
function paintEdge(ink: Ink, graft: Graft, side: 1 | -1, size: number, { body, fold }: Cloth): void {
  const rings = ringsOf(graft, size);
  const steps = 6 * rings;
  const places = Array.from({ length: steps + 1 }, (_, i) => i / steps);
  const outer = places.map((along) =>
    beside(graft, along, side, FABRIC * size * (1 + 0.24 * Math.cos(2 * Math.PI * rings * along))),
  );
  trace(ink, [...outer, ...places.map((along) => beside(graft, along, side, -0.1 * size)).reverse()], true);
  ink.fillStyle = body;
  ink.fill();
  ink.lineWidth = 0.3 * size;
  ink.strokeStyle = fold;
  ink.stroke();
}

function paintConduit(ink: Ink, graft: Graft, size: number, cloth: Cloth): void {
  for (const side of [1, -1] as const) paintEdge(ink, graft, side, size, cloth);
  const rings = ringsOf(graft, size);
  // Over the blood only a hint: the flow within is what is to be seen.
  for (let k = 1; k < rings; k++) {
    traceRing(ink, graft, k / rings);
    ink.lineWidth = 0.55 * size;
    ink.strokeStyle = cloth.body;
    ink.globalAlpha = 0.26;
    ink.stroke();
  }
  ink.globalAlpha = 1;
  for (const end of [0, 1]) paintSuture(ink, graft, end, size, cloth);
}

function traceRing(ink: Ink, graft: Graft, along: number): void {
  const [right, left] = [beside(graft, along, -1, 0), beside(graft, along, 1, 0)];
  const bow = 2 * BOW * Math.hypot(left[0] - right[0], left[1] - right[1]);
  ink.beginPath();
  ink.moveTo(...right);
  ink.quadraticCurveTo((left[0] + right[0]) / 2, (left[1] + right[1]) / 2 - bow, ...left);
}

/** Where graft meets vessel: a seam around it, crossed by stitches. */
function paintSuture(ink: Ink, graft: Graft, end: number, size: number, cloth: Cloth): void {
  paintSeam(ink, beside(graft, end, -1, FABRIC * size), beside(graft, end, 1, FABRIC * size), size, cloth);
}

/** Where the superior vena cava is sewn end to side to the pulmonary arteries. */
export function paintJunction(ink: Ink, { at: [x, y], width }: Junction, size: number, theme: Theme): void {
  const half = width / 2 + FABRIC * size;
  paintJoin(ink, [x - half, y], [x + half, y], size, theme);
}

/** A seam around a vessel, from one side to the other. */
function paintJoin(ink: Ink, from: Point, to: Point, size: number, theme: Theme): void {
  ink.save();
  ink.lineCap = "butt";
  paintSeam(ink, from, to, size, { ...CLOTH[theme.name], thread: threadOf(theme) });
  ink.restore();
}

function paintSeam(ink: Ink, from: Point, to: Point, size: number, { thread, fold }: Cloth): void {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const across = Math.hypot(dx, dy);
  const at = (part: number): Point => {
    const bow = 4 * BOW * part * (1 - part);
    return [from[0] + part * dx + bow * dy, from[1] + part * dy - bow * dx];
  };
  trace(
    ink,
    Array.from({ length: 25 }, (_, i) => at(i / 24)),
  );
  ink.lineWidth = 0.5 * size;
  ink.strokeStyle = fold;
  ink.stroke();
  const count = Math.round(across / (STITCH * size));
  for (let k = 0; k <= count; k++) stitch(ink, at(k / count), [0.35 * dx - dy, 0.35 * dy + dx], size, thread);
}

function stitch(ink: Ink, [x, y]: Point, way: Point, size: number, colour: string): void {
  const half = (BITE * size) / 2 / Math.hypot(...way);
  ink.beginPath();
  ink.moveTo(x - half * way[0], y - half * way[1]);
  ink.lineTo(x + half * way[0], y + half * way[1]);
  ink.lineWidth = 0.55 * size;
  ink.strokeStyle = colour;
  ink.stroke();
}

const ringsOf = ({ line }: Graft, size: number): number =>
  Math.max(4, Math.round(lastOf(lineOf(line).run) / (PITCH * size)));
