/** A picture of the stage with its numbers, cautions, version and date beneath: drawn to a canvas, for stills and clips. */
import type { Box } from "../../scenes/scene.ts";
import { formatQuantity, t } from "../../words/index.ts";
import { cautionSentences } from "../cautions.tsx";
import type { Figure } from "../figures.ts";
import { VERSION } from "../version.ts";

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

/** Part of the height that the words take. */
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
  drawWords(context, sheet, area.height);
}

function drawWords(context: CanvasRenderingContext2D, sheet: Sheet, top: number): void {
  const { width, height } = context.canvas;
  const size = (height - top) / 7;
  const margin = size;
  context.textBaseline = "alphabetic";
  const write = (text: string, y: number, px: number, colour: string, bold = false) => {
    context.fillStyle = colour;
    context.font = `${bold ? 700 : 400} ${px}px "${sheet.family}", sans-serif`;
    // Longer languages shrink sideways rather than fall off the sheet.
    context.fillText(text, margin, y, width - 2 * margin);
  };
  const figures = sheet.figures
    .filter(({ value, source }) => value !== null && source !== "field")
    .map(({ name, value, unit, digits }) =>
      t("sheet.figure", { name: t(`figure.${name}`), value: formatQuantity(value!, unit, digits) }),
    );
  const cautions = cautionSentences();
  const half = Math.ceil(cautions.length / 2);
  write(sheet.title, top + size * 1.15, size * 1.1, sheet.colours.ink, true);
  write(figures.join(t("sheet.between")), top + size * 2.5, size * 0.9, sheet.colours.ink);
  write(cautions.slice(0, half).join(" "), top + size * 3.9, size * 0.8, sheet.colours.soft);
  write(cautions.slice(half).join(" "), top + size * 5, size * 0.8, sheet.colours.soft);
  write(
    t("sheet.made", { version: VERSION, date: sheet.date.slice(0, 10) }),
    top + size * 6.2,
    size * 0.8,
    sheet.colours.soft,
  );
}
