/** The sheet of a still as an SVG file: it scales to a poster, and its words can be read out and searched. */
import { inMarkup } from "../../i18n/markup.ts";
import { present } from "../../sim/checked/present.ts";
import { VERSION } from "../app-version.ts";
import { fontOf, pictureArea, type Sheet, sheetRows } from "./sheet.ts";

/**
 * @param drawing the inside of an SVG element of the picture's area
 * @param description the picture in words
 * @param link    opens the state that is shown
 * @returns an SVG file of `width` x `height` px
 */
export function svgSheet(
  drawing: string,
  sheet: Sheet,
  { width, height, description, link }: { width: number; height: number; description: string; link: string },
): string {
  const area = pictureArea(width, height);
  const ruler = present(document.createElement("canvas").getContext("2d"));
  const rows = sheetRows(sheet, width, height).map((row) => {
    ruler.font = fontOf(row, sheet);
    const length = Math.min(row.room, ruler.measureText(row.text).width).toFixed(1);
    return `<text x="${row.x}" y="${row.y}" font-family="${sheet.family}, sans-serif" font-size="${row.size}" font-weight="${row.bold ? 700 : 400}" fill="${row.colour}" textLength="${length}" lengthAdjust="spacingAndGlyphs">${inMarkup(row.text)}</text>`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img">`,
    `<title>${inMarkup(sheet.title)}</title>`,
    `<desc>${inMarkup(description)}</desc>`,
    `<metadata>${inMarkup(JSON.stringify({ version: VERSION, date: sheet.date, link }))}</metadata>`,
    `<rect width="${width}" height="${height}" fill="${sheet.colours.ground}"/>`,
    `<svg width="${area.width}" height="${area.height}" viewBox="0 0 ${area.width} ${area.height}">${drawing}</svg>`,
    ...rows,
    "</svg>",
    "",
  ].join("\n");
}
