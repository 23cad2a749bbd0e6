/** A picture of the stage with its numbers, cautions, version and date below: drawn to a canvas, for stills and clips. */

import { formatQuantity, t } from "../../i18n/index.ts";
import type { Box } from "../../scenes/scene.ts";
import { present } from "../../sim/checked/present.ts";
import { VERSION } from "../app-version.ts";
import { cautionSentences } from "../cautions.tsx";
import type { Figure } from "../figures.ts";

interface SheetColours {
  readonly ground: string;
  readonly ink: string;
  readonly soft: string;
}

export interface Sheet {
  readonly title: string;
  readonly figures: readonly Figure[];
  /** RFC 3339 date */
  readonly date: string;
  readonly colours: SheetColours;
  readonly family: string;
}

/** Fraction of the height used by the text. */
const BAND = 0.17;

/** px of the picture's own area within a sheet of this size. */
export const pictureArea = (width: number, height: number) => ({
  width,
  height: Math.round(height * (1 - BAND)),
});

/** Fills `context`, whose canvas has the size of the whole sheet. `part`: px of the picture that are shown. */
export function drawSheet(
  context: CanvasRenderingContext2D,
  picture: HTMLCanvasElement,
  sheet: Sheet,
  part: Box = { x: 0, y: 0, width: picture.width, height: picture.height },
): void {
  const { width, height } = context.canvas;
  const area = pictureArea(width, height);
  context.fillStyle = sheet.colours.ground;
  context.fillRect(0, 0, width, height);
  const scale = Math.min(area.width / part.width, area.height / part.height);
  const drawn = { width: part.width * scale, height: part.height * scale };
  context.drawImage(
    picture,
    part.x,
    part.y,
    part.width,
    part.height,
    (area.width - drawn.width) / 2,
    (area.height - drawn.height) / 2,
    drawn.width,
    drawn.height,
  );
  drawWords(context, sheet);
}

interface Row {
  readonly text: string;
  /** px: baseline, size, and the width that it may take */
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly room: number;
  readonly colour: string;
  readonly bold: boolean;
}

/** The text below the picture on a sheet of this size. */
export function sheetRows(sheet: Sheet, width: number, height: number): Row[] {
  const top = pictureArea(width, height).height;
  const unit = (height - top) / 7;
  const { ink, soft } = sheet.colours;
  const row = (text: string, down: number, size: number, colour: string, bold = false): Row => ({
    text,
    x: unit,
    y: top + unit * down,
    size: unit * size,
    room: width - 2 * unit,
    colour,
    bold,
  });
  const figures = sheet.figures
    .filter(({ value }) => value !== null)
    .map(({ name, value, unit, digits, band }) =>
      t("sheet.figure", {
        name: t(`figure.${name}`),
        value: formatQuantity(present(value), unit, digits, band),
      }),
    );
  const cautions = cautionSentences();
  const half = Math.ceil(cautions.length / 2);
  return [
    row(sheet.title, 1.15, 1.1, ink, true),
    row(figures.join(t("sheet.between")), 2.5, 0.9, ink),
    row(cautions.slice(0, half).join(" "), 3.9, 0.8, soft),
    row(cautions.slice(half).join(" "), 5, 0.8, soft),
    row(t("sheet.made", { version: VERSION, date: sheet.date.slice(0, 10) }), 6.2, 0.8, soft),
  ];
}

export const fontOf = ({ bold, size }: Row, { family }: Sheet): string =>
  `${bold ? 700 : 400} ${size}px "${family}", sans-serif`;

function drawWords(context: CanvasRenderingContext2D, sheet: Sheet): void {
  const { width, height } = context.canvas;
  context.textBaseline = "alphabetic";
  for (const row of sheetRows(sheet, width, height)) {
    context.fillStyle = row.colour;
    context.font = fontOf(row, sheet);
    // Longer languages shrink sideways rather than fall off the sheet.
    context.fillText(row.text, row.x, row.y, row.room);
  }
}
