/** Traces against the breath, one above another, with a marker that keeps step with the picture. */
import { Container, Graphics } from "pixi.js";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation, Traces } from "../../sim/circulation/answer/answer.ts";
import type { Box } from "../scene.ts";
import type { Palette } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type Lettering, lettering } from "./lettering.ts";
import { columnOf, drawPlot, fitting, markAt, type Plotted, titleLines } from "./plot.ts";
import { type Range, rangeOf } from "./scale.ts";
import { meanOf, phaseOf, valueAt } from "./trace-clock.ts";

export interface Row {
  /** word key of its title, which takes the mean as {mean} */
  readonly title: string;
  readonly trace: (traces: Traces) => Float64Array | null | undefined;
  readonly unit: "mmHg" | "L/min" | "mL/min";
  readonly colour: (palette: Palette, circulation: Circulation) => string;
  /** 0 stays longest where there is little height */
  readonly rank: number;
  /** what goes on meanwhile and moves this curve: its word key, and when */
  readonly during?: { readonly name: string; readonly spans: (traces: Traces) => readonly Stretch[] };
}

export interface Stretch {
  /** s of the cycle */
  readonly from: number;
  readonly to: number;
}

interface StripState {
  readonly circulation: Circulation;
  /** every pane's, so that panes share their axes */
  readonly all: readonly Circulation[];
  /** s of blood time */
  readonly time: number;
}

export interface Strips {
  readonly view: Container;
  draw(state: StripState, box: Box, type: number, theme: Theme): void;
}

/** Words of strips, by key: under the axis of time, and in the stretches that stand out. */
interface StripWords {
  readonly foot: string;
  readonly band?: (circulation: Circulation) => string;
}

/** What an axis spans at least. */
const MIN_SPAN = { mmHg: 4, "L/min": 0.1, "mL/min": 10 } as const;

/** @param bandsOf stretches of time that stand out, such as breathing in */
export function strips(
  rows: readonly Row[],
  bandsOf: (traces: Traces) => readonly Stretch[],
  said: StripWords = { foot: "further.axis.seconds" },
): Strips {
  const view = new Container();
  const [ink, marker] = [new Graphics(), new Graphics()];
  const words = lettering();
  view.addChild(ink, marker, words.view);
  let signature = "";
  let known: readonly Circulation[] = [];
  let plots: readonly { plotted: Plotted; values: Float64Array; colour: string }[] = [];

  const drawStill = (
    circulation: Circulation,
    all: readonly Circulation[],
    box: Box,
    type: number,
    theme: Theme,
  ): void => {
    const { traces } = circulation;
    const bands = bandsOf(traces);
    const span = traces.period;
    const x: Range = { ...rangeOf([0, span], { count: 4 }), min: 0, max: span };
    const time: Range = { ...x, marks: x.marks.filter((mark) => mark <= span) };
    const rangeIn = (unit: Row["unit"]): Range =>
      rangeOf(
        all.flatMap((each) =>
          rows
            .filter((row) => row.unit === unit)
            .flatMap((row) => withRoom(Array.from(row.trace(each.traces) ?? []), row)),
        ),
        { zero: true, count: 3, least: MIN_SPAN[unit] },
      );
    ink.clear();
    words.begin();
    const traced = rows.filter((row) => row.trace(traces));
    const titleOf = (row: Row) =>
      theme.say(row.title, { mean: formatQuantity(meanOf(traces, present(row.trace(traces))), row.unit, 1) });
    const linesOf = (row: Row) => titleLines(words, titleOf(row), box.width, type, theme);
    const shown = fitting(traced, box.height, type, ({ rank }) => rank, linesOf);
    const boxes = columnOf(box, shown.length, type);
    plots = shown.map((row, i) => {
      const values = present(row.trace(traces));
      const colour = row.colour(theme.colour, circulation);
      const last = i === shown.length - 1;
      const title = titleOf(row);
      const plotted = drawPlot(
        ink,
        words,
        {
          box: entryAt(boxes, i),
          x: time,
          y: rangeIn(row.unit),
          lines: [{ x: traces.time, y: values, colour }],
          title,
          titleColour: colour,
          bands,
          type,
          ...(last ? { foot: theme.say(said.foot) } : {}),
        },
        theme,
      );
      if (said.band && i === 0)
        nameBands(words, theme.say(said.band(circulation)), bands, plotted, { traces, values, type, theme });
      if (row.during)
        nameSpans({ ink, words }, theme.say(row.during.name), row.during.spans(traces), plotted, {
          values,
          type,
          theme,
        });
      return { plotted, values, colour };
    });
    words.end();
  };

  return {
    view,
    draw({ circulation, all, time }, box, type, theme) {
      const next = JSON.stringify([box, type, theme.name, theme.say(said.foot)]);
      const same = known.length === all.length && known.every((each, i) => each === all[i]);
      if (next !== signature || !same) {
        signature = next;
        known = all;
        drawStill(circulation, all, box, type, theme);
      }
      marker.clear();
      const phase = phaseOf(circulation.traces, time);
      for (const { plotted, values, colour } of plots) {
        markAt(marker, plotted, phase, type, theme);
        marker
          .circle(plotted.toX(phase), plotted.toY(valueAt(circulation.traces, values, time)), type * 0.32)
          .fill(colour)
          .stroke({ color: theme.colour.stage, width: 2 });
      }
    },
  };
}

/** Times its greatest value that a curve's axis reaches at least, so that bars of what moves it stand over it. */
const OVER = 1.13;
const withRoom = (values: readonly number[], { during }: Row): readonly number[] =>
  during ? [...values, OVER * Math.max(0, ...values)] : values;

/** Height of a bar with its name, in sizes of type. */
const NAMED = 1.9;

/** At the head of a plot, a bar with its name over each span. */
function nameSpans(
  { ink, words }: { readonly ink: Graphics; readonly words: Lettering },
  name: string,
  spans: readonly Stretch[],
  { inner, toX, toY }: Plotted,
  { values, type, theme }: { readonly values: Float64Array; readonly type: number; readonly theme: Theme },
): void {
  // They would lie on the curve.
  if (toY(values.reduce((a, b) => Math.max(a, b))) < inner.y + NAMED * type) return;
  let free = Number.NEGATIVE_INFINITY;
  for (const { from, to } of spans) {
    const y = inner.y + 0.35 * type;
    ink.moveTo(toX(from), y).lineTo(toX(to), y).stroke({ color: theme.colour.inkSoft, width: 3 });
    const note = { lines: [{ words: name, size: type, colour: theme.colour.inkSoft }], bare: true };
    // Where one follows soon, it goes without its name.
    if (toX(from) < free) continue;
    const lain = words.write({ ...note, x: toX(from) + 0.4 * type, y: y + 0.2 * type }, theme);
    free = lain.x + lain.width;
  }
}

const within = (at: number, from: number, to: number): boolean => at >= from && at <= to;

/** Where there is room for it, at the foot of each stretch, or at its head where the curve comes down to the foot and keeps off the head. */
function nameBands(
  words: Lettering,
  name: string,
  bands: readonly Stretch[],
  { inner, toX, toY }: Plotted,
  {
    traces,
    values,
    type,
    theme,
  }: {
    readonly traces: Traces;
    readonly values: Float64Array;
    readonly type: number;
    readonly theme: Theme;
  },
): void {
  const foot = inner.y + inner.height;
  for (const { from, to } of bands) {
    const heights = Array.from(values, (each) => toY(each)).filter((_, i) =>
      within(entryAt(traces.time, i), from, to),
    );
    const clear = NAMED * type;
    const high = Math.max(...heights) > foot - clear && Math.min(...heights) > inner.y + clear;
    const room = toX(to) - toX(from);
    // At the head it may reach beyond its stretch, where nothing else stands.
    const lines = [{ words: name, size: type, colour: theme.colour.inkSoft }];
    const note = high ? { lines, wrap: 1.3 * room, bare: true } : { lines, wrap: room };
    const { width } = words.measure(note, theme);
    if (width > room + 1.2 * type) continue;
    // A curve that rises in it leaves room at its end.
    const end = Math.max(toX(from) - 0.6 * type, toX(to) - 0.3 * type - width);
    if (high) words.write({ ...note, x: toX(from) + 0.4 * type, y: inner.y + 0.3 * type }, theme);
    else words.write({ ...note, x: end, y: foot - 0.3 * type, anchor: [0, 1] }, theme);
  }
}
