/** The fluid in chest and abdomen: the cavity filled to a scale in mL at its side. */
import type { Graphics } from "pixi.js";
import { formatQuantity } from "../../i18n/index.ts";
import type { Note } from "../drawing/lettering.ts";
import { rangeOf } from "../drawing/scale.ts";
import type { Fit } from "../drawing/split.ts";
import type { Theme } from "../theme/theme.ts";
import type { TissuePlan } from "./tissue-plan.ts";

/** Plane units left free above the fullest level, the round of the cavity's corners, half its lining, and a mark's length. */
const AIR = 26;
const ROUND = 30;
const LINING = 5;
const MARK = 18;

/** y at which the fluid stands. @param full mL at the highest level */
export const levelAt = ({ cavity }: TissuePlan, millilitres: number, full: number): number => {
  const room = cavity.bottom - LINING - cavity.top - AIR;
  return cavity.bottom - LINING - room * Math.min(1, millilitres / (full || 1));
};

/** mL at which the scale has a mark, above the floor of the cavity. */
const marksTo = (full: number): readonly number[] =>
  rangeOf([full], { zero: true, count: 3 }).marks.filter((mark) => mark > 0 && mark <= full);

export function drawGauge(ink: Graphics, plan: TissuePlan, level: number, full: number, theme: Theme): void {
  const { colour } = theme;
  const left = plan.cavity.left + LINING;
  const [right, bottom] = [plan.cavity.right - LINING, plan.cavity.bottom - LINING];
  const round = ROUND - LINING;
  // In the lower corners the fluid is as narrow as its surface there.
  const inset = (y: number) => {
    const up = Math.min(round, bottom - y);
    return round - Math.sqrt(Math.max(0, round ** 2 - (round - up) ** 2));
  };
  ink.clear();
  const edge: [number, number][] = [];
  for (let k = 0; k <= 12; k++) {
    const y = level + ((bottom - level) * k) / 12;
    edge.push([inset(y), y]);
  }
  ink
    .poly(
      [...edge.map(([x, y]) => [left + x, y]), ...edge.toReversed().map(([x, y]) => [right - x, y])].flat(),
      true,
    )
    .fill({ color: colour.pressure, alpha: 0.42 });
  ink
    .moveTo(left + inset(level), level)
    .lineTo(right - inset(level), level)
    .stroke({ color: colour.pressure, width: 3 });
  for (const mark of marksTo(full)) {
    const y = levelAt(plan, mark, full);
    ink.moveTo(left + inset(y) + 4, y).lineTo(left + inset(y) + 4 + MARK, y);
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
    x: fit.x + fit.scale * (plan.cavity.left + LINING + MARK + 12),
    y: fit.y + fit.scale * levelAt(plan, mark, full),
    anchor: [0, 0.5],
    bare: true,
  }));
};
