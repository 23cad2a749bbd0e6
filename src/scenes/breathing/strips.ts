/** Chest pressure and the flows of the great veins and lungs against the breath, one above another, with a marker that keeps step. */
import { Container, Graphics } from "pixi.js";
import type { Circulation, Traces } from "../../sim/circulation/answer.ts";
import { formatQuantity } from "../../words/index.ts";
import { lettering } from "../drawing/lettering.ts";
import { meanOf, phaseOf, valueAt } from "../drawing/passage.ts";
import { drawPlot, type Plotted } from "../drawing/plot.ts";
import { type Range, rangeOf } from "../drawing/scale.ts";
import type { Box } from "../scene.ts";
import type { Palette } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { fillings } from "./chest.ts";

interface Row {
  readonly name: string;
  readonly trace: (traces: Traces) => Float64Array | undefined;
  readonly unit: "mmHg" | "L/min";
  readonly colour: (palette: Palette) => string;
}

export const ROWS: readonly Row[] = [
  { name: "pleural", trace: ({ pressures }) => pressures.pleural, unit: "mmHg", colour: (p) => p.pressure },
  { name: "ivc", trace: ({ flows }) => flows.ivc, unit: "L/min", colour: (p) => p.origin[2] },
  { name: "svc", trace: ({ flows }) => flows.svc, unit: "L/min", colour: (p) => p.origin[0] },
  { name: "lungs", trace: ({ flows }) => flows.pulmonary, unit: "L/min", colour: (p) => p.rich },
];

export interface Strips {
  readonly view: Container;
  /** `all`: every pane's circulation, so that panes share their axes. */
  draw(
    circulation: Circulation,
    all: readonly Circulation[],
    time: number,
    box: Box,
    type: number,
    theme: Theme,
  ): void;
}

export function strips(): Strips {
  const view = new Container();
  const [ink, marker] = [new Graphics(), new Graphics()];
  const words = lettering();
  view.addChild(ink, words.view, marker);
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
    const bands = fillings(traces);
    const span = traces.period;
    const x: Range = { ...rangeOf([0, span], { count: 4 }), min: 0, max: span };
    const time: Range = { ...x, marks: x.marks.filter((mark) => mark <= span) };
    const flowRange = rangeOf(
      all.flatMap((each) =>
        ROWS.filter(({ unit }) => unit === "L/min").flatMap((row) =>
          Array.from(row.trace(each.traces) ?? []),
        ),
      ),
      { zero: true, count: 3 },
    );
    const pressureRange = rangeOf(
      all.flatMap((each) => Array.from(each.traces.pressures.pleural ?? [])),
      { zero: true, count: 3, least: 4 },
    );
    ink.clear();
    words.begin();
    const rows = ROWS.filter((row) => row.trace(traces));
    const footHeight = type * 2.3;
    const height = (box.height - footHeight) / rows.length;
    plots = rows.map((row, i) => {
      const values = row.trace(traces)!;
      const colour = row.colour(theme.colour);
      const last = i === rows.length - 1;
      const title = theme.say(`further.breathing.${row.name}`, {
        mean: formatQuantity(meanOf(traces, values), row.unit, 1),
      });
      const plotted = drawPlot(
        ink,
        words,
        {
          box: { ...box, y: box.y + i * height, height: height + (last ? footHeight : 0) },
          x: time,
          y: row.unit === "mmHg" ? pressureRange : flowRange,
          lines: [{ x: traces.time, y: values, colour }],
          title,
          titleColour: colour,
          bands,
          type,
          ...(last ? { foot: theme.say("further.axis.seconds") } : {}),
        },
        theme,
      );
      return { plotted, values, colour };
    });
    words.end();
  };

  return {
    view,
    draw(circulation, all, time, box, type, theme) {
      const next = JSON.stringify([box, type, theme.name, theme.say("further.axis.seconds")]);
      const same = known.length === all.length && known.every((each, i) => each === all[i]);
      if (next !== signature || !same) {
        signature = next;
        known = all;
        drawStill(circulation, all, box, type, theme);
      }
      marker.clear();
      const first = plots[0]?.plotted;
      const last = plots[plots.length - 1]?.plotted;
      if (!first || !last) return;
      const phase = phaseOf(circulation.traces, time);
      const at = first.toX(phase);
      marker
        .moveTo(at, first.inner.y)
        .lineTo(at, last.inner.y + last.inner.height)
        .stroke({ color: theme.colour.accent, width: Math.max(2, type * 0.12) });
      for (const { plotted, values, colour } of plots)
        marker
          .circle(at, plotted.toY(valueAt(circulation.traces, values, time)), type * 0.32)
          .fill(colour)
          .stroke({ color: theme.colour.stage, width: 2 });
    },
  };
}
