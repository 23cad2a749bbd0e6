/** The lung over the chest wall, cut, at the body's scale: air spaces too small to be told apart, in lobules with airways and vessels. */
import type { Ink } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import { GOLDEN } from "../drawing/even-spread.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** Plane units: from one air space to the next, and across and down from one lobule to the next (1 to 2.5 cm, textbooks of histology). */
const SPACES = 7;
const LOBULE = [62, 52] as const;

/** As if by chance, 0..1, the same at each call. */
const chance = (seed: number): number => (seed * GOLDEN * 7.13) % 1;

/** @param down plane units between which it lies */
export function paintCutLung(
  ink: Ink,
  [top, bottom]: readonly [number, number],
  wide: number,
  theme: Theme,
): void {
  const { shade, body, light, edge } = tissue("lung", theme);
  ink.save();
  ink.beginPath();
  ink.rect(0, top, wide, bottom - top);
  ink.clip();
  ink.fillStyle = mix(shade, body, 0.45);
  ink.fillRect(0, top, wide, bottom - top);
  for (let row = 0; row * SPACES < bottom - top; row++)
    for (let column = 0; column * SPACES < wide; column++) {
      const seed = row * 191 + column;
      ink.beginPath();
      ink.ellipse(
        (column + chance(seed)) * SPACES,
        top + (row + chance(seed + 0.5)) * SPACES,
        2 + 1.5 * chance(seed + 0.2),
        1.8 + chance(seed + 0.7),
        3 * chance(seed),
        0,
        2 * Math.PI,
      );
      ink.fillStyle = seed % 3 ? light : body;
      ink.fill();
    }
  paintLobules(ink, [top, bottom], wide, edge, theme);
  ink.restore();
}

/** Thin walls around each, and in its middle an airway with its artery. */
function paintLobules(
  ink: Ink,
  [top, bottom]: readonly [number, number],
  wide: number,
  edge: string,
  { colour, name }: Theme,
): void {
  const [across, down] = LOBULE;
  const spot = (column: number, row: number): readonly [number, number] => {
    const seed = 31 * row + column + 7;
    return [
      (column + (row % 2) / 2 + 0.4 * (chance(seed) - 0.5)) * across,
      bottom - (row + 0.3 * (chance(seed + 0.3) - 0.5)) * down,
    ];
  };
  const rows = Math.ceil((bottom - top) / down) + 1;
  const dot = ([x, y]: readonly [number, number], r: number, fill: string) => {
    ink.beginPath();
    ink.arc(x, y, r, 0, 2 * Math.PI);
    ink.fillStyle = fill;
    ink.fill();
  };
  ink.strokeStyle = edge;
  ink.lineWidth = 1.4;
  ink.globalAlpha = 0.55;
  ink.beginPath();
  for (let row = 0; row < rows; row++)
    for (let column = -1; column * across < wide + across; column++) {
      ink.moveTo(...spot(column, row));
      ink.lineTo(...spot(column + 1, row));
      if ((column + row) % 2) ink.lineTo(...spot(column + 1 + (row % 2 ? 1 : 0), row + 1));
    }
  ink.stroke();
  ink.globalAlpha = 1;
  for (let row = 0; row < rows; row++)
    for (let column = 0; column * across < wide; column += 2) {
      const [x, y] = spot(column + 0.5, row + 0.5);
      dot([x, y], 5.4, edge);
      dot([x, y], 3.8, name === "dark" ? colour.stage : "#ffffff");
      dot([x + 9, y + 2], 3, edge);
    }
}
