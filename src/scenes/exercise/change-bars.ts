/** Between two bodies, row by row: what each number was at rest and is at work, as bars that grow outwards, joined to where it happens. */
import type { Graphics } from "pixi.js";
import { formatNumber, formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { stack } from "../circuit/arrange.ts";
import type { Proportions } from "../circuit/proportions.ts";
import type { Lain, Lettering } from "../drawing/lettering.ts";
import type { Fit } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { fullest, SECONDS } from "./beats.ts";
import { CHANGES, type ChangeRow, RATE } from "./change-rows.ts";

/** In sizes of type: a row, one with the beats drawn, the air between rows, a bar, the room of a number, and what parts both sides. */
const [ROW, BEATS, AIR, BAR, NUMBER, PARTS] = [2.5, 5, 0.5, 0.8, 2.7, 0.16];
/** Under the beats what they are, in sizes of type. */
const SAYS = 1.1;
/** Of the first body's bars, which are paler. */
const PALE = 0.45;

/** Where a body lies, and how it is grown. */
interface Stands {
  readonly fit: Fit;
  readonly proportions: Proportions;
}

interface Bars {
  readonly ink: Graphics;
  readonly words: Lettering;
  readonly type: number;
  readonly theme: Theme;
}

interface Asked {
  /** one or two, the lesser effort first */
  readonly states: readonly Circulation[];
  readonly box: Box;
  /** of both bodies, where they stand at either side; without them rows stand close from the box's top */
  readonly stands?: readonly [Stands, Stands];
}

/** Where the ventricle's beats of a state have room. */
interface BeatRoom {
  readonly state: Circulation;
  readonly box: Box;
}

/** @param beats are drawn */
const tallOf = (row: ChangeRow, beats: boolean): number => (beats && row === RATE ? BEATS : ROW);

/** CSS px that so many rows take. */
export const heightOf = (rows: readonly ChangeRow[], type: number, beats: boolean): number =>
  rows.reduce((sum, row) => sum + (tallOf(row, beats) + AIR) * type, 0);

/** As many as there is room for, those that matter most. */
function rowsWithin(
  states: readonly Circulation[],
  height: number,
  type: number,
  beats: boolean,
): readonly ChangeRow[] {
  const known = CHANGES.filter(({ read }) => states.every((state) => Number.isFinite(read(state))));
  const kept = [...known].sort((a, b) => a.rank - b.rank);
  while (kept.length > 0 && heightOf(kept, type, beats) > height) kept.pop();
  return known.filter((row) => kept.includes(row));
}

/** @returns where beats have room, in the order of the states */
export function drawChanges(pens: Bars, { states, box, stands }: Asked): readonly BeatRoom[] {
  const { type } = pens;
  const beats = stands !== undefined;
  const rows = rowsWithin(states, box.height, type, beats);
  const heights = rows.map((row) => tallOf(row, beats) * type);
  const bottom = box.y + box.height;
  const wanted = rows.map(({ at }, i) => {
    if (!stands) return box.y + entryAt(heights, i) / 2;
    const [{ fit, proportions }] = stands;
    return fit.y + fit.scale * proportions.carry(at)[1];
  });
  const stacked = (lift: number) =>
    stack(
      wanted.map((each) => each - lift),
      heights,
      AIR * type,
      box.y,
      bottom,
    );
  // Crowded rows that lines lead from give way upwards as much as downwards.
  const pushed = stacked(0).map((top, i) => top + entryAt(heights, i) / 2 - entryAt(wanted, i));
  const lift = Math.max(0, ...pushed.filter((_, i) => !entryAt(rows, i).whole)) / 2;
  const tops = stacked(lift);
  const flows = Math.max(
    ...CHANGES.flatMap(({ flow, read }) => (flow ? states.map(read).filter(Number.isFinite) : [])),
  );
  return rows.flatMap((row, i) => {
    const place = { ...box, y: entryAt(tops, i), height: entryAt(heights, i) };
    const name = writeName(pens, row, place);
    if (stands && !row.whole) joinRow(pens, { row, name }, place, stands);
    const most = row.flow ? flows : Math.max(...states.map(row.read));
    return drawRow(pens, { row, states, most, beats: beats && row === RATE }, place);
  });
}

interface Drawn {
  readonly row: ChangeRow;
  readonly states: readonly Circulation[];
  /** the longest bar's number */
  readonly most: number;
  /** in place of bars */
  readonly beats: boolean;
}

const lineOf = (text: string, bold: boolean, { type, theme: { colour } }: Bars) => ({
  lines: [{ words: text, size: bold ? 1.1 * type : type, colour: bold ? colour.ink : colour.inkSoft, bold }],
  bare: true,
});

function writeName(pens: Bars, { key }: ChangeRow, box: Box): Lain {
  const { words, theme } = pens;
  const named = theme.say(`further.exercise.row.${key}`);
  const x = box.x + box.width / 2;
  return words.write({ ...lineOf(named, false, pens), x, y: box.y, anchor: [0.5, 0] }, theme);
}

function drawRow(pens: Bars, { row, states, most, beats }: Drawn, box: Box): readonly BeatRoom[] {
  const { ink, words, type, theme } = pens;
  const { colour } = theme;
  const middle = box.x + box.width / 2;
  const room = box.width / 2 - (NUMBER + PARTS) * type;
  const top = box.y + 1.4 * type;
  const bar = { y: top + 0.1 * type, height: BAR * type };
  if (beats) {
    const full = formatQuantity(fullest(states), "mL");
    const says = lineOf(theme.say("further.exercise.beats", { full, seconds: SECONDS }), false, pens);
    words.write({ ...says, x: middle, y: box.y + (BEATS - SAYS) * type, anchor: [0.5, 0] }, theme);
  }
  return states.flatMap((state, i) => {
    const side = i === 0 ? -1 : 1;
    const value = row.read(state);
    const long = beats ? room : Math.max(1, (room * value) / most);
    const from = middle + side * PARTS * type;
    const x = side < 0 ? from - long : from;
    if (!beats)
      ink
        .rect(x, bar.y, long, bar.height)
        .fill({ color: side < 0 ? mix(colour[row.tone], colour.stage, PALE) : colour[row.tone] });
    const high = beats ? (BEATS - SAYS - 1.6) * type : bar.height;
    const written = lineOf(formatNumber(value, row.digits), true, pens);
    const anchor = [side < 0 ? 1 : 0, 0.5] as const;
    words.write({ ...written, x: from + side * (long + 0.4 * type), y: bar.y + high / 2, anchor }, theme);
    return beats ? [{ state, box: { x, y: bar.y, width: long, height: high } }] : [];
  });
}

/** CSS px of a dot where a line ends. */
const DOT = 2.6;

interface Named {
  readonly row: ChangeRow;
  /** where its name lies */
  readonly name: Lain;
}

/** Lines from a row's name to its place in both bodies: level over the body, then up or down to the row. */
function joinRow(
  { ink, type, theme }: Bars,
  { row, name }: Named,
  box: Box,
  stands: readonly [Stands, Stands],
): void {
  const { colour } = theme;
  const level = name.y + name.height / 2;
  stands.forEach(({ fit, proportions }, i) => {
    const [px, py] = proportions.carry(row.at);
    const plane = row.paired && i === 1 ? 1000 - px : px;
    const [x, y] = [fit.x + fit.scale * plane, fit.y + fit.scale * py];
    const out = i === 0 ? -1 : 1;
    const begin = name.x + (i === 0 ? 0 : name.width) + out * 0.5 * type;
    const edge = i === 0 ? Math.min(box.x, begin) : Math.max(box.x + box.width, begin);
    ink
      .moveTo(begin, level)
      .lineTo(edge, level)
      .lineTo(edge + out * 0.8 * type, y)
      .lineTo(x, y)
      .stroke({ color: colour.hair, width: 1.2 });
    ink.circle(x, y, DOT).fill(colour.ink).stroke({ color: colour.stage, width: 1.2 });
  });
}
