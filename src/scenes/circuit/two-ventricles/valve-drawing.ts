/** The four valves of a heart with two ventricles: those of the inlets whole, of those of the outlets two cusps in section and one behind them. */
import type { Graphics } from "pixi.js";
import { entryAt, lastOf } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { drawHanging, drawSheet, type Hanging } from "../../anatomy/hanging-valve.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { tissue } from "../../anatomy/tones.ts";
import { spots } from "../../drawing/curve-drawing.ts";
import type { Theme } from "../../theme/theme.ts";
import { VALVES, type ValvePlan } from "./heart-plan.ts";
import { frameOf } from "./root.ts";

/** 0 shut .. 1 open */
export type Openings = Readonly<Record<ValvePlan["name"], number>>;

/** Places of a cusp, `u` from the ring's middle to its hinge and `v` down the blood's way, in halves of the ring. */
type Way = readonly Point[];
type Forms = readonly [shut: Way, open: Way];

/** Where the section cuts a semilunar cusp, from the hinge to the free edge; that edge onwards to where it ends beside its neighbour; and how it is joined to the root, back to its hinge. */
const CUSP: Forms = [
  spots("1.02 0.1, 0.78 -0.08, 0.36 0.06, 0.03 0.62"),
  spots("1.02 0.1, 0.98 0.5, 0.88 0.9, 0.9 1.3"),
];
const CUSP_EDGE: Forms = [spots("0.2 0.66, 0.4 0.73, 0.6 0.88"), spots("0.82 1.3, 0.72 1.24, 0.6 1.1")];
const CUSP_JOINT = spots("0.84 0.6, 0.98 0.3, 1.02 0.1");

export interface Cusp {
  /** where the section cuts it; of one that it misses, empty */
  readonly line: readonly Point[];
  /** its free edge from there */
  readonly edge: readonly Point[];
  /** where it is joined to its ring, from the end beside its neighbour to its hinge */
  readonly joint: readonly Point[];
}

const between = ([shut, wide]: Forms, open: number): Way =>
  shut.map(([u, v], i): Point => {
    const [ou, ov] = entryAt(wide, i);
    return [u + open * (ou - u), v + open * (ov - v)];
  });

/** The two that the section cuts, and the one behind them. */
export function cuspsOf(plan: ValvePlan, open: number): readonly Cusp[] {
  const { at } = frameOf(plan);
  const side = (sign: 1 | -1): Cusp => {
    const placed = (way: Way) => way.map(([u, v]) => at(sign * u, v));
    const cut = placed(between(CUSP, open));
    return {
      line: smoothLine(cut, 5),
      edge: smoothLine([lastOf(cut), ...placed(between(CUSP_EDGE, open))], 5),
      joint: smoothLine(placed(CUSP_JOINT), 4),
    };
  };
  const [middle, end] = [0.62 + 0.36 * open, 0.88 + 0.3 * open];
  const behind: Cusp = {
    line: [],
    edge: smoothLine([at(-0.6, end), at(0, middle), at(0.6, end)], 5),
    joint: smoothLine([at(0.6, end), at(0.5, 0.4), at(0, 0.02), at(-0.5, 0.4), at(-0.6, end)], 5),
  };
  return [side(-1), side(1), behind];
}

/** mm: half a cusp's thickness at its hinge and at its free edge. */
const THICK = [0.5, 0.24] as const;

function outlineOf(line: readonly Point[]): readonly Point[] {
  const sides: [Point[], Point[]] = [[], []];
  line.forEach(([x, y], i) => {
    const [ax, ay] = entryAt(line, Math.max(0, i - 1));
    const [bx, by] = entryAt(line, Math.min(line.length - 1, i + 1));
    const half = (THICK[0] + ((THICK[1] - THICK[0]) * i) / (line.length - 1)) / Math.hypot(bx - ax, by - ay);
    sides[0].push([x - half * (by - ay), y + half * (bx - ax)]);
    sides[1].push([x + half * (by - ay), y - half * (bx - ax)]);
  });
  return [...sides[0], lastOf(line), ...sides[1].reverse()];
}

/** As its leaflets hang; null for a semilunar valve. */
export const hangingOf = (plan: ValvePlan): Hanging | null =>
  plan.funnel ? { ...plan.funnel, at: frameOf(plan).at } : null;

/** Atrioventricular and semilunar valves each on their own, since they move apart. */
export function drawValves(
  inks: Readonly<Record<"atrioventricular" | "semilunar", Graphics>>,
  openings: Openings,
  theme: Theme,
): void {
  const look = tissue("valve", theme);
  for (const ink of Object.values(inks)) ink.clear();
  for (const plan of VALVES) {
    const [hanging, open] = [hangingOf(plan), openings[plan.name]];
    if (hanging) {
      drawHanging(inks.atrioventricular, hanging, open, look);
      continue;
    }
    const ink = inks.semilunar;
    const cusps = cuspsOf(plan, open);
    // Open, one lies against the wall behind it.
    for (const { line, edge, joint } of [...cusps].reverse())
      drawSheet(ink, { joint: [...joint].reverse(), edge: [...line, ...edge] }, look, {
        alpha: 0.94 - (line.length > 0 ? 0.4 : 0.66) * open,
        dark: 0.12,
      });
    for (const { line } of cusps)
      if (line.length > 0)
        ink.poly(outlineOf(line).flat()).fill({ color: look.body }).stroke({ color: look.shade, width: 0.3 });
  }
}
