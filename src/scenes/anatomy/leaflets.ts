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
  /** where the far half of one that is cut hangs from the wall, from its commissure down to its hinge */
  readonly beside?: readonly Point[];
}

const { from, to } = ATRIOVENTRICULAR;
/** Where the inlet's leaflets meet: the one beside the outlet is the longer one. */
const MEET = from + 0.42 * (to - from);

/** Behind the cut the inlet's ring is seen from its ventricle's side: its two leaflets' commissure there. */
const COMMISSURE: Point = [-2.2, MEET - 0.6];

const inRoots = (...points: readonly Point[]) => points.map((point) => inRoot(...point));
/** The free edge of the cusp behind. */
const behind = (v: number, middle: number) =>
  inRoots([-6.1, 8.6], [-2.8, v], [0, middle], [2.8, v], [6.1, 8.6]);

const cusp = (side: 1 | -1): Leaflet => {
  const line = (...points: readonly Point[]) => inRoots(...points.map(([u, v]): Point => [side * u, v]));
  const half = (SEMILUNAR.to - SEMILUNAR.from) / 2 + 0.4;
  return {
    valve: "semilunar",
    shut: line([half, 0.4], [4.6, -0.5], [2.2, 0.4], [0.62, 2.8], [0.5, 6.4]),
    open: line([half, 0.4], [6.5, 2.4], [6.1, 4.6], [5.6, 6.8], [5.5, 8.8]),
    beside: line([6.1, 8.6], [7.1, 6.4], [7.3, 3.4], [half, 0.4]),
  };
};

/** The inlet's bulge towards the atrium where they are shut and hang into the ventricle as a funnel; of the outflow's three cusps two are cut and one is whole behind them. */
export const LEAFLETS: readonly Leaflet[] = [
  {
    valve: "semilunar",
    shut: behind(7, 6.2),
    open: behind(7.7, 7.2),
    hangs: inRoots([6.1, 8.6], [5.8, 4.2], [3.5, 1.1], [0, 0.2], [-3.5, 1.1], [-5.8, 4.2], [-6.1, 8.6]),
  },
  {
    valve: "atrioventricular",
    shut: [
      [-0.4, from],
      [-0.2, from + 3],
      [1.6, MEET - 1.6],
      [4, MEET - 0.4],
      [6.8, MEET - 0.3],
    ],
    open: [
      [-0.4, from],
      [2.4, from + 0.7],
      [5, from + 1.5],
      [7.4, from + 2],
      [9.4, from + 2.2],
    ],
    beside: [COMMISSURE, [-2.4, from + 3.4], [-0.4, from]],
  },
  {
    valve: "atrioventricular",
    shut: [
      [1, to + 1.6],
      [-0.3, to - 4.2],
      [1.3, MEET + 2.2],
      [4, MEET + 0.5],
      [6.8, MEET + 0.3],
    ],
    open: [
      [1, to + 1.6],
      [3.6, to - 0.2],
      [7.2, to - 0.9],
      [10.6, to - 2],
      [13.4, to - 3],
    ],
    beside: [COMMISSURE, [-2.2, to - 5.4], [-0.6, to - 1.4], [1, to + 1.6]],
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
