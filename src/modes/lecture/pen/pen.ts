/** What a speaker points at and draws over the picture, as a pure state: a pointer, and lines in shares of the picture. */
import * as v from "valibot";

/** 0..1 of the picture's width and height */
export type Place = readonly [x: number, y: number];

export interface PenLine {
  readonly id: string;
  readonly points: readonly Place[];
}

export interface Marks {
  /** null = no pointer */
  readonly pointer: Place | null;
  readonly lines: readonly PenLine[];
}

export const NO_MARKS: Marks = { pointer: null, lines: [] };

const MAX_LINES = 200;
const MAX_POINTS = 2000;
/** Points of one message. */
export const MAX_SENT = 100;
/** share of the picture's width that the eraser reaches */
const REACH = 0.02;
/** of the usual picture: a share of its height is so much less of a length */
const SHAPE = 9 / 16;

const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const place = v.pipe(v.tuple([share, share]), v.readonly());

export const markEvent = v.variant("kind", [
  v.strictObject({ kind: v.literal("point"), at: place }),
  v.strictObject({ kind: v.picklist(["unpoint", "clear"]) }),
  v.strictObject({
    kind: v.literal("draw"),
    /** A new one begins a line. */
    line: v.pipe(v.string(), v.regex(/^[a-z0-9]{1,24}$/)),
    to: v.pipe(v.array(place), v.minLength(1), v.maxLength(MAX_SENT), v.readonly()),
  }),
  /** From where the eraser was to where it is: what it sweeps in one go is more than its reach. */
  v.strictObject({ kind: v.literal("erase"), along: v.pipe(v.tuple([place, place]), v.readonly()) }),
]);
export type MarkEvent = v.InferOutput<typeof markEvent>;

export function mark(marks: Marks, event: MarkEvent): Marks {
  switch (event.kind) {
    case "point":
      return { ...marks, pointer: event.at };
    case "unpoint":
      return marks.pointer ? { ...marks, pointer: null } : marks;
    case "clear":
      return marks.lines.length > 0 ? { ...marks, lines: [] } : marks;
    case "draw":
      return { ...marks, lines: drawn(marks.lines, event.line, event.to) };
    case "erase": {
      const lines = marks.lines.filter(({ points }) => !touches(points, event.along));
      return lines.length < marks.lines.length ? { ...marks, lines } : marks;
    }
  }
}

function drawn(lines: readonly PenLine[], id: string, to: readonly Place[]): readonly PenLine[] {
  const known = lines.findIndex((line) => line.id === id);
  const points = [...(lines[known]?.points ?? []), ...to].slice(0, MAX_POINTS);
  return known >= 0 ? lines.with(known, { id, points }) : [...lines, { id, points }].slice(-MAX_LINES);
}

type Stretch = readonly [from: Place, to: Place];

const touches = (points: readonly Place[], along: Stretch): boolean =>
  points.some((point, index) => apart([points[index - 1] ?? point, point], along) < REACH);

/** Between two stretches, in shares of the width. */
function apart(one: Stretch, other: Stretch): number {
  if (parted(one, other) && parted(other, one)) return 0;
  return Math.min(...one.map((end) => distance(end, ...other)), ...other.map((end) => distance(end, ...one)));
}

/** Whether the line through a stretch has the other's ends on its two sides. */
function parted([[ax, ay], [bx, by]]: Stretch, ends: Stretch): boolean {
  const [one, other] = ends.map(([x, y]) => (bx - ax) * (y - ay) - (by - ay) * (x - ax));
  return (one ?? 0) * (other ?? 0) < 0;
}

/** Of a place from the stretch between two others, in shares of the width. */
function distance([x, y]: Place, [ax, ay]: Place, [bx, by]: Place): number {
  const [dx, dy] = [bx - ax, (by - ay) * SHAPE];
  const [px, py] = [x - ax, (y - ay) * SHAPE];
  const length = dx * dx + dy * dy;
  const along = length > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / length)) : 0;
  return Math.hypot(px - along * dx, py - along * dy);
}
