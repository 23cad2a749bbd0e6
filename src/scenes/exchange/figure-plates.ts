/** The exchange scene's words: the day above, and the figures of that day on plates over the picture, none on another. */
import type { Lettering, Note } from "../drawing/lettering.ts";
import { keepOff } from "../layers/keep-off.ts";
import { settle } from "../layers/spread-labels.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";
import type { DayFigures } from "./day.ts";
import { figureLines, proteinLines } from "./notes.ts";
import type { TissueFit } from "./tissue-drawing.ts";

/** Figures on the picture: where they stand (on a plan 760 high), and the unit. */
const NUMBERS = [
  { key: "filtration", at: [560, 188], unit: "mL/h" },
  { key: "lymph", at: [96, 520], unit: "mL/h" },
  { key: "overflow", at: [400, 592], unit: "mL/h" },
  { key: "collected", at: [610, 686], unit: "mL" },
  { key: "drained", at: [900, 640], unit: "mL/h" },
] as const;

/** @param held part of the proteins' pull that the wall keeps */
export const figureNotes = (
  figures: DayFigures,
  held: number,
  fit: TissueFit,
  type: Sizes,
  theme: Theme,
): readonly Note[] =>
  [
    ...NUMBERS.map(({ key, at, unit }) => ({
      lines: figureLines(key, figures[key], unit, type, theme),
      at,
    })),
    // In a small picture it would cover what it speaks of.
    ...(fit.scale < 0.45 ? [] : [{ lines: proteinLines(held, type, theme), at: PROTEINS }]),
  ].map(({ lines, at }) => ({
    lines,
    x: fit.x + at[0] * fit.scale,
    y: fit.y + fit.plan.down(at[1]) * fit.scale,
    anchor: [0, 0.5],
  }));

/** Under the blood's way into the picture. */
const PROTEINS = [24, 226] as const;

/**
 * Writes the head and, clear of it and of each other, the notes.
 * @param around where plates may go
 * @param small  the picture is: a plate that has no room of its own is left out
 * @param bare   numbers that keep their place
 */
export function writePlates(
  words: Lettering,
  notes: readonly Note[],
  head: Note,
  { around, small, bare }: { readonly around: Box; readonly small: boolean; readonly bare: readonly Note[] },
  theme: Theme,
): void {
  words.begin();
  const plates = notes.map((note) => {
    const { x, y, width, height } = words.write(note, theme);
    const middle = [x + width / 2, y + height / 2] as const;
    return { note, at: middle, x: middle[0], y: middle[1], width, height };
  });
  words.begin();
  const taken = [head, ...bare].map((note) => words.write(note, theme));
  const placed = small ? keepOff(plates, around, taken, () => false) : settle(plates, around, taken);
  for (const { note, x, y } of placed) words.write({ ...note, x, y, anchor: [0.5, 0.5] }, theme);
  words.end();
}
