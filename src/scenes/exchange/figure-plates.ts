/** The exchange scene's words: the day above, and the figures of that day on plates over the picture, none on another. */
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Look } from "../drawing/drawing-sheet.ts";
import type { Lettering, Note } from "../drawing/lettering.ts";
import { keepOff } from "../layers/keep-off.ts";
import { settle } from "../layers/spread-labels.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import type { DayFigures } from "./day.ts";
import { figureLines } from "./notes.ts";
import type { TissueFit } from "./tissue-drawing.ts";
import { CAPILLARY } from "./tissue-plan.ts";

/** Figures on the picture: their unit, and where they stand: across, and down from the capillary or to the cavity's upper edge or floor. */
const NUMBERS = [
  { key: "filtration", x: 340, under: "capillary", y: -138, unit: "mL/h" },
  { key: "lymph", x: 40, under: "edge", y: -60, unit: "mL/h" },
  { key: "overflow", x: 290, under: "edge", y: -42, unit: "mL/h" },
  { key: "collected", x: 440, under: "floor", y: -128, unit: "mL" },
  { key: "drained", x: 820, under: "floor", y: -124, unit: "mL/h" },
] as const;

export const figureNotes = (
  figures: DayFigures,
  fit: TissueFit,
  look: Look,
  small: boolean,
): readonly Note[] =>
  NUMBERS.map(({ key, x, under, y, unit }) => ({
    lines: figureLines(key, formatQuantity(figures[key], unit), look, small),
    x: fit.x + x * fit.scale,
    y: fit.y + (y + levelOf(under, fit.plan)) * fit.scale,
    anchor: [0, 0.5],
  }));

const levelOf = (name: (typeof NUMBERS)[number]["under"], { cavity }: TissueFit["plan"]): number =>
  ({ capillary: entryAt(CAPILLARY.y, 0), edge: cavity.top, floor: cavity.bottom })[name];

interface Around {
  /** where plates may go */
  readonly around: Box;
  /** the picture is: a plate that has no room of its own is left out */
  readonly small: boolean;
  /** numbers that keep their place */
  readonly bare: readonly Note[];
  /** what else no plate may cover */
  readonly kept: readonly Box[];
}

/**
 * Writes the head and, clear of it and of each other, the notes.
 */
export function writePlates(
  words: Lettering,
  notes: readonly Note[],
  head: Note,
  { around, small, bare, kept }: Around,
  theme: Theme,
): void {
  words.begin();
  const plates = notes.map((note) => {
    const { x, y, width, height } = words.write(note, theme);
    const middle = [x + width / 2, y + height / 2] as const;
    return { note, at: middle, x: middle[0], y: middle[1], width, height };
  });
  words.begin();
  const taken = [...[head, ...bare].map((note) => words.write(note, theme)), ...kept];
  const placed = small ? keepOff(plates, around, taken, () => false) : settle(plates, around, taken);
  for (const { note, x, y } of placed) words.write({ ...note, x, y, anchor: [0.5, 0.5] }, theme);
  words.end();
}
