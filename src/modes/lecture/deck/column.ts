/** The column beside a scene's picture where the step has figures of its own: words above, figures below them, numbers at the foot. */
import { linesAt } from "./fit.ts";

/** inches */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** points: words take the room that they need at this size */
const READ = 12;
/** em */
const LINE = 1.25;
/** inches */
const WORDS = { min: 0.7, max: 2.3 } as const;
const NUMBERS = 1;
const GAP = 0.1;

export function columnOf(column: Box, words: string, numbers: boolean) {
  const { x, y, w, h } = column;
  const needed = (linesAt(words, READ, w) * READ * LINE) / 72;
  const said = Math.min(WORDS.max, Math.max(WORDS.min, needed));
  const foot = numbers ? NUMBERS + GAP : 0;
  return {
    body: { x, y, w, h: said },
    figures: { x, y: y + said + GAP, w, h: h - said - GAP - foot },
    numbers: { x, y: y + h - NUMBERS, w, h: NUMBERS },
  } as const;
}

/** So many boxes of one size in one. */
export function shared({ x, y, w, h }: Box, count: number): readonly Box[] {
  const columns = count === 1 ? 1 : 2;
  const rows = Math.ceil(count / columns);
  return Array.from({ length: count }, (_, index) => ({
    x: x + ((index % columns) * w) / columns,
    y: y + (Math.floor(index / columns) * h) / rows,
    w: w / columns - (columns > 1 ? GAP / 2 : 0),
    h: h / rows - (rows > 1 ? GAP / 2 : 0),
  }));
}

/** As large as the box holds it, in its own shape, in the middle. */
export function within(
  box: Box,
  { width, height }: { readonly width: number; readonly height: number },
): Box {
  const scale = Math.min(box.w / width, box.h / height);
  const [w, h] = [width * scale, height * scale];
  return { x: box.x + (box.w - w) / 2, y: box.y + (box.h - h) / 2, w, h };
}
