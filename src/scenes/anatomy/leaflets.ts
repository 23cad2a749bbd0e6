/** Where the valves' leaflets stand between shut and open, in the ventricle's own lengths: x along its axis, y across its base. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { type Hanging, MITRAL } from "./hanging-valve.ts";
import { ATRIOVENTRICULAR, inRoot, PAPILLARY, SEMILUNAR } from "./heart-shape.ts";
import { smoothLine } from "./placing.ts";

/** One of the outflow's three. */
export interface Cusp {
  /** its middle line from the hinge to the free edge; of the one behind, whole: its free edge from one commissure to the other */
  readonly shut: readonly Point[];
  readonly open: readonly Point[];
  /** where it hangs from the root's wall, back to its free edge's beginning or down to its hinge */
  readonly hangs: readonly Point[];
  readonly whole?: true;
}

const half = (ATRIOVENTRICULAR.to - ATRIOVENTRICULAR.from) / 2;
/** The inlet's, which leaves room for the fat at its ring's outer end. */
export const INLET: Hanging = {
  ...MITRAL,
  at: (u, v) => [0.4 + half * v + 0.7 * u, ATRIOVENTRICULAR.from + half * (1 + u)],
  heads: [entryAt(PAPILLARY, 0), entryAt(PAPILLARY, 1)],
};

const inRoots = (...points: readonly Point[]) => points.map((point) => inRoot(...point));
/** The free edge of the cusp behind. */
const behind = (v: number, middle: number) =>
  inRoots([-6.1, 8.6], [-2.8, v], [0, middle], [2.8, v], [6.1, 8.6]);

const cusp = (side: 1 | -1): Cusp => {
  const line = (...points: readonly Point[]) => inRoots(...points.map(([u, v]): Point => [side * u, v]));
  const out = (SEMILUNAR.to - SEMILUNAR.from) / 2 + 0.4;
  return {
    shut: line([out, 0.4], [4.6, -0.5], [2.2, 0.4], [0.62, 2.8], [0.5, 6.4]),
    open: line([out, 0.4], [6.5, 2.4], [6.1, 4.6], [5.6, 6.8], [5.5, 8.8]),
    hangs: line([6.1, 8.6], [7.1, 6.4], [7.3, 3.4], [out, 0.4]),
  };
};

/** Two are cut and one is whole behind them. */
export const CUSPS: readonly Cusp[] = [
  {
    shut: behind(7, 6.2),
    open: behind(7.7, 7.2),
    hangs: inRoots([6.1, 8.6], [5.8, 4.2], [3.5, 1.1], [0, 0.2], [-3.5, 1.1], [-5.8, 4.2], [-6.1, 8.6]),
    whole: true,
  },
  cusp(-1),
  cusp(1),
];

/** Its middle line. @param part 0 shut .. 1 open */
export const cuspLine = ({ shut, open }: Cusp, part: number): readonly Point[] =>
  smoothLine(
    shut.map(([x, y], i): Point => {
      const [ox, oy] = entryAt(open, i);
      return [x + part * (ox - x), y + part * (oy - y)];
    }),
    4,
  );
