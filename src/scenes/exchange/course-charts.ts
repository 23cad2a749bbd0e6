/** Curves of the days after the operation, with a marker at the day that the picture shows. */
import { Container, Graphics } from "pixi.js";
import { formatNumber } from "../../i18n/index.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { ExchangeCourse } from "../../sim/exchange/index.ts";
import { lettering } from "../drawing/lettering.ts";
import { columnOf, drawPlot, fitting, markAt, type Plot, type Plotted } from "../drawing/plot.ts";
import { type Range, rangeOf } from "../drawing/scale.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import type { DayFigures } from "./day.ts";
import { drainedOf } from "./exchange-reading.ts";
import { CURVES, nameCurves } from "./notes.ts";

interface CourseState {
  readonly course: ExchangeCourse;
  /** every pane's, so that panes share their axes */
  readonly all: readonly ExchangeCourse[];
  readonly day: number;
  /** to be said with the curves' names; null where they stand elsewhere */
  readonly figures: DayFigures | null;
  /** said after the curves' names */
  readonly more: readonly string[];
}

export interface CourseCharts {
  readonly view: Container;
  /** @returns whether there was room for a curve */
  draw(state: CourseState, box: Box, type: number, theme: Theme): boolean;
}

export function courseCharts(): CourseCharts {
  const view = new Container();
  const [ink, marker] = [new Graphics(), new Graphics()];
  const words = lettering();
  view.addChild(ink, words.view, marker);
  let drawn: ExchangeCourse | null = null;
  let signature = "";
  let plots: readonly Plotted[] = [];

  const drawStill = (state: CourseState, box: Box, type: number, theme: Theme): readonly Plotted[] => {
    ink.clear();
    words.begin();
    const named = nameCurves(
      ink,
      words,
      box,
      { size: type, figures: state.figures, more: state.more },
      theme,
    );
    const below: Box = { ...box, y: box.y + named, height: box.height - named };
    const shown = fitting(plotsOf(state, type, theme), below.height, type, ({ rank }) => rank);
    // Names of lines that are not there would only be in the way.
    if (shown.length === 0) {
      ink.clear();
      words.begin();
    }
    const boxes = columnOf(below, shown.length, type);
    const x = daysOf(state.course);
    const foot = theme.say("further.axis.days");
    const plotted = shown.map((plot, i) => {
      const last = i === shown.length - 1 ? { foot } : {};
      return drawPlot(ink, words, { ...plot, ...last, box: entryAt(boxes, i), x, type }, theme);
    });
    words.end();
    return plotted;
  };

  return {
    view,
    draw(state, box, type, theme) {
      const most = Math.max(...state.all.flatMap(({ collected }) => collected));
      const next = JSON.stringify([
        box,
        type,
        theme.name,
        theme.say("further.axis.days"),
        most,
        state.figures,
        state.more,
      ]);
      if (drawn !== state.course || signature !== next) {
        drawn = state.course;
        signature = next;
        plots = drawStill(state, box, type, theme);
      }
      marker.clear();
      for (const plot of plots) markAt(marker, plot, state.day, type, theme);
      return plots.length > 0;
    },
  };
}

function daysOf({ days }: ExchangeCourse): Range {
  const range = rangeOf(days, { count: 6 });
  const last = lastOf(days);
  return { ...range, max: last, marks: range.marks.filter((mark) => mark <= last) };
}

/** mL in chest and abdomen, from none to a round number over what collects at most; in that the cavity of the picture is filled too. */
export const collectedRange = (all: readonly ExchangeCourse[]): Range =>
  rangeOf(
    all.flatMap(({ collected }) => collected),
    { zero: true, count: 3, least: 10 },
  );

interface Chart extends Pick<Plot, "y" | "lines" | "title"> {
  /** 0 stays longest where there is little room */
  readonly rank: number;
}

/** Flows; what runs over once more, for it is small beside them; and what has collected. The first points are those of the operation itself. */
function plotsOf({ course, all }: CourseState, type: number, theme: Theme): readonly Chart[] {
  const valuesOf = (curves: readonly Curve[]) =>
    all.flatMap((each) => curves.flatMap(({ key }) => each[key].slice(2)));
  const lineOf = ({ key, colour, dash }: Curve) => ({
    x: course.days.slice(2),
    y: course[key].slice(2),
    colour: colour(theme),
    ...(dash.length > 0 ? { dash: dash.map((part) => part * type) } : {}),
  });
  const over = CURVES.filter(({ key }) => key === "overflow");
  return [
    {
      rank: 0,
      y: rangeOf(valuesOf(CURVES), { zero: true, count: 4 }),
      lines: CURVES.map(lineOf),
      title: theme.say("further.exchange.flows", { healthy: formatNumber(course.lymphHealthy, 0) }),
    },
    {
      rank: 2,
      y: rangeOf(valuesOf(over), { zero: true, count: 2, least: 2 }),
      lines: over.map(lineOf),
      title: theme.say("further.exchange.overflowTitle"),
    },
    {
      rank: 1,
      y: collectedRange(all),
      lines: [{ x: course.days, y: course.collected, colour: theme.colour.ink }],
      title: theme.say("further.exchange.collectedTitle", drainedOf(course)),
    },
  ];
}

type Curve = (typeof CURVES)[number];
