/** The words of the exchange scene: the day, the figures at their places, and the names of the curves. */
import type { Graphics } from "pixi.js";
import { formatNumber, formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { firstDaysResistance, VENOUS_USUAL } from "../../sim/exchange/index.ts";
import { numberSetting, wordSetting } from "../../sim/parameters/parameters.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import type { Look } from "../drawing/drawing-sheet.ts";
import type { Lettering, Note } from "../drawing/lettering.ts";
import { rowsOf } from "../drawing/split.ts";
import { dashed } from "../layers/path-line.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";
import type { DayFigures } from "./day.ts";

/** Flows of the course: colour and dash pattern, both in the picture's legend. */
export const CURVES = [
  { key: "filtration", colour: (theme: Theme) => theme.colour.pressure, dash: [] },
  { key: "lymph", colour: (theme: Theme) => theme.colour.origin[2], dash: [0.7, 0.4] },
  { key: "overflow", colour: (theme: Theme) => theme.colour.origin[1], dash: [0.15, 0.4] },
] as const;

/** g/h of albumin that a gold piece stands for, for each mL/h that a drop does. */
export const ALBUMIN = 0.06;

const ductPressureWords = ({ ductPressure }: DayFigures): string => formatQuantity(ductPressure, "mmHg", 1);

/** The pressure where the lymph goes, and the usual one where that is another. */
export const ductWords = (
  figures: DayFigures,
  { request: { stage } }: Circulation,
  { say }: Theme,
): readonly string[] => [
  ductPressureWords(figures),
  ...(stage === "two-ventricle"
    ? []
    : [say("further.exchange.healthy", { usual: formatNumber(VENOUS_USUAL) })]),
];

/** From where the course begins, and to where its lungs ease. */
export function lungWords({ request }: Circulation, { say }: Theme): readonly string[] {
  if (!hasPathway(request.stage)) return [];
  const index = numberSetting(request, "pulmonaryResistanceIndex");
  const words = {
    index: formatQuantity(index, "WU.m2", 1),
    early: formatNumber(firstDaysResistance(request), 1),
  };
  return [say("further.exchange.lungs", words)];
}

interface Head {
  readonly day: number;
  readonly figures: DayFigures;
  /** mL/h that one drop of the picture stands for */
  readonly drop: number;
  readonly circulation: Circulation;
  /** there is room for what else explains it */
  readonly wide: boolean;
  /** what the day brings */
  readonly state: State;
  /** an inset says the pressure where lymph goes */
  readonly inset: boolean;
}

/** mL/h that run over, and part of the lymph that goes into the tissue or comes out of it, before either is spoken of. */
const [RUNS, MOVES] = [0.5, 0.05];
export const STATES = ["floods", "over", "eases", "swells", "shrinks", "keeps"] as const;
type State = (typeof STATES)[number];
/** What the day brings: whether lymph keeps up with what leaves, and where the rest goes or comes from. */
export function stateOf({ filtration, lymph, overflow }: DayFigures): State {
  const swells = (filtration - lymph - overflow) / lymph;
  if (overflow > RUNS) return filtration < lymph ? "eases" : swells > MOVES ? "floods" : "over";
  return swells > MOVES ? "swells" : swells < -MOVES ? "shrinks" : "keeps";
}

/** The day of the course and what it brings, what drops and gold of the picture stand for, and where lymph goes and what it empties against there. */
export function headNote(head: Head, box: Box, type: Sizes, theme: Theme): Note {
  const { day, figures, drop, circulation, wide, state, inset } = head;
  const { say, colour } = theme;
  // What keeps lymph from growing with all that leaves.
  const most = formatNumber(figures.lymphCarried, 1);
  const dayWords = say("further.exchange.day", {
    day: formatNumber(Math.round(day)),
    state,
  });
  const more = [
    say("further.exchange.drop", {
      flow: formatQuantity(drop, "mL/h"),
      albumin: formatNumber(ALBUMIN * drop, 1),
    }),
    say("further.exchange.duct", {
      joins: wordSetting(circulation.request, "thoracicDuct"),
      most,
      wide: wide ? "yes" : "no",
      shown: inset ? "yes" : "no",
      pressure: ductPressureWords(figures),
      healthy: circulation.request.stage === "two-ventricle" ? "yes" : "no",
      usual: formatNumber(VENOUS_USUAL),
    }),
  ];
  return {
    lines: [
      { words: dayWords, size: type.label, colour: colour.ink, bold: true },
      ...more.map((words) => ({ words, size: type.axis, colour: colour.inkSoft })),
    ],
    x: box.x,
    y: box.y,
    wrap: box.width - type.label,
  };
}

/** One above the other, in a small picture side by side. */
export function figureLines(
  key: string,
  figure: string,
  { sizes: type, theme }: Look,
  small: boolean,
): Note["lines"] {
  const name = theme.say(`further.exchange.${key}`);
  if (small) return [{ words: `${name} ${figure}`, size: type.axis, colour: theme.colour.ink }];
  return [
    { words: name, size: type.axis, colour: theme.colour.inkSoft },
    { words: figure, size: type.label, colour: theme.colour.ink, bold: true },
  ];
}

/** What the names of the curves are followed by where a picture is too small for plates, and what else is said there. */
const BESIDES = [
  { key: "drained", unit: "mL/h" },
  { key: "collected", unit: "mL" },
] as const;

interface Named {
  /** CSS px */
  readonly size: number;
  /** stand behind the names; none without them */
  readonly figures: DayFigures | null;
  /** said after the names */
  readonly more: readonly string[];
}

/**
 * Names with a sample of each line, one after another along the top of the box; returns the height taken. `words` has just begun.
 */
export function nameCurves(
  ink: Graphics,
  words: Lettering,
  box: Box,
  { size, figures, more }: Named,
  theme: Theme,
): number {
  const bare = (said: string): Note => ({
    lines: [{ words: said, size, colour: theme.colour.ink }],
    x: 0,
    y: 0,
    bare: true,
  });
  const noteOf = (key: keyof DayFigures, unit: "mL/h" | "mL"): Note => {
    const name = theme.say(`further.exchange.${key}`);
    return bare(figures ? `${name} ${formatQuantity(figures[key], unit)}` : name);
  };
  const named = [
    ...CURVES.map((line) => ({ note: noteOf(line.key, "mL/h"), line, sample: 2.2 * size })),
    ...(figures ? BESIDES : []).map(({ key, unit }) => ({ note: noteOf(key, unit), line: null, sample: 0 })),
    // Where a sentence has no room it is left to the numbers.
    ...more
      .map((said) => ({ note: bare(said), line: null, sample: 0 }))
      .filter(({ note }) => words.measure(note, theme).width < box.width),
  ];
  const widths = named.map(({ note, sample }) => words.measure(note, theme).width + sample);
  const rows = rowsOf(widths, box.width, size);
  rows.forEach((row, r) => {
    let x = box.x;
    const middle = box.y + (r + 0.5) * 1.45 * size;
    for (const i of row) {
      const { note, line, sample } = entryAt(named, i);
      if (line) {
        const style = { width: Math.max(2, size * 0.14), color: line.colour(theme), alpha: 1 };
        const end = x + sample - 0.5 * size;
        if (line.dash.length === 0) ink.moveTo(x, middle).lineTo(end, middle).stroke(style);
        else dashed(ink, [x, middle, end, middle], [line.dash[0] * size, line.dash[1] * size], style);
      }
      words.write({ ...note, x: x + sample, y: middle, anchor: [0, 0.5] }, theme);
      x += entryAt(widths, i) + size;
    }
  });
  return rows.length * 1.45 * size + 0.4 * size;
}
