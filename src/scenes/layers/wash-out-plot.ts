/** The wash-out curve of a dye pulse: how much is still inside, against time, with the tenth that counts as gone. */
import { formatQuantity } from "../../i18n/index.ts";
import type { Sheet } from "../drawing/drawing-sheet.ts";
import type { Box } from "../scene.ts";

export interface WashOut {
  readonly time: readonly number[];
  readonly left: readonly number[];
}

/** s: the axis is at least this long, and then doubles */
const SHORTEST = 4;

/** Heights of type that the words take in one line. */
const WIDE = 9.8;

export function drawWashOut({ ink, words, sizes, theme }: Sheet, curve: WashOut, box: Box): void {
  const { colour } = theme;
  const pad = sizes.axis * 0.6;
  const gone = curve.left.findIndex((left) => left <= 0.1);
  const says =
    gone >= 0
      ? theme.say("scene.dye.gone", { time: formatQuantity(curve.time[gone]!, "s", 1) })
      : theme.say("scene.dye.left", {
          share: formatQuantity(100 * (curve.left[curve.left.length - 1] ?? 1), "%"),
        });
  // Where the box is narrow the number stands under its name.
  const lines = box.width < WIDE * sizes.label ? says.split(/(?<=:) /) : [says];
  const head = sizes.label * (0.65 + 1.25 * lines.length);
  const plot = {
    x: box.x + pad,
    y: box.y + head,
    width: box.width - 2 * pad,
    height: box.height - head - sizes.axis * 1.8,
  };
  ink.roundRect(box.x, box.y, box.width, box.height, 8).fill({ color: colour.plate, alpha: 0.88 });
  ink.stroke({ width: 1, color: colour.plateRim });
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
  const line = curve.time.flatMap((time, i) => [x(time), y(curve.left[i]!)]);
  if (line.length >= 4) ink.poly(line, false).stroke({ width: 3, color: colour.dye, join: "round" });
  words.write(
    {
      lines: lines.map((line) => ({ words: line, size: sizes.label, colour: colour.ink })),
      x: box.x + pad,
      y: box.y + pad * 0.6,
      bare: true,
    },
    theme,
  );
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
