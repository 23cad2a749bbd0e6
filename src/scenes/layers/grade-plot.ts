/** The plot of the grade line: levels, elements, the lines themselves, what its stretches are called and what is spent in them. */
import { ticks } from "d3-array";
import { formatNumber, formatQuantity } from "../../i18n/index.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Sheet } from "../drawing/drawing-sheet.ts";
import { type Plot, roomy } from "./grade-frame.ts";
import { writeTotal } from "./grade-key.ts";
import { changesOf, type Stretch, stretchesOf } from "./grade-stretches.ts";
import { dashed, heightAt, pathLine } from "./path-line.ts";

/** Where stations (0..1) and pressures (mmHg) lie on the canvas, CSS px. */
interface Axes {
  readonly plot: Plot;
  readonly bottom: number;
  /** mmHg at the lower and upper edge */
  readonly least: number;
  readonly most: number;
  readonly x: (station: number) => number;
  readonly y: (pressure: number) => number;
}

type Points = Circulation["pathway"]["gradeLine"];

/** The lower vein's line, and the upper one's where that goes a way of its own; beside other stages that would be one line too many. */
const linesOf = ({ pathway }: Circulation, known: readonly Circulation[]): readonly Points[] =>
  known.length === 1 && pathway.upperGradeLine.length > 0
    ? [pathway.gradeLine, pathway.upperGradeLine]
    : [pathway.gradeLine];

function axesOf(known: readonly Circulation[], earlier: readonly Circulation[], plot: Plot): Axes {
  const all = [...known, ...earlier].flatMap((each) =>
    linesOf(each, known).flatMap((points) =>
      points.flatMap((point) => [point.pressure, point.totalPressure]),
    ),
  );
  const least = Math.max(0, Math.floor(Math.min(...all) - 0.5));
  const most = Math.ceil(Math.max(...all) + 0.5);
  return {
    plot,
    bottom: plot.top + plot.height,
    least,
    most,
    x: (station) => plot.left + station * plot.width,
    y: (pressure) => plot.top + plot.height * (1 - (pressure - least) / (most - least)),
  };
}

export interface GradeLines {
  /** at least one, of which the first gives the elements */
  readonly known: readonly Circulation[];
  /** of the state before the last change */
  readonly earlier: readonly Circulation[];
}

export function drawGradePlot(
  sheet: Sheet,
  { known, earlier }: GradeLines,
  plot: Plot,
  focus: string | null,
): void {
  const axes = axesOf(known, earlier, plot);
  drawLevels(sheet, axes);
  if (known.length === 1) writeTotal(sheet, plot);
  drawElements(sheet, entryAt(known, 0), axes, focus);
  drawEarlier(sheet, earlier, known, axes);
  drawLines(sheet, known, axes);
  writeNames(sheet, known, axes);
  writeFigures(sheet, known, axes);
}

function drawLevels({ ink, words, sizes, theme }: Sheet, { plot, least, most, y }: Axes): void {
  const { colour } = theme;
  const beside = (says: string, at: number, anchor: readonly [number, number]) =>
    words.write(
      {
        lines: [{ words: says, size: sizes.axis, colour: colour.inkSoft }],
        x: plot.left - 10,
        y: at,
        anchor,
        bare: true,
      },
      theme,
    );
  for (const level of wholeMarks(least, most, plot.height, sizes.axis * LEVELS)) {
    ink
      .moveTo(plot.left, y(level))
      .lineTo(plot.left + plot.width, y(level))
      .stroke({ width: 1, color: colour.hair, alpha: 0.28 });
    beside(formatNumber(level), y(level), [1, 0.5]);
  }
  beside("mmHg", plot.top - sizes.axis * 0.75, [1, 1]);
}

/** Marks where elements begin, and a light on the one that is pointed at. */
function drawElements(
  { ink, theme: { colour } }: Sheet,
  { pathway }: Circulation,
  { plot, bottom, x }: Axes,
  focus: string | null,
): void {
  const points = pathway.gradeLine;
  points.forEach((point, i) => {
    const from = x(point.station);
    if (point.at === focus) {
      const width = Math.max(3, x(points[i + 1]?.station ?? 1) - from);
      ink.rect(from, plot.top, width, plot.height).fill({ color: colour.accent, alpha: 0.2 });
      ink.rect(from, bottom, width, 4).fill({ color: colour.accent });
    }
    // Two lines have their own rows beneath.
    if (pathway.upperGradeLine.length > 0) return;
    ink
      .moveTo(from, bottom)
      .lineTo(from, bottom + 6)
      .stroke({ width: 1, color: colour.hair, alpha: 0.8 });
  });
  ink
    .moveTo(plot.left, bottom)
    .lineTo(plot.left + plot.width, bottom)
    .stroke({ width: 1.5, color: colour.hair, alpha: 0.9 });
}

/** Static pressure of each, and of one on its own the total pressure too. */
function drawLines({ ink, sizes, theme }: Sheet, known: readonly Circulation[], { x, y }: Axes): void {
  known.forEach((each, index) => {
    for (const points of linesOf(each, known)) {
      const total = points.flatMap((point) => [x(point.station), y(point.totalPressure)]);
      const pressure = points.flatMap((point) => [x(point.station), y(point.pressure)]);
      if (known.length === 1)
        dashed(ink, total, [10, 7], { width: 2, color: theme.colour.totalPressure, alpha: 0.85 });
      pathLine(ink, pressure, index, sizes, theme);
    }
  });
}

/** Static pressure as it was: thin, by short dashes like the ghost of the wall. */
function drawEarlier(
  { ink, theme: { colour } }: Sheet,
  earlier: readonly Circulation[],
  known: readonly Circulation[],
  { x, y }: Axes,
): void {
  for (const points of earlier.flatMap((each) => linesOf(each, known)))
    dashed(
      ink,
      points.flatMap((point) => [x(point.station), y(point.pressure)]),
      [7, 5],
      { width: 1.5, color: colour.ink, alpha: 0.9 },
    );
}

/** The great stretches by name under the line, where they are the same in every pane; of two lines in two rows, those of the upper one first. */
function writeNames(sheet: Sheet, known: readonly Circulation[], axes: Axes): void {
  const lines = linesOf(entryAt(known, 0), known);
  if (lines.length > 1) {
    for (const [row, points] of [...lines].reverse().entries()) {
      writeRow(sheet, stretchesOf(points), row, axes);
      nameBeside(sheet, points, row > 0 ? 1 : -1, axes);
    }
    return;
  }
  const [first, ...others] = known.map(({ pathway }) => stretchesOf(pathway.gradeLine));
  const named = (stretches: readonly Stretch[]) => stretches.map(({ key }) => key).join();
  if (!first || others.some((other) => named(other) !== named(first))) return;
  writeRow(sheet, first, 0, axes);
}

/** Where a line comes from, at its beginning between two levels: of the upper line beneath it, of the lower one above. */
function nameBeside(
  { words, sizes, theme }: Sheet,
  points: Points,
  way: 1 | -1,
  { plot, least, most, x, y }: Axes,
): void {
  const first = stretchesOf(points).find(({ from, to }) => to - from > 0.2);
  if (!first || !roomy(plot, sizes)) return;
  const [low = least, next = most] = wholeMarks(least, most, plot.height, sizes.axis * LEVELS);
  const step = next - low;
  const level = entryAt(points, 0).pressure / step;
  // Where levels are far apart both names may stand in one room: each nearer to its own line.
  const near = y(0) - y(step) > FAR_APART * sizes.axis ? 0.5 - 0.23 * way : 0.5;
  words.write(
    {
      lines: [{ words: theme.say(first.key), size: sizes.axis, colour: theme.colour.inkSoft }],
      x: x(0) + 0.6 * sizes.axis,
      y: y(step * ((way > 0 ? Math.ceil(level) : Math.floor(level) - 1) + near)),
      anchor: [0, 0.5],
      bare: true,
    },
    theme,
  );
}

/** Heights of type from level to level, at least and where that is far, and from row to row of names. */
const LEVELS = 1.6;
const FAR_APART = 2.2;
const ROW = 1.3;
/** CSS px between a tick and a name. */
const BESIDE_TICK = 4;

function writeRow(
  { ink, words, sizes, theme }: Sheet,
  stretches: readonly Stretch[],
  row: number,
  { bottom, x }: Axes,
): void {
  const top = bottom + row * ROW * sizes.axis;
  for (const { key, from, to } of stretches) {
    ink
      .moveTo(x(from), top + (row > 0 ? 8 : 0))
      .lineTo(x(from), top + (row > 0 ? 8 + sizes.axis : 12))
      .stroke({ width: 1.5, color: theme.colour.hair });
    const note = {
      lines: [{ words: theme.say(key), size: sizes.axis, colour: theme.colour.inkSoft }],
      anchor: [0.5, 0],
      bare: true,
    } as const;
    const { width } = words.measure(note, theme);
    // What does not fit its stretch is left to the picture above; behind the last one there is room for a letter, between a lower row's marks less.
    if (width > x(to) - x(from) - BESIDE_TICK + (row > 0 ? -sizes.axis : to === 1 ? sizes.axis : 0)) continue;
    const middle = Math.max((x(from) + x(to)) / 2, x(from) + BESIDE_TICK + width / 2);
    words.write({ ...note, x: middle, y: top + 8 }, theme);
  }
}

/** What is spent or gained at the place where the line falls or rises, and the line's ends. */
function writeFigures(sheet: Sheet, known: readonly Circulation[], axes: Axes): void {
  const { ink, sizes, theme } = sheet;
  const { plot, x, y } = axes;
  const points = entryAt(known, 0).pathway.gradeLine;
  const brief = !roomy(plot, sizes);
  if (known.length === 1) writeChanges(sheet, entryAt(known, 0), axes, brief);
  const radius = Math.max(4, sizes.axis * 0.26);
  const last = lastOf(points).pressure;
  for (const [first] of linesOf(entryAt(known, 0), known))
    if (first) ink.circle(x(0), y(first.pressure), radius).fill({ color: theme.colour.pressure });
  ink.circle(x(1), y(last), radius).fill({ color: theme.colour.pressure });
  if (brief) return;
  const end = formatQuantity(last, "mmHg", 1);
  // Above all lines where its letters begin, each about six tenths of its height wide.
  const begin = x(1) - 4 - 0.6 * sizes.label * end.length;
  const heights = known.flatMap((each) =>
    linesOf(each, known).map((line) =>
      heightAt(
        line.flatMap((point) => [x(point.station), y(point.pressure)]),
        begin,
      ),
    ),
  );
  sheet.words.write(
    {
      lines: [{ words: end, size: sizes.label, colour: theme.colour.pressure, bold: true }],
      x: x(1) - 4,
      y: Math.min(y(last), ...heights) - 6,
      anchor: [1, 1],
      bare: true,
    },
    theme,
  );
}

const ANCHORS = { beneath: [0.5, 0], before: [1, 0.5], after: [0, 0.5] } as const;

/** What each change says stands beside or beneath it, and within the plot: its ends would cover the scale. */
function writeChanges(
  { words, sizes: { label }, theme }: Sheet,
  circulation: Circulation,
  { plot, bottom, x, y }: Axes,
  brief: boolean,
): void {
  for (const { words: says, figure, station, pressure, side } of changesOf(circulation, theme)) {
    const anchor = ANCHORS[side];
    const said = {
      lines: [{ words: brief ? figure : says, size: label, colour: theme.colour.ink, bold: true }],
      anchor,
    };
    const { width } = words.measure(said, theme);
    const left = x(station) + { beneath: 0, before: -label, after: label / 2 }[side] - anchor[0] * width;
    const within = Math.max(plot.left, Math.min(left, plot.left + plot.width - width));
    words.write(
      {
        ...said,
        x: within + anchor[0] * width,
        y: side === "beneath" ? Math.min(bottom - 2.3 * label, y(pressure) + label * 0.8) : y(pressure),
      },
      theme,
    );
  }
}

/** Round numbers of `min`..`max` at steps of 1, 2, 5 or 10, at least `room` px apart over `length` px; the ends where there are none. */
function wholeMarks(min: number, max: number, length: number, room: number): readonly number[] {
  const step = [1, 2, 5, 10].find((each) => ((max - min) / each) * room <= length) ?? 10;
  const marks = ticks(min, max, (max - min) / step);
  return marks.length > 1 ? marks : [min, max];
}
