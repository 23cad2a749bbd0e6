/** The fluid in chest and abdomen: the cavity filled to a scale in mL at its side. */
import type { Graphics } from "pixi.js";
import { formatQuantity } from "../../i18n/index.ts";
import type { Note } from "../drawing/lettering.ts";
import { rangeOf } from "../drawing/scale.ts";
import type { Fit } from "../drawing/split.ts";
import type { Theme } from "../theme/theme.ts";
import { LINING, type TissuePlan, WIDTH } from "./tissue-plan.ts";

/** Plane units left free above the fullest level and below the fluid (half the lining with half its outline), where the scale's marks begin, and how long they are. */
const AIR = 34;
const BED = LINING / 2 + 1;
const SCALE = 24;
const MARK = 18;

/** y at which the fluid stands. @param full mL at the highest level */
export const levelAt = ({ cavity }: TissuePlan, millilitres: number, full: number): number => {
  const room = cavity.bottom - BED - cavity.top - AIR;
  return cavity.bottom - BED - room * Math.min(1, millilitres / (full || 1));
};

/** mL at which the scale has a mark, above the floor of the cavity. */
const marksTo = (full: number): readonly number[] =>
  rangeOf([full], { zero: true, count: 3 }).marks.filter((mark) => mark > 0 && mark <= full);

export function drawGauge(ink: Graphics, plan: TissuePlan, level: number, full: number, theme: Theme): void {
  const { colour } = theme;
  const depth = plan.cavity.bottom - BED - level;
  ink.clear();
  ink.rect(0, level, WIDTH, depth).fill({ color: colour.pressure, alpha: 0.42 });
  ink.moveTo(0, level).lineTo(WIDTH, level).stroke({ color: colour.pressure, width: 3 });
  for (const mark of marksTo(full)) {
    const y = levelAt(plan, mark, full);
    ink.moveTo(SCALE, y).lineTo(SCALE + MARK, y);
  }
  ink.stroke({ color: colour.ink, width: 2.5 });
}

/** The scale's numbers, only the highest where they would stand too close. @param type CSS px */
export const gaugeNumbers = (
  { plan, ...fit }: Fit & { readonly plan: TissuePlan },
  full: number,
  type: number,
  theme: Theme,
): readonly Note[] => {
  const all = marksTo(full);
  const apart = (fit.scale * (plan.cavity.bottom - levelAt(plan, full, full))) / (all.length + 1);
  return (apart > 1.2 * type ? all : all.slice(-1)).map((mark) => ({
    lines: [{ words: formatQuantity(mark, "mL"), size: type, colour: theme.colour.ink }],
    x: fit.x + fit.scale * (SCALE + MARK + 8),
    y: fit.y + fit.scale * levelAt(plan, mark, full),
    anchor: [0, 0.5],
    bare: true,
  }));
};
