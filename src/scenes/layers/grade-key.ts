/** Which grade line is whose, and what each pathway takes: beside the plot where it is wide, else above it. */
import { formatQuantity, LOSS_DIGITS, writeDrop } from "../../i18n/index.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { brieflyApart } from "../drawing/apart.ts";
import type { Sheet } from "../drawing/drawing-sheet.ts";
import type { Lain, Line } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import { frame, type Key, type Plot, readable, roomy } from "./grade-frame.ts";
import { dashed, pathLine } from "./path-line.ts";

/** The room that the key takes; null where it would leave no plot: the pictures' own numbers then stand for it. */
export function drawGradeKey(sheet: Sheet, known: readonly Circulation[], box: Box): Key | null {
  const { words, sizes, theme } = sheet;
  const sample = 3.6 * sizes.axis;
  const lines = linesWithin(sheet, known, box.width - sample);
  const block = { lines, x: box.x + sample, y: box.y, bare: true };
  let lain = words.write(block, theme);
  // A low plot rather gives of its width, as long as a line across the rest can be read.
  const beside =
    box.width > (box.height < 11 * sizes.axis ? 28 : 40) * sizes.axis &&
    box.width - lain.width - sample > MIN_WIDTH * sizes.axis;
  if (beside) {
    words.takeBack(lines.length);
    const x = box.x + box.width - lain.width;
    lain = words.write({ ...block, x, y: box.y + (box.height - lain.height) / 2 }, theme);
  }
  const key = beside
    ? { width: lain.width + sample + sizes.axis, height: 0 }
    : { width: 0, height: lain.height + sizes.axis * 0.4 };
  if (!readable(frame(box, key, sizes), sizes)) {
    words.takeBack(lines.length);
    return null;
  }
  drawSamples(sheet, lain, lines.length, sample);
  return key;
}

/** Widths of type that a plot beside its key needs. */
const MIN_WIDTH = 19;

/** How the lines are written, from the longest: the shortest have no name of a stage that all share, and no band. */
const WAYS = [
  { briefly: false, banded: true },
  { briefly: true, banded: true },
  { briefly: true, banded: false },
] as const;

/** As long as lets each stand in its row. */
function linesWithin(sheet: Sheet, known: readonly Circulation[], room: number): readonly Line[] {
  const ways = WAYS.map((way) => linesOf(sheet, known, way));
  const fits = (lines: readonly Line[]) =>
    sheet.words.measure({ lines, bare: true }, sheet.theme).width <= room;
  return ways.find(fits) ?? lastOf(ways);
}

function linesOf(
  { sizes, theme }: Sheet,
  known: readonly Circulation[],
  { briefly, banded }: (typeof WAYS)[number],
): readonly Line[] {
  const names = brieflyApart(
    known.map(({ request }) => request),
    theme.say,
    briefly,
  );
  return known.map(({ request: { stage }, pathway }, i) => {
    const pane = entryAt(names, i);
    const drop = banded
      ? writeDrop(pathway)
      : formatQuantity(pathway.pressureDrop, "mmHg", LOSS_DIGITS.pressureDrop);
    const words = hasPathway(stage) ? theme.say("scene.drop.of", { pane, drop }) : pane;
    return { words, size: sizes.label, colour: theme.colour.ink, bold: true };
  });
}

/** A piece of each line before its words. */
function drawSamples({ ink, sizes, theme }: Sheet, lain: Lain, count: number, sample: number): void {
  for (let index = 0; index < count; index++) {
    const level = lain.y + (lain.height * (index + 0.5)) / count;
    const ends = [lain.x - sample + sizes.axis * 0.3, level, lain.x - 0.6 * sizes.axis, level];
    pathLine(ink, ends, index, sizes, theme);
  }
}

/** What the dashed line is, above its end, where the plot is wide. */
export function writeTotal({ ink, words, sizes, theme }: Sheet, plot: Plot): void {
  if (!roomy(plot, sizes)) return;
  const { inkSoft, totalPressure } = theme.colour;
  const lain = words.write(
    {
      lines: [{ words: theme.say("scene.totalPressure"), size: sizes.axis, colour: inkSoft }],
      x: plot.left + plot.width,
      y: plot.top - sizes.axis * 0.75,
      anchor: [1, 1],
      bare: true,
    },
    theme,
  );
  const [level, end] = [lain.y + lain.height / 2, lain.x - 0.5 * sizes.axis];
  dashed(ink, [end - 2.4 * sizes.axis, level, end, level], [10, 7], {
    width: 2,
    color: totalPressure,
    alpha: 0.85,
  });
}
