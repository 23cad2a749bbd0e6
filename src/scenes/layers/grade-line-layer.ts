/** The grade line: pressure along the blood's way, in the picture's order, from a hepatic vein to the atrium. */
import { Container, Graphics } from "pixi.js";
import { formatNumber, formatQuantity, writeDrop } from "../../i18n/index.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { lettering } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";
import { frame, type Key, type Plot, readable } from "./grade-frame.ts";
import { changesOf, type Stretch, stretchesOf } from "./grade-stretches.ts";
import { dashed, heightAt, pathLine } from "./path-line.ts";

export interface GradeLineLayer {
  readonly view: Container;
  draw(
    circulations: readonly (Circulation | null)[],
    box: Box,
    focus: string | null,
    sizes: Sizes,
    theme: Theme,
  ): void;
  /** The element at a point of the canvas, or null off the line's box. */
  pick(x: number, y: number): string | null;
}

export function gradeLineLayer(): GradeLineLayer {
  const view = new Container();
  const ink = new Graphics();
  const words = lettering();
  view.addChild(ink, words.view);
  let drawn: { plot: Plot; points: Circulation["pathway"]["gradeLine"] } | null = null;

  return {
    view,
    draw(circulations, box, focus, sizes, theme) {
      ink.clear();
      words.begin();
      drawn = null;
      const known = circulations.filter((circulation) => circulation !== null);
      const first = known[0];
      if (first && first.pathway.gradeLine.length > 1) {
        const key = known.length > 1 ? keyOf(known, box, sizes, theme) : null;
        const plot = frame(box, key, sizes);
        drawn = { plot, points: first.pathway.gradeLine };
        drawPlot(known, first, plot, focus, sizes, theme);
      }
      words.end();
    },
    pick(x, y) {
      if (!drawn) return null;
      const { plot, points } = drawn;
      if (x < plot.left || x > plot.left + plot.width || y < plot.top || y > plot.top + plot.height)
        return null;
      const station = (x - plot.left) / plot.width;
      return points.findLast((point) => point.station <= station)?.at ?? null;
    },
  };

  function drawPlot(
    known: readonly Circulation[],
    first: Circulation,
    plot: Plot,
    focus: string | null,
    sizes: Sizes,
    theme: Theme,
  ): void {
    const { colour } = theme;
    const all = known.flatMap(({ pathway }) =>
      pathway.gradeLine.flatMap((p) => [p.pressure, p.totalPressure]),
    );
    const least = Math.max(0, Math.floor(Math.min(...all) - 0.5));
    const most = Math.ceil(Math.max(...all) + 0.5);
    const x = (station: number) => plot.left + station * plot.width;
    const y = (pressure: number) => plot.top + plot.height * (1 - (pressure - least) / (most - least));
    const bottom = plot.top + plot.height;
    const points = first.pathway.gradeLine;

    const step = [1, 2, 5, 10].find((s) => ((most - least) / s) * sizes.axis * 1.6 <= plot.height) ?? 10;
    const levels: number[] = [];
    for (let level = Math.ceil(least / step) * step; level <= most; level += step) levels.push(level);
    for (const level of levels.length > 1 ? levels : [least, most]) {
      ink
        .moveTo(plot.left, y(level))
        .lineTo(plot.left + plot.width, y(level))
        .stroke({ width: 1, color: colour.hair, alpha: 0.28 });
      words.write(
        {
          lines: [{ words: formatNumber(level), size: sizes.axis, colour: colour.inkSoft }],
          x: plot.left - 10,
          y: y(level),
          anchor: [1, 0.5],
          bare: true,
        },
        theme,
      );
    }
    words.write(
      {
        lines: [{ words: "mmHg", size: sizes.axis, colour: colour.inkSoft }],
        x: plot.left - 10,
        y: plot.top - sizes.axis * 0.75,
        anchor: [1, 1],
        bare: true,
      },
      theme,
    );

    points.forEach((point, i) => {
      const to = points[i + 1]?.station ?? 1;
      if (point.at === focus) {
        ink
          .rect(x(point.station), plot.top, Math.max(3, x(to) - x(point.station)), plot.height)
          .fill({ color: colour.accent, alpha: 0.2 });
        ink
          .rect(x(point.station), bottom, Math.max(3, x(to) - x(point.station)), 4)
          .fill({ color: colour.accent });
      }
      ink
        .moveTo(x(point.station), bottom)
        .lineTo(x(point.station), bottom + 6)
        .stroke({ width: 1, color: colour.hair, alpha: 0.8 });
    });
    ink
      .moveTo(plot.left, bottom)
      .lineTo(plot.left + plot.width, bottom)
      .stroke({ width: 1.5, color: colour.hair, alpha: 0.9 });

    known.forEach((circulation, index) => {
      const line = circulation.pathway.gradeLine;
      const total = line.flatMap((p) => [x(p.station), y(p.totalPressure)]);
      const pressure = line.flatMap((p) => [x(p.station), y(p.pressure)]);
      if (known.length === 1)
        dashed(ink, total, [10, 7], { width: 2, color: colour.totalPressure, alpha: 0.85 });
      pathLine(ink, pressure, index, sizes, theme);
    });

    names(known, x, bottom, sizes, theme);
    figures(known, x, y, plot, sizes, theme);
  }

  /** The great stretches by name under the line, where they are the same in every pane. */
  function names(
    known: readonly Circulation[],
    x: (station: number) => number,
    bottom: number,
    sizes: Sizes,
    theme: Theme,
  ): void {
    const [first, ...others] = known.map(({ pathway }) => stretchesOf(pathway.gradeLine));
    const named = (stretches: readonly Stretch[]) => stretches.map(({ key }) => key).join();
    if (!first || others.some((other) => named(other) !== named(first))) return;
    for (const { key, from, to } of first) {
      ink
        .moveTo(x(from), bottom)
        .lineTo(x(from), bottom + 12)
        .stroke({ width: 1.5, color: theme.colour.hair });
      const name = theme.say(key);
      // About half an em a letter: what does not fit its stretch is left to the picture above.
      if (name.length * sizes.axis * 0.5 > x(to) - x(from) + sizes.axis) continue;
      words.write(
        {
          lines: [{ words: name, size: sizes.axis, colour: theme.colour.inkSoft }],
          x: (x(from) + x(to)) / 2,
          y: bottom + 8,
          anchor: [0.5, 0],
          bare: true,
        },
        theme,
      );
    }
  }

  /** What is spent or gained at the place where the line falls or rises, and the line's end. */
  function figures(
    known: readonly Circulation[],
    x: (station: number) => number,
    y: (pressure: number) => number,
    plot: Plot,
    sizes: Sizes,
    theme: Theme,
  ): void {
    const first = known[0]!.pathway.gradeLine;
    const last = first[first.length - 1]!;
    const brief = plot.width < 32 * sizes.label;
    if (known.length === 1)
      for (const { words: says, figure, station, pressure, side } of changesOf(known[0]!, theme))
        words.write(
          {
            lines: [
              { words: brief ? figure : says, size: sizes.label, colour: theme.colour.ink, bold: true },
            ],
            x: x(station) + { beneath: 0, before: -sizes.label, after: sizes.label / 2 }[side],
            y:
              side === "beneath"
                ? Math.min(plot.top + plot.height - 2.3 * sizes.label, y(pressure) + sizes.label * 0.8)
                : y(pressure),
            anchor: { beneath: [0.5, 0], before: [1, 0.5], after: [0, 0.5] }[side] as [number, number],
          },
          theme,
        );
    ink
      .circle(x(0), y(first[0]!.pressure), Math.max(4, sizes.axis * 0.26))
      .fill({ color: theme.colour.pressure });
    ink.circle(x(1), y(last.pressure), Math.max(4, sizes.axis * 0.26)).fill({ color: theme.colour.pressure });
    if (brief) return;
    const end = formatQuantity(last.pressure, "mmHg", 1);
    // Above the line where its letters begin, each about six tenths of its height wide.
    const begin = x(1) - 4 - 0.6 * sizes.label * end.length;
    const line = first.flatMap((p) => [x(p.station), y(p.pressure)]);
    words.write(
      {
        lines: [{ words: end, size: sizes.label, colour: theme.colour.pressure, bold: true }],
        x: x(1) - 4,
        y: Math.min(y(last.pressure), heightAt(line, begin)) - 6,
        anchor: [1, 1],
        bare: true,
      },
      theme,
    );
  }

  /** Which line is whose, and what each pathway takes: beside the plot where it is wide, else above it. */
  function keyOf(known: readonly Circulation[], box: Box, sizes: Sizes, theme: Theme): Key | null {
    const nameOf = ({ request: { stage }, pathway }: Circulation) => {
      const pane = theme.say(`stage.${stage}`);
      return hasPathway(stage) ? theme.say("scene.drop.of", { pane, drop: writeDrop(pathway) }) : pane;
    };
    const lines = known.map((circulation) => ({
      words: nameOf(circulation),
      size: sizes.label,
      colour: theme.colour.ink,
      bold: true,
    }));
    const sample = 3.6 * sizes.axis;
    // A low plot rather gives of its width.
    const beside = box.width > (box.height < 11 * sizes.axis ? 28 : 40) * sizes.axis;
    const block = { lines, x: box.x + sample, y: box.y, bare: true };
    let lain = words.write(block, theme);
    if (beside) {
      words.takeBack(lines.length);
      const x = box.x + box.width - lain.width;
      lain = words.write({ ...block, x, y: box.y + (box.height - lain.height) / 2 }, theme);
    }
    const key = beside
      ? { width: lain.width + sample + sizes.axis, height: 0 }
      : { width: 0, height: lain.height + sizes.axis * 0.4 };
    // Where the key would leave no plot, the pictures' own numbers stand for it.
    if (!readable(frame(box, key, sizes), sizes)) {
      words.takeBack(lines.length);
      return null;
    }
    lines.forEach((_, index) => {
      const level = lain.y + (lain.height * (index + 0.5)) / lines.length;
      pathLine(
        ink,
        [lain.x - sample + sizes.axis * 0.3, level, lain.x - 0.6 * sizes.axis, level],
        index,
        sizes,
        theme,
      );
    });
    return key;
  }
}
