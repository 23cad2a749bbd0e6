/** The wash-out curve of a dye pulse: how much is still inside, against time, with the tenth that counts as gone. */
import { type Band, formatNumber, formatQuantity, t } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Sheet } from "../drawing/drawing-sheet.ts";
import type { Box } from "../scene.ts";
import type { Sizes } from "../theme/type.ts";

export interface WashOut {
  readonly time: readonly number[];
  readonly left: readonly number[];
  /** s, once known: between which pulses leave, whenever they are released */
  readonly band?: Band;
}

/** s: the axis is at least this long, and then doubles */
const SHORTEST = 4;

/** Heights of type that the words take in one line, and the longer of their two lines. */
const WIDE = 12.9;
const NARROW = 6.4;
const TALL = 7.5;

export interface WashOutPanel {
  readonly width: number;
  readonly height: number;
  /** words alone where there is no room for a curve that can be read */
  readonly plotted: boolean;
}

/** From the most informative to the one that needs least room. */
export function washOutPanels(box: Box, { label }: Sizes): readonly WashOutPanel[] {
  const width = Math.min(box.width * 0.45, label * 13);
  const plotted = (part: number): WashOutPanel => ({
    width: Math.max(part * width, NARROW * label),
    height: Math.min(Math.max(part * width * 0.62, label * TALL), box.height * 0.45),
    plotted: true,
  });
  const words = (wide: number, lines: number): WashOutPanel => ({
    width: wide * label,
    height: headOf(lines, label) + label * 0.2,
    plotted: false,
  });
  const large = [plotted(1), plotted(0.75)].filter(({ height }) => height >= TALL * label);
  return [...large, words(WIDE, 1), words(NARROW, 2)];
}

const headOf = (lines: number, label: number): number => label * (0.65 + 1.25 * lines);

export function drawWashOut(sheet: Sheet, curve: WashOut, box: WashOutPanel & Box): void {
  const { ink, words, sizes, theme } = sheet;
  const { colour } = theme;
  const pad = sizes.axis * 0.6;
  const says = curve.band
    ? theme.say("scene.dye.gone", { time: formatSpan(curve.band) })
    : theme.say("scene.dye.left", {
        share: formatQuantity(100 * (curve.left[curve.left.length - 1] ?? 1), "%"),
      });
  // Where the box is narrow the number stands under its name.
  const lines = box.width < WIDE * sizes.label ? says.split(/(?<=:) /) : [says];
  const head = headOf(lines.length, sizes.label);
  ink.roundRect(box.x, box.y, box.width, box.height, 8).fill({ color: colour.plate, alpha: 0.88 });
  ink.stroke({ width: 1, color: colour.plateRim });
  words.write(
    {
      lines: lines.map((line) => ({ words: line, size: sizes.label, colour: colour.ink })),
      x: box.x + pad,
      y: box.y + pad * 0.6,
      bare: true,
    },
    theme,
  );
  if (box.plotted) drawCurve(sheet, curve, head, box);
}

/** "1.4 to 2.2 s" */
const formatSpan = ([least, most]: Band): string =>
  t("figure.band", { low: formatNumber(least, 1), high: formatQuantity(most, "s", 1) });

function drawCurve({ ink, words, sizes, theme }: Sheet, curve: WashOut, head: number, box: Box): void {
  const { colour } = theme;
  const pad = sizes.axis * 0.6;
  const plot = {
    x: box.x + pad,
    y: box.y + head,
    width: box.width - 2 * pad,
    height: box.height - head - sizes.axis * 1.8,
  };
  const end = curve.time[curve.time.length - 1] ?? 0;
  let span = SHORTEST;
  while (span < end) span *= 2;
  const x = (time: number) => plot.x + (time / span) * plot.width;
  const y = (left: number) => plot.y + plot.height * (1 - left);
  ink
    .moveTo(plot.x, y(0))
    .lineTo(plot.x + plot.width, y(0))
    .stroke({ width: 1, color: colour.hair });
  ink
    .moveTo(plot.x, y(0.1))
    .lineTo(plot.x + plot.width, y(0.1))
    .stroke({ width: 1, color: colour.hair, alpha: 0.6 });
  const line = curve.time.flatMap((time, i) => [x(time), y(entryAt(curve.left, i))]);
  if (line.length >= 4) ink.poly(line, false).stroke({ width: 3, color: colour.dye, join: "round" });
  words.write(
    {
      lines: [{ words: formatQuantity(span, "s"), size: sizes.axis, colour: colour.inkSoft }],
      x: plot.x + plot.width,
      y: y(0) + 4,
      anchor: [1, 0],
      bare: true,
    },
    theme,
  );
}
