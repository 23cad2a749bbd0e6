/** Where the valves' leaflets stand between shut and open, in the ventricle's own lengths: x along its axis, y across its base. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { ATRIOVENTRICULAR, inRoot, SEMILUNAR } from "./heart-shape.ts";
import { smoothLine } from "./placing.ts";
import type { Standing } from "./standing.ts";

export interface Leaflet {
  readonly valve: "atrioventricular" | "semilunar";
  /** its middle line from the hinge to the free edge; of the cusp behind, whole: its free edge from one commissure to the other */
  readonly shut: readonly Point[];
  readonly open: readonly Point[];
  /** where the cusp behind the cut hangs from the root's wall, back to its free edge's beginning */
  readonly hangs?: readonly Point[];
}

const { from, to } = ATRIOVENTRICULAR;
const middle = (from + to) / 2;

const cusp = (side: 1 | -1): Leaflet => {
  const line = (...points: readonly Point[]) => points.map(([u, v]) => inRoot(side * u, v));
  const half = (SEMILUNAR.to - SEMILUNAR.from) / 2;
  return {
    valve: "semilunar",
    shut: line([half + 0.5, 0.6], [3.8, -1], [1.3, 1], [0.5, 5.4]),
    open: line([half + 0.5, 0.6], [5.2, 2.8], [4.6, 5.4], [5, 8.2]),
  };
};

/** The inlet's hang into the ventricle and meet along their edges; of the outflow's three cusps two are cut and one is whole behind them. */
export const LEAFLETS: readonly Leaflet[] = [
  {
    valve: "semilunar",
    shut: [inRoot(-5.8, 8.4), inRoot(0, 5.2), inRoot(5.8, 8.4)],
    open: [inRoot(-5.8, 8.4), inRoot(0, 9.4), inRoot(5.8, 8.4)],
    hangs: [
      inRoot(5.8, 8.4),
      inRoot(5.2, 3.4),
      inRoot(2.9, 0.6),
      inRoot(0, -0.3),
      inRoot(-2.9, 0.6),
      inRoot(-5.2, 3.4),
      inRoot(-5.8, 8.4),
    ],
  },
  {
    valve: "atrioventricular",
    shut: [
      [-0.4, from],
      [1.6, from + 3],
      [3.6, middle - 1.8],
      [6.6, middle - 0.35],
    ],
    open: [
      [-0.4, from],
      [3, from + 0.9],
      [6.4, from + 2],
      [9.4, from + 2.6],
    ],
  },
  {
    valve: "atrioventricular",
    shut: [
      [-0.4, to],
      [1.8, to - 3.2],
      [3.8, middle + 1.9],
      [6.8, middle + 0.35],
    ],
    open: [
      [-0.4, to],
      [3.6, to - 0.5],
      [8, to - 1.2],
      [12, to - 1.6],
    ],
  },
  cusp(-1),
  cusp(1),
];

/** Its middle line at a moment. */
export function leafletLine(
  { valve, shut, open }: Leaflet,
  standing: Pick<Standing, Leaflet["valve"]>,
): readonly Point[] {
  const part = standing[valve];
  return smoothLine(
    shut.map(([x, y], i): Point => {
      const [ox, oy] = entryAt(open, i);
      return [x + part * (ox - x), y + part * (oy - y)];
    }),
    4,
  );
}
