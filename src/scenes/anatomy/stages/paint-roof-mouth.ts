/** Where an atrium's roof is sewn to the pulmonary artery behind it: the artery through the wall, the opening, and its rim. */
import { entryAt, lastOf } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import { boundsOf, dash, type Ink, strokes, trace } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { inside, tissue } from "../tones.ts";
import type { connectionOf } from "./chamber-shape.ts";
import { soften } from "./paint-tunnel-lining.ts";
import { runningSuture } from "./running-suture.ts";

/** What a mouth or a dimple darkens towards. */
export const HOLLOW = "#2a1030";

type Connection = ReturnType<typeof connectionOf>;

/** The artery lifts the wall before it: in the light above, in its own shade beneath. */
export function paintArteryBehind(ink: Ink, { over, under }: Connection, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const shifted = (line: readonly Point[], up: number) => line.map(([x, y]): Point => [x, y + up * size]);
  paintHiddenArtery(ink, [over, under], size, theme);
  soften(ink, shifted(under, 1.4), 3 * size, look.shade);
  soften(ink, shifted(under, -0.8), 2 * size, look.shade);
  ink.globalAlpha = 0.5;
  strokes(ink, shifted(over, -2.4), size, [[2, look.light]]);
  ink.globalAlpha = 1;
}

/** Where a wall lies before it the artery's colour comes through, between the edges that are hidden. */
export function paintHiddenArtery(
  ink: Ink,
  edges: readonly (readonly Point[])[],
  size: number,
  theme: Theme,
): void {
  const [one, other] = edges;
  if (one && other) {
    // The lumen's edge goes round; the two lines may run either way.
    const [x] = lastOf(one);
    const turned = Math.abs(x - entryAt(other, 0)[0]) > Math.abs(x - lastOf(other)[0]);
    trace(ink, [...one, ...(turned ? other.toReversed() : other)], true);
    ink.save();
    ink.globalAlpha = GHOST;
    ink.fillStyle = theme.colour.poor;
    ink.fill();
    ink.restore();
  }
  for (const line of edges) {
    trace(ink, line);
    dash(ink, size, theme.colour.poor, { wide: 0.6, lengths: [2.4, 1.3], alpha: 0.9 });
  }
}

/** How much of its colour that is. */
const GHOST = 0.3;

/** Through the mouth: the artery's back wall, which runs on into the dark to both sides, and the shadow of the roof's edge on it. */
export function paintOpening(ink: Ink, { opening }: Connection, size: number, theme: Theme): void {
  const { edge, body, light } = inside(theme);
  const mouth = opening();
  const [left, bottom, right, top] = boundsOf([mouth], 0);
  const deep = mix(edge, HOLLOW, 0.45);
  const along = ink.createLinearGradient(left, 0, right, 0);
  for (const [part, colour] of [
    [0, deep],
    [0.2, edge],
    [0.42, body],
    [0.58, body],
    [0.8, edge],
    [1, deep],
  ] as const)
    along.addColorStop(part, colour);
  trace(ink, mouth, true);
  ink.fillStyle = along;
  ink.fill();
  ink.save();
  ink.clip();
  // A round that lies across: its light is low, for it is hollow.
  const middle = bottom + 0.34 * (top - bottom);
  ink.globalAlpha = 0.35;
  strokes(
    ink,
    smoothLine([
      [left + 0.2 * (right - left), middle + size],
      [(left + right) / 2, middle],
      [right - 0.2 * (right - left), middle + size],
    ]),
    size,
    [[2, light]],
  );
  ink.globalAlpha = 1;
  ink.translate(0.4 * size, -1.2 * size);
  soften(ink, mouth, 3 * size, deep);
  ink.restore();
}

/** The wall's cut edge, sewn to the artery's all round: it overhangs the opening above, in its own shade, and below turns in towards it, in the light. */
export function paintRim(ink: Ink, { opening }: Connection, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const half = (out: number, below: boolean): readonly Point[] => {
    const ring = opening(out * size);
    const middle = ring.length >> 1;
    return below ? ring.slice(middle) : ring.slice(0, middle + 1);
  };
  const [near, far] = [half(1.6, true), half(5, true)];
  for (let i = 1; i < near.length; i += 3) {
    const [[x, y], [toX, toY]] = [entryAt(near, i), entryAt(far, i)];
    ink.globalAlpha = 0.3;
    strokes(
      ink,
      smoothLine([
        [x, y],
        [(x + toX) / 2 + 0.3 * size, (y + toY) / 2],
        [toX, toY],
      ]),
      size,
      [[0.6, look.edge]],
    );
  }
  ink.globalAlpha = 1;
  strokes(ink, half(0.5, false), size, [
    [1.6, look.edge],
    [1, look.shade],
  ]);
  strokes(ink, half(1.2, true), size, [
    [3, look.edge],
    [2.6, look.body],
    [1.3, look.light],
  ]);
  runningSuture(ink, half(0.5, false), 0.7 * size, theme, 0.45);
  runningSuture(ink, half(1.2, true), 0.8 * size, theme, 0.6);
}
