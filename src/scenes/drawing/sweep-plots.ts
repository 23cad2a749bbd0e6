/** Curves of a sweep: one colour and one dash pattern for each, named in a legend of their own. */
import { Container, Graphics } from "pixi.js";
import type { Sweep, SweepCurve } from "../../chain/running-sweep.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Box } from "../scene.ts";
import { lookOf } from "../theme/curve-look.ts";
import type { Theme } from "../theme/theme.ts";
import { type Lettering, lettering } from "./lettering.ts";
import { columnOf, drawPlot, fitting, type Line, markAt, type Plotted } from "./plot.ts";
import { type Range, rangeOf } from "./scale.ts";
import { drawSweepLegend } from "./sweep-legend.ts";

export interface SweepPlot {
  /** word key of the vertical axis */
  readonly title: string;
  readonly read: (circulation: Circulation) => number;
  /** The range that the number's law leaves open. */
  readonly band?: (circulation: Circulation) => readonly [low: number, high: number] | undefined;
  /** A range of the vertical axis that has been measured, shaded all along where what is said of it (by key) has room. */
  readonly measured?: (circulation: Circulation) => Measured | null;
}

interface SweepState {
  readonly sweep: Sweep;
  /** the horizontal axis' title */
  readonly foot: string;
  /** the state on the stage, on the horizontal axis */
  readonly mark: number;
  /** and one that stands beside it */
  readonly beside?: number | undefined;
  /** states that the horizontal axis names, with their words line by line; round numbers without it */
  readonly named?: readonly { readonly at: number; readonly words: readonly string[] }[];
  /** CSS px that a picture takes between the legend and the first plot, and where its parts stand on the horizontal axis */
  readonly picture?: { readonly height: number; readonly stands: readonly number[] };
}

export interface SweepPlots {
  readonly view: Container;
  /** @returns the first plot, with whose horizontal axis a picture over it is aligned; none where there is no room */
  draw(state: SweepState, box: Box, type: number, theme: Theme): Plotted | undefined;
}

/** Beyond where on the horizontal axis a curve leaves what people reach, and what is said of that, by key. */
interface Reach {
  readonly key: string;
  /** undefined where all of it is reached */
  readonly ends: (states: readonly (readonly [at: number, circulation: Circulation])[]) => number | undefined;
}

const endOf = ({ name, points }: SweepCurve, reach: Reach | undefined): number | undefined =>
  name === "reference"
    ? undefined
    : reach?.ends(points.flatMap(({ at, circulation }) => (circulation ? [[at, circulation] as const] : [])));

const lineOf = (
  curve: SweepCurve,
  plot: SweepPlot,
  type: number,
  theme: Theme,
  beyond: number | undefined,
): Line => {
  const { colour, dash } = lookOf(curve.name, theme.colour);
  const solved = curve.points.filter(
    ({ circulation }) => circulation && Number.isFinite(plot.read(circulation)),
  );
  const open = solved.flatMap(({ circulation }) => {
    const range = plot.band?.(present(circulation));
    return range ? [range] : [];
  });
  return {
    x: solved.map(({ at }) => at),
    y: solved.map(({ circulation }) => plot.read(present(circulation))),
    colour,
    width: Math.max(2.2, type * 0.17),
    points: curve.name !== "reference",
    ...(open.length === solved.length ? { open } : {}),
    ...(dash ? { dash: dash.map((part) => part * type) } : {}),
    ...(beyond === undefined ? {} : { beyond }),
  };
};

/** A curve's point lies wholly below the axis' end. */
const HEADROOM = 1.04;

/** The horizontal axis: from the first to the last computed state, marked on round numbers. */
function axisOf({ curves }: Sweep): Range {
  const at = curves.flatMap(({ points }) => points.map((point) => point.at));
  const [min, max] = [Math.min(...at), Math.max(...at)];
  const { marks } = rangeOf(at, { count: 5 });
  return { min, max, marks: marks.filter((mark) => mark >= min - 1e-9 && mark <= max + 1e-9) };
}

const solvedOf = ({ curves }: Sweep): readonly Circulation[] =>
  curves.flatMap(({ points }) => points.flatMap(({ circulation }) => circulation ?? []));

/** A quantity that no state of the sweep has gets no axis; while nothing is solved yet each has one. */
function hasValues(sweep: Sweep, plot: SweepPlot): boolean {
  const solved = solvedOf(sweep);
  return solved.length === 0 || solved.some((circulation) => Number.isFinite(plot.read(circulation)));
}

interface Measured {
  readonly range: readonly [number, number];
  readonly key: string;
}

/** The range, and what it is: with a sample in the line of the plot's title, else within the range over all curves. */
function shadeMeasured(
  { ink, words, theme }: { readonly ink: Graphics; readonly words: Lettering; readonly theme: Theme },
  measured: Measured,
  { plot, sweep }: { readonly plot: SweepPlot; readonly sweep: Sweep },
  { inner, toY }: Plotted,
  type: number,
): void {
  const line = (text: string) => ({
    lines: [{ words: text, size: 0.92 * type, colour: theme.colour.inkSoft }],
    anchor: [1, 1] as const,
    bare: true,
  });
  const says = line(theme.say(measured.key));
  const [title, note] = [words.measure(line(theme.say(plot.title)), theme), words.measure(says, theme)];
  const sample = 1.2 * type;
  const taken = note.width + sample;
  const [low, high] = measured.range.map(toY) as [number, number];
  const beside = title.width + taken + type < inner.width;
  const top = Math.min(...solvedOf(sweep).map((each) => toY(plot.read(each))));
  if (!beside && (note.width > inner.width || top - high < note.height)) return;
  const [right, y] = [inner.x + inner.width, beside ? inner.y - type * 0.25 : high + note.height];
  const shade = { color: theme.colour.inkSoft, alpha: 0.14 };
  ink.rect(inner.x, high, inner.width, low - high).fill(shade);
  if (beside) ink.rect(right - taken, y - 0.85 * note.height, 0.8 * sample, 0.7 * note.height).fill(shade);
  words.write({ ...says, x: beside ? right : right - 0.3 * type, y }, theme);
}

/** CSS px: the line of the state beside is thinner. */
const BESIDE = 1;

/** @param plots the most informative first: one under another in a tall box, as many as can be read, in a row in a wide one */
export function sweepPlots(plots: readonly SweepPlot[], reach?: Reach): SweepPlots {
  const view = new Container();
  const [ink, marker] = [new Graphics(), new Graphics()];
  const words = lettering();
  view.addChild(ink, words.view, marker);
  let known: Sweep | null = null;
  let signature = "";
  let plotted: readonly Plotted[] = [];

  const drawStill = ({ sweep, foot, named, picture }: SweepState, box: Box, type: number, theme: Theme) => {
    ink.clear();
    words.begin();
    const filled = plots.filter((plot) => hasValues(sweep, plot));
    const ends = sweep.curves.map((curve) => endOf(curve, reach));
    const broken = reach && ends.some((end) => end !== undefined) ? theme.say(reach.key) : undefined;
    const legendHeight = drawSweepLegend({ ink, words, theme }, sweep, box, type, broken);
    const above = legendHeight + (picture?.height ?? 0);
    const area = { ...box, y: box.y + above, height: box.height - above };
    const wide = area.width > area.height * 1.5 && area.width > filled.length * 19 * type;
    const round = axisOf(sweep);
    const x: Range = named ? { ...round, marks: named.map(({ at }) => at) } : round;
    const wordsOf = (mark: number) => present(named?.find(({ at }) => at === mark)).words;
    const under = named ? { markWords: wordsOf } : {};
    const markLines = named ? Math.max(...named.map(({ words }) => words.length)) : 1;
    const shown = wide ? filled : fitting(filled, area.height, type);
    const column = columnOf(area, shown.length, type, markLines);
    const from = Math.min(...ends.map((end = x.max) => end));
    const bands = from < x.max ? [{ from, to: x.max }] : [];
    plotted = shown.map((plot, i) => {
      const lines = sweep.curves.map((curve, k) => lineOf(curve, plot, type, theme, ends[k]));
      const measured = solvedOf(sweep)
        .map((each) => plot.measured?.(each))
        .find(Boolean);
      const y = rangeOf(
        [
          ...lines.flatMap((line) => [
            ...Array.from(line.y, (y) => HEADROOM * y),
            ...(line.open ?? []).flat(),
          ]),
          ...(measured?.range ?? []),
        ],
        { zero: true, count: 4, least: 0.2 },
      );
      const last = wide || i === shown.length - 1;
      const width = area.width / shown.length;
      const part: Box = wide ? { ...area, x: area.x + i * width, width: width - type } : entryAt(column, i);
      const drawn = drawPlot(
        ink,
        words,
        {
          box: part,
          x,
          y,
          lines,
          bands,
          risers: picture?.stands ?? [],
          title: theme.say(plot.title),
          type,
          ...(last ? { foot, ...under } : {}),
        },
        theme,
      );
      if (measured) shadeMeasured({ ink, words, theme }, measured, { plot, sweep }, drawn, type);
      return drawn;
    });
    words.end();
  };

  return {
    view,
    draw(state, box, type, theme) {
      const next = JSON.stringify([box, type, theme.name, state.foot, state.named, state.picture]);
      if (known !== state.sweep || next !== signature) {
        known = state.sweep;
        signature = next;
        drawStill(state, box, type, theme);
      }
      marker.clear();
      const { beside } = state;
      for (const plot of plotted) {
        const { inner, toX } = plot;
        const within = (at: number) => toX(at) >= inner.x - 1 && toX(at) <= inner.x + inner.width + 1;
        if (beside !== undefined && within(beside))
          marker
            .moveTo(toX(beside), inner.y)
            .lineTo(toX(beside), inner.y + inner.height)
            .stroke({ color: theme.colour.accent, width: BESIDE });
        if (within(state.mark)) markAt(marker, plot, state.mark, type, theme);
      }
      return plotted[0];
    },
  };
}
