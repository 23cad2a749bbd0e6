/** Curves of a sweep: one colour and one dash pattern for each, named in a legend of their own. */
import { Container, Graphics } from "pixi.js";
import type { Sweep, SweepCurve } from "../../chain/running-sweep.ts";
import { formatQuantity } from "../../i18n/index.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import type { Box } from "../scene.ts";
import { lookOf } from "../theme/curve-look.ts";
import type { Theme } from "../theme/theme.ts";
import { lettering } from "./lettering.ts";
import { columnOf, dashes, drawPlot, fitting, type Line, type Plotted } from "./plot.ts";
import { type Range, rangeOf } from "./scale.ts";

export interface SweepPlot {
  /** word key of the vertical axis */
  readonly title: string;
  readonly read: (circulation: Circulation) => number;
}

/** mark: the state on the stage, on the horizontal axis */
export interface SweepPlots {
  readonly view: Container;
  draw(sweep: Sweep, foot: string, mark: number, box: Box, type: number, theme: Theme): void;
}

/** A sweep's curve in words. */
function nameOf(curve: SweepCurve, theme: Theme): string {
  if (curve.name === "reference") return theme.say("further.sweep.reference");
  const request = curve.points[0]!.request;
  const stage = theme.say(`stage.${request.stage}`);
  if (request.stage !== "extracardiac") return stage;
  return theme.say("further.sweep.pathway", {
    stage,
    diameter: formatQuantity(numberSetting(request, "conduitDiameter"), "mm"),
  });
}

const lineOf = (curve: SweepCurve, plot: SweepPlot, type: number, theme: Theme): Line => {
  const { colour, dash } = lookOf(curve.name, theme.colour);
  const solved = curve.points.filter(({ circulation }) => circulation);
  return {
    x: solved.map(({ at }) => at),
    y: solved.map(({ circulation }) => plot.read(circulation!)),
    colour,
    width: Math.max(2.2, type * 0.17),
    points: curve.name !== "reference",
    ...(dash ? { dash: dash.map((part) => part * type) } : {}),
  };
};

/** A quantity that no state of the sweep has gets no axis; while nothing is solved yet each has one. */
function hasValues(sweep: Sweep, plot: SweepPlot): boolean {
  const solved = sweep.curves.flatMap(({ points }) => points.flatMap(({ circulation }) => circulation ?? []));
  return solved.length === 0 || solved.some((circulation) => Number.isFinite(plot.read(circulation)));
}

/** @param plots the more telling first: one under another in a tall box, as many as can be read, in a row in a wide one */
export function sweepPlots(plots: readonly SweepPlot[]): SweepPlots {
  const view = new Container();
  const [ink, marker] = [new Graphics(), new Graphics()];
  const words = lettering();
  view.addChild(ink, words.view, marker);
  let known: Sweep | null = null;
  let signature = "";
  let plotted: readonly Plotted[] = [];

  const drawStill = (sweep: Sweep, foot: string, box: Box, type: number, theme: Theme): void => {
    ink.clear();
    words.begin();
    const told = plots.filter((plot) => hasValues(sweep, plot));
    const legendHeight = drawLegend(sweep, box, type, theme);
    const area = { ...box, y: box.y + legendHeight, height: box.height - legendHeight };
    const wide = area.width > area.height * 1.5 && area.width > told.length * 19 * type;
    const at = sweep.curves.flatMap(({ points }) => points.map((point) => point.at));
    const span = { min: Math.min(...at), max: Math.max(...at) };
    const round = rangeOf(at, { count: 5 });
    const x: Range = {
      ...span,
      marks: round.marks.filter((mark) => mark >= span.min - 1e-9 && mark <= span.max + 1e-9),
    };
    const shown = wide ? told : fitting(told, area.height, type);
    const column = columnOf(area, shown.length, type);
    plotted = shown.map((plot, i) => {
      const lines = sweep.curves.map((curve) => lineOf(curve, plot, type, theme));
      const y = rangeOf(
        lines.flatMap((line) => Array.from(line.y)),
        { zero: true, count: 4, least: 0.2 },
      );
      const last = wide || i === shown.length - 1;
      const width = area.width / shown.length;
      const part: Box = wide ? { ...area, x: area.x + i * width, width: width - type } : column[i]!;
      return drawPlot(
        ink,
        words,
        { box: part, x, y, lines, title: theme.say(plot.title), type, ...(last ? { foot } : {}) },
        theme,
      );
    });
    words.end();
  };

  const drawLegend = (sweep: Sweep, box: Box, type: number, theme: Theme): number => {
    let [x, y] = [box.x, box.y + type * 0.7];
    for (const curve of sweep.curves) {
      const { colour, dash } = lookOf(curve.name, theme.colour);
      const note = {
        lines: [{ words: nameOf(curve, theme), size: type, colour: theme.colour.ink }],
        anchor: [0, 0.5] as const,
        bare: true,
      };
      const wanted = words.write({ ...note, x: x + type * 2.8, y }, theme);
      if (x > box.x && wanted.x + wanted.width > box.x + box.width) {
        // The word does not fit behind the others: it moves to a line of its own.
        x = box.x;
        y += type * 1.5;
        words.takeBack(1);
        words.write({ ...note, x: x + type * 2.8, y }, theme);
      }
      const sample: [number, number][] = [
        [x, y],
        [x + type * 2.3, y],
      ];
      for (const piece of dash
        ? dashes(
            sample,
            dash.map((part) => part * type),
          )
        : [sample]) {
        ink.moveTo(...piece[0]!);
        for (const [px, py] of piece.slice(1)) ink.lineTo(px, py);
        ink.stroke({ color: colour, width: Math.max(2.2, type * 0.17), cap: "round" });
      }
      x += type * 2.8 + wanted.width + type * 1.6;
    }
    if (sweep.progress < 1) {
      y += type * 1.5;
      words.write(
        {
          lines: [
            {
              words: theme.say("further.sweep.solving", { share: formatQuantity(100 * sweep.progress, "%") }),
              size: type,
              colour: theme.colour.inkSoft,
            },
          ],
          x: box.x,
          y,
          anchor: [0, 0.5],
          bare: true,
        },
        theme,
      );
    }
    return y - box.y + type * 1.4;
  };

  return {
    view,
    draw(sweep, foot, mark, box, type, theme) {
      const next = JSON.stringify([box, type, theme.name, foot]);
      if (known !== sweep || next !== signature) {
        known = sweep;
        signature = next;
        drawStill(sweep, foot, box, type, theme);
      }
      marker.clear();
      for (const { inner, toX } of plotted) {
        const x = toX(mark);
        if (x < inner.x - 1 || x > inner.x + inner.width + 1) continue;
        marker
          .moveTo(x, inner.y)
          .lineTo(x, inner.y + inner.height)
          .stroke({ color: theme.colour.accent, width: Math.max(2, type * 0.12) });
      }
    },
  };
}
