/** The fluid in the cavity, which lifts the lung off the chest wall, to a scale in mL at its side. */
import type { Graphics } from "pixi.js";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { smoothStep } from "../../sim/geometry/centreline.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import type { Note } from "../drawing/lettering.ts";
import { rangeOf } from "../drawing/scale.ts";
import { drawScaleBar } from "../drawing/scale-bar.ts";
import { type Fit, placed } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import {
  BREAK,
  CENTIMETRE,
  DRAIN,
  LINING,
  LYMPH_MICROMETRE,
  MICROMETRE,
  type TissuePlan,
  TORN_AT,
  WIDTH,
} from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";

/** Plane units left to the lung above the fullest level and below the fluid, where the scale's marks begin, and how long they and those between them are. */
const AIR = 38;
const BED = LINING / 2 - 2;
const SCALE = 24;
const MARK = 22;
const BETWEEN = 11;
/** Sizes of type that a number with its unit is long. */
const WORDS = 3.9;
/** Marks from one with a number to the next. */
const PARTS = 5;

/** y at which the fluid stands. @param full mL at the highest level */
export const levelAt = ({ cavity }: TissuePlan, millilitres: number, full: number): number => {
  const room = cavity.bottom - BED - cavity.gap - BREAK - AIR;
  return cavity.bottom - BED - room * Math.min(1, millilitres / (full || 1));
};

/** mL at which the scale has a mark, above the floor of the cavity. */
const marksTo = (full: number): readonly number[] =>
  rangeOf([full], { zero: true, count: 3 }).marks.filter((mark) => mark > 0 && mark <= full);

/** Plane units from the left within which the scale's numbers stand. @param type plane units */
const numbersTo = (type: number): number => SCALE + MARK + 8 + WORDS * type;

interface Filled {
  /** y at which the fluid stands, and mL at the highest level */
  readonly level: number;
  readonly full: number;
  /** of the numbers, plane units */
  readonly type: number;
}

/** Plane units: steps along the lung's edge, and above the wall where the drain holds it off. */
const [EDGE_STEP, OVER_DRAIN] = [20, 3 * DRAIN];

/** The lung's lower edge: it rests on the fluid, or on drain and chest wall. */
function lungEdge({ cavity: { bottom }, drain }: TissuePlan, level: number): readonly Spot[] {
  const [from, to] = [entryAt(drain.x, 0), 880];
  return Array.from({ length: WIDTH / EDGE_STEP + 1 }, (_, i): Spot => {
    const x = EDGE_STEP * i;
    const held = smoothStep(from - 70, from, x) * (1 - smoothStep(to - 90, to, x));
    return [x, Math.min(level, bottom - BED - OVER_DRAIN * held)];
  });
}

/** No line of the fluid's runs through a number. */
export function drawGauge(
  ink: Graphics,
  plan: TissuePlan,
  { level, full, type }: Filled,
  theme: Theme,
): void {
  const { colour } = theme;
  const bed = plan.cavity.bottom - BED;
  const serosa = tissueTone("endothelium", theme);
  ink.clear();
  const edge = lungEdge(plan, level);
  ink
    .poly([...edge, [WIDTH, bed], [0, bed]].flat(), true)
    .fill({ color: mix(tissueTone("cavity", theme).body, colour.pressure, 0.42) });
  const struck = marksTo(full).some((mark) => Math.abs(levelAt(plan, mark, full) - level) < 0.7 * type);
  const seen = edge.filter(([x]) => !struck || x >= numbersTo(type));
  for (const [color, width] of [
    [serosa.edge, 6],
    [serosa.body, 3],
  ] as const)
    ink.poly(seen.flat(), false).stroke({ color, width });
  const marks = marksTo(full);
  const step = (marks[0] ?? full) / PARTS;
  ink.moveTo(SCALE, levelAt(plan, 0, full)).lineTo(SCALE, levelAt(plan, full, full));
  for (let i = 0; i <= Math.round(full / step); i++) {
    const y = levelAt(plan, i * step, full);
    ink.moveTo(SCALE, y).lineTo(SCALE + (i % PARTS === 0 ? MARK : BETWEEN), y);
  }
  ink.stroke({ color: colour.ink, width: 2.5 });
}

/** The scales' numbers, of the fluid's only the highest where they would stand too close. @param type CSS px */
export const gaugeNumbers = (
  { plan, ...fit }: Fit & { readonly plan: TissuePlan },
  full: number,
  type: number,
  theme: Theme,
): readonly Note[] => {
  const all = marksTo(full);
  const apart = (fit.scale * (plan.cavity.bottom - levelAt(plan, full, full))) / (all.length + 1);
  const write = (words: string, x: number, y: number, anchor: readonly [number, number]): Note => ({
    lines: [{ words, size: type, colour: theme.colour.ink }],
    x: fit.x + fit.scale * x,
    y: fit.y + fit.scale * y,
    anchor,
    bare: true,
  });
  return [
    ...(apart > 1.2 * type ? all : all.slice(-1)).map((mark) =>
      write(formatQuantity(mark, "mL"), SCALE + MARK + 8, levelAt(plan, mark, full), [0, 0.5]),
    ),
    ...bars(plan).map(({ value, unit, x, y }) => write(formatQuantity(value, unit), x, y - 6, [0.5, 1])),
    ...tears(plan).map(({ part, times, x, y }): Note => {
      const words = theme.say("further.exchange.smaller", { part, times });
      return { ...write(words, x, y, [0.5, 0.5]), bare: false };
    }),
  ];
};

/** Plane units: half the height of the marks at a bar's ends. */
const END = 7;

/** A bar for each scale: what it stands for, how long it is, and where its middle is. */
const bars = ({ cavity: { top, bottom } }: TissuePlan) =>
  [
    { value: 10, unit: "µm", long: 10 * MICROMETRE, x: 912, y: 54 },
    { value: 50, unit: "µm", long: 50 * LYMPH_MICROMETRE, x: 920, y: top - 36 },
    { value: 2, unit: "cm", long: 2 * CENTIMETRE, x: 340, y: bottom - 28 },
  ] as const;

/** What is drawn under each tear, how many times smaller, to two digits, and where that is said. */
const tears = ({ cavity: { gap } }: TissuePlan) =>
  [
    { part: "lymph", ratio: MICROMETRE / LYMPH_MICROMETRE, top: TORN_AT, x: 500 },
    { part: "chest", ratio: (1e4 * LYMPH_MICROMETRE) / CENTIMETRE, top: gap, x: 500 },
  ].map(({ part, ratio, top, x }) => ({
    part,
    times: Number(ratio.toPrecision(2)),
    x,
    y: top + BREAK / 2,
  }));

/** Where they lie on the screen, numbers apart. */
export const barBoxes = ({ plan, ...fit }: Fit & { readonly plan: TissuePlan }): readonly Box[] =>
  bars(plan).map(({ x, y, long }) =>
    placed(fit, { x: x - long / 2, y: y - END, width: long, height: 2 * END }),
  );

/** Capillary, lymph vessels and cavity each at a scale of its own. */
export function drawScales(ink: Graphics, plan: TissuePlan, { colour }: Theme): void {
  for (const bar of bars(plan)) drawScaleBar(ink, { ...bar, end: END, width: 2.5 }, colour.ink);
}
