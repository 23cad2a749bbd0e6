/** Curves over axes, drawn into a scene: hairline marks, names at the curves themselves. */
import type { Graphics } from "pixi.js";
import { formatNumber } from "../../i18n/index.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import type { Lettering } from "./lettering.ts";
import { digitsOf, type Range, thinned } from "./scale.ts";

export interface Line {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly colour: string;
  /** CSS px on, off, ...; a whole line without it */
  readonly dash?: readonly number[];
  readonly width?: number;
  /** discs at the points, for curves through few computed states */
  readonly points?: boolean;
  /** the horizontal axis' place from which it is broken, and its points hollow */
  readonly beyond?: number;
  /** at each x the range that is left open, shaded behind the curve */
  readonly open?: readonly (readonly [low: number, high: number])[];
}

export interface Plot {
  /** CSS px, axis numbers included */
  readonly box: Box;
  readonly x: Range;
  readonly y: Range;
  readonly lines: readonly Line[];
  /** the vertical axis' title, above it; unit included */
  readonly title: string;
  readonly titleColour?: string;
  /** under the horizontal axis; its numbers are left out without it */
  readonly foot?: string;
  /** what stands under a mark of the horizontal axis, line by line; its number without it */
  readonly markWords?: (mark: number) => readonly string[];
  /** stretches of the horizontal axis that stand out */
  readonly bands?: readonly { readonly from: number; readonly to: number }[];
  /** places of the horizontal axis at which a faint line rises */
  readonly risers?: readonly number[];
  /** CSS px */
  readonly type: number;
}

export interface Plotted {
  readonly inner: Box;
  /** y, its title included */
  readonly top: number;
  readonly toX: (x: number) => number;
  readonly toY: (y: number) => number;
}

/** In sizes of type: title and air around a plot, its least height to be read, and what a foot takes below the last of a column. */
const AROUND = 2.3;
const MIN = 3.2;
const FOOT = 2.3;
const LINE = 1.2;
/** From line to line under a mark. */
const UNDER = 1.15;
/** A column lower than this shows none: it would lie on what stands beneath. */
const NONE = 4.8;

/**
 * Those of a column of plots that can be read at this height: the first in rank, in their own order.
 * @param rank    0 stays longest; by their order without it
 * @param linesOf how many lines a plot's title takes
 */
export function fitting<Each>(
  plots: readonly Each[],
  height: number,
  type: number,
  rank: (plot: Each) => number = (plot) => plots.indexOf(plot),
  linesOf: (plot: Each) => number = () => 1,
): readonly Each[] {
  if (height < NONE * type) return [];
  const ranked = [...plots].sort((a, b) => rank(a) - rank(b));
  const room = (count: number) => {
    const lines = Math.max(...ranked.slice(0, count).map(linesOf));
    return count * (AROUND + LINE * (lines - 1) + MIN) <= height / type - FOOT;
  };
  let count = plots.length;
  while (count > 1 && !room(count)) count--;
  const kept = ranked.slice(0, count);
  return plots.filter((plot) => kept.includes(plot));
}

/** The boxes of a column of plots, of which the last has room for a foot. @param markLines under each mark of its axis */
export function columnOf(box: Box, count: number, type: number, markLines = 1): readonly Box[] {
  const foot = type * (FOOT + UNDER * (markLines - 1));
  const height = (box.height - foot) / count;
  return Array.from({ length: count }, (_, i) => ({
    ...box,
    y: box.y + i * height,
    height: height + (i === count - 1 ? foot : 0),
  }));
}

/** The drawing area inside the box, when numbers of size `type` stand at the left and, over a foot, beneath. @param markLines under each mark; 0 without a foot */
export function innerBox(box: Box, type: number, markLines: number, titleLines = 1): Box {
  const left = type * 2.7;
  const top = type * (0.5 + LINE * titleLines);
  const bottom = markLines > 0 ? type * (2.9 + UNDER * (markLines - 1)) : type * 0.6;
  return {
    x: box.x + left,
    y: box.y + top,
    width: Math.max(8, box.width - left - type * 0.8),
    height: Math.max(8, box.height - top - bottom),
  };
}

const titleRoom = (width: number, type: number): number => width - type * 2.7;

/** How many lines a title takes over a plot of this width, CSS px. */
export function titleLines(
  words: Lettering,
  title: string,
  width: number,
  type: number,
  theme: Theme,
): number {
  const note = { lines: [{ words: title, size: type, colour: theme.colour.ink }], bare: true };
  const one = words.measure(note, theme).height;
  return Math.round(words.measure({ ...note, wrap: titleRoom(width, type) }, theme).height / one);
}

const wordsAt = ({ markWords, x }: Plot, mark: number): readonly string[] =>
  markWords?.(mark) ?? [formatNumber(mark, digitsOf(x))];

/** Words that belong to a plot, bare on the ground. */
type Say = (text: string, x: number, y: number, anchor: readonly [number, number]) => void;

export function drawPlot(ink: Graphics, words: Lettering, plot: Plot, theme: Theme): Plotted {
  const { colour } = theme;
  const { type, x, y } = plot;
  const titled = titleLines(words, plot.title, plot.box.width, type, theme);
  const markLines =
    plot.foot === undefined ? 0 : Math.max(1, ...x.marks.map((mark) => wordsAt(plot, mark).length));
  const inner = innerBox(plot.box, type, markLines, titled);
  const plotted: Plotted = {
    inner,
    top: plot.box.y,
    toX: (value) => inner.x + ((value - x.min) / (x.max - x.min || 1)) * inner.width,
    toY: (value) => inner.y + inner.height - ((value - y.min) / (y.max - y.min || 1)) * inner.height,
  };
  const small = (text: string) => [{ words: text, size: type * 0.92, colour: colour.inkSoft }];
  const say: Say = (text, px, py, anchor) =>
    words.write({ lines: small(text), x: px, y: py, anchor, bare: true }, theme);
  drawAxes(ink, say, plot, plotted, theme);
  if (plot.foot !== undefined) {
    const half = words.measure({ lines: small(plot.foot), bare: true }, theme).width / 2;
    // Beneath the middle of a short axis it would reach out of the box.
    const middle = Math.min(inner.x + inner.width / 2, plot.box.x + plot.box.width - half);
    say(plot.foot, middle, inner.y + inner.height + type * (1.5 + UNDER * (markLines - 1)), [0.5, 0]);
  }
  words.write(
    {
      lines: [{ words: plot.title, size: type, colour: plot.titleColour ?? colour.ink }],
      anchor: [0, 1],
      bare: true,
      x: inner.x,
      y: inner.y - type * 0.25,
      wrap: titleRoom(plot.box.width, type),
    },
    theme,
  );
  for (const line of plot.lines) drawLine(ink, line, plotted, type, colour.stage);
  return plotted;
}

/** Stretches that stand out, and the marks of both axes with their numbers. */
function drawAxes(
  ink: Graphics,
  say: Say,
  plot: Plot,
  { inner, toX, toY }: Plotted,
  { colour }: Theme,
): void {
  const { type, x, y, bands = [], risers = [], foot } = plot;
  for (const { from, to } of bands)
    ink
      .rect(toX(from), inner.y, toX(to) - toX(from), inner.height)
      .fill({ color: colour.backdrop, alpha: 0.85 });
  for (const riser of risers)
    ink
      .moveTo(toX(riser), inner.y)
      .lineTo(toX(riser), inner.y + inner.height)
      .stroke({ color: colour.hair, width: 1, alpha: 0.45 });
  for (const mark of thinned(y, inner.height, type * 1.25)) {
    const zero = mark === 0 && y.min < 0;
    ink
      .moveTo(inner.x, toY(mark))
      .lineTo(inner.x + inner.width, toY(mark))
      .stroke({ color: colour.hair, width: zero ? 1.6 : 1, alpha: zero ? 0.9 : 0.3 });
    say(formatNumber(mark, digitsOf(y)), inner.x - type * 0.45, toY(mark), [1, 0.5]);
  }
  if (foot === undefined) return;
  const bottom = inner.y + inner.height;
  for (const mark of thinned(x, inner.width, type * 3)) {
    ink
      .moveTo(toX(mark), bottom)
      .lineTo(toX(mark), bottom + type * 0.3)
      .stroke({ color: colour.hair, width: 1 });
    wordsAt(plot, mark).forEach((words, i) => {
      say(words, toX(mark), bottom + type * (0.35 + UNDER * i), [0.5, 0]);
    });
  }
}

/** The upright line at `x` of a plot: the moment or the state that the picture beside it shows. */
export function markAt(ink: Graphics, { inner, toX }: Plotted, x: number, type: number, theme: Theme): void {
  ink
    .moveTo(toX(x), inner.y)
    .lineTo(toX(x), inner.y + inner.height)
    .stroke({ color: theme.colour.accent, width: Math.max(2, type * 0.12) });
}

/** In sizes of type: dashes of a curve's broken end, and the gaps between. */
export const BROKEN: readonly number[] = [0.62, 0.5];

function drawLine(ink: Graphics, line: Line, { toX, toY }: Plotted, type: number, ground: string): void {
  const width = line.width ?? Math.max(2, type * 0.16);
  const style = { color: line.colour, width, join: "round", cap: "round" } as const;
  const points: [number, number][] = [];
  for (let i = 0; i < line.x.length; i++)
    if (Number.isFinite(line.y[i])) points.push([toX(entryAt(line.x, i)), toY(entryAt(line.y, i))]);
  if (line.open && line.open.length > 1) {
    const edge = (end: 0 | 1) =>
      present(line.open).map((range, i) => [toX(entryAt(line.x, i)), toY(range[end])] as const);
    ink.poly([...edge(1), ...edge(0).reverse()].flat()).fill({ color: line.colour, alpha: 0.2 });
  }
  const ends = line.beyond === undefined ? Number.POSITIVE_INFINITY : toX(line.beyond);
  const [whole, broken] = cutAt(points, ends);
  const pieces = line.dash ? dashes(whole, line.dash) : whole.length > 1 ? [whole] : [];
  for (const piece of [
    ...pieces,
    ...dashes(
      broken,
      BROKEN.map((part) => part * type),
    ),
  ]) {
    ink.moveTo(...entryAt(piece, 0));
    for (const [px, py] of piece.slice(1)) ink.lineTo(px, py);
    ink.stroke(style);
  }
  if (!line.points) return;
  for (const [px, py] of points) {
    ink.circle(px, py, width * 1.5).fill(px > ends ? ground : line.colour);
    if (px > ends) ink.stroke({ color: line.colour, width: 0.6 * width });
  }
}

/** A polyline up to a place of the horizontal axis, and from there on. */
export function cutAt(
  points: readonly [number, number][],
  at: number,
): readonly [[number, number][], [number, number][]] {
  const [before, after] = [points.filter(([x]) => x <= at), points.filter(([x]) => x > at)];
  const [a, b] = [before.at(-1), after[0]];
  if (!a || !b) return [before, after];
  const part = (at - a[0]) / (b[0] - a[0]);
  const cut = (): [number, number] => [at, a[1] + part * (b[1] - a[1])];
  return [
    [...before, cut()],
    [cut(), ...after],
  ];
}

/** A polyline cut into the drawn pieces of a dash pattern (lengths on, off, ...), by length along it. */
export function dashes(
  points: readonly (readonly [number, number])[],
  pattern: readonly number[],
): [number, number][][] {
  const pieces: [number, number][][] = [];
  let part = 0;
  let left = entryAt(pattern, 0);
  let piece: [number, number][] = points[0] ? [[...points[0]]] : [];
  for (let i = 1; i < points.length; i++) {
    let [ax, ay] = entryAt(points, i - 1);
    const [bx, by] = entryAt(points, i);
    let length = Math.hypot(bx - ax, by - ay);
    while (length > left) {
      const w = left / length;
      [ax, ay] = [ax + (bx - ax) * w, ay + (by - ay) * w];
      length -= left;
      if (part % 2 === 0) pieces.push([...piece, [ax, ay]]);
      part = (part + 1) % pattern.length;
      left = entryAt(pattern, part);
      piece = [[ax, ay]];
    }
    left -= length;
    if (part % 2 === 0) piece.push([bx, by]);
  }
  if (part % 2 === 0 && piece.length > 1) pieces.push(piece);
  return pieces;
}
