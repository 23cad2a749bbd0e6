/** Ways of water through the tissue: lines pulled taut from a capillary's cleft to a door of a lymph vessel, or to the tissue's edge, and pushed off the cells and vessels between. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { type Curve, curve, placeOn, type Spot } from "../drawing/curve-drawing.ts";
import { doorOf } from "./paint-lymph.ts";
import { apart } from "./tissue-cells.ts";
import { CAPILLARY, CLEFTS, LUMEN, LYMPH_HALF, type TissuePlan, WALL, WIDTH } from "./tissue-plan.ts";
import { beside } from "./tube.ts";

/** Plane units from one disc of a vessel to the next. */
const DISCS = 40;
/** Plane units that a way keeps off cells and vessels. */
const CLEAR = 13;
/** Points of a way, rounds of pulling and pushing, and plane units around it in which things may be in its way. */
const POINTS = 36;
const ROUNDS = 60;
const AROUND = 160;
/** Swelling from one set of ways to the next; between two, ways lie between. */
const STEP = 0.03;

/** What is in the way: an ellipse about its middle, with air around it, its length along a unit vector. */
interface Obstacle {
  readonly at: Spot;
  readonly half: Spot;
  readonly along: Spot;
}

const obstacle = (at: Spot, [a, b]: Spot, turn = 0): Obstacle => ({
  at,
  half: [a + CLEAR, b + CLEAR],
  along: [Math.cos(turn), Math.sin(turn)],
});

const known = new WeakMap<TissuePlan, Map<string, Curve>>();

function lineOf(plan: TissuePlan, name: string, build: () => Curve): Curve {
  const lines = known.get(plan) ?? new Map<string, Curve>();
  known.set(plan, lines);
  const line = lines.get(name) ?? build();
  lines.set(name, line);
  return line;
}

/** Outside a cleft in the capillary's wall, beyond the arrow through it. */
function outside(cleft: number): Spot {
  const { at, side } = entryAt(CLEFTS, cleft);
  return beside(CAPILLARY, at, side * (LUMEN + WALL + 34));
}

/** Plane units beyond the picture's borders by which water from above the capillary goes round it. */
const ROUND = 30;
/** Plane units down at which it goes there, one way after the other, */
const ABOVE = [84, 96, 78, 90] as const;
/** and at which it comes in again. */
const ENTERS = 300;

/** A place on one of a family of ways at a tissue's size. */
function between(
  plan: TissuePlan,
  name: string,
  size: number,
  share: number,
  build: (size: number) => Curve,
) {
  const step = Math.floor((size - 1) / STEP);
  const [a, b] = [step, step + 1].map((each) => {
    const out = new Float64Array(4);
    placeOn(
      lineOf(plan, `${name} ${each}`, () => build(1 + each * STEP)),
      share,
      out,
    );
    return out;
  }) as [Float64Array, Float64Array];
  const w = (size - 1) / STEP - step;
  const mixed = (i: number) => entryAt(a, i) + (entryAt(b, i) - entryAt(a, i)) * w;
  return [mixed(0), mixed(1)] as const;
}

/** @param door as of {@link doorOf} @param share of the way to the vessel's inside */
export const toDoor = (
  plan: TissuePlan,
  { cleft, vessel, door }: { readonly cleft: number; readonly vessel: number; readonly door: number },
  size: number,
  share: number,
): Spot =>
  between(plan, `${cleft} ${vessel} ${door}`, size, share, (swollen) => {
    const { line, half } = entryAt(plan.initial, vessel);
    const { side, through } = doorOf(entryAt(plan.initial, vessel), door);
    // Past the shoulder of its blind end.
    const shoulder = beside(line, 0.02, side * (half + 40));
    const [outer, ...inward] = through as [Spot, ...Spot[]];
    const obstacles = obstaclesIn(plan, swollen);
    const out = outside(cleft);
    const isAbove = entryAt(CLEFTS, cleft).side < 0;
    const border = entryAt(line.x, 0) > WIDTH / 2 ? WIDTH + ROUND : -ROUND;
    const high = entryAt(ABOVE, cleft % ABOVE.length);
    const round: readonly Spot[] = isAbove
      ? taut([out, [out[0] + (border > 0 ? 40 : -40), high], [border, high]], obstacles)
      : [];
    const from: Spot = isAbove ? [border, plan.down(ENTERS)] : out;
    return curve([...round, ...taut([from, shoulder, outer], obstacles), ...inward]);
  });

/** Plane units across: on the right of all lymph vessels. */
const PAST_LYMPH = 958;

/** @param gap of the cavity's lining */
export const toGap = (
  plan: TissuePlan,
  { cleft, gap }: { readonly cleft: number; readonly gap: number },
  size: number,
  share: number,
): Spot =>
  between(plan, `${cleft} | ${gap}`, size, share, (swollen) => {
    const { lining, gaps, top } = plan.cavity;
    const end = beside(lining, entryAt(gaps, gap), 0);
    const past: Spot[] = [
      [PAST_LYMPH, plan.down(330)],
      [PAST_LYMPH, plan.down(600)],
    ];
    const above: Spot = [end[0], top - 50];
    return curve([...taut([outside(cleft), ...past, above], obstaclesIn(plan, swollen)), end]);
  });

/** Cells where they lie in a tissue of this size, and vessels as rows of discs. */
function obstaclesIn({ cells, initial, buds, lymph }: TissuePlan, size: number): readonly Obstacle[] {
  const discs = [
    ...[...initial, ...buds].map(({ line, half }) => [line, half] as const),
    [lymph, LYMPH_HALF] as const,
  ].flatMap(([line, half]) => {
    const count = Math.ceil(line.length / DISCS);
    // The blind end is round about a place that lies its half width on.
    const first = half / line.length;
    return Array.from({ length: count }, (_, i) => {
      const part = first + (1 - first) * (i / (count - 1));
      return obstacle(beside(line, part, 0), [half, half]);
    });
  });
  return [...discs, ...cells.map(({ at, half, turn }) => obstacle(apart(at, size), half, turn))];
}

/** From the first spot by the others to the last. */
function taut(by: readonly Spot[], obstacles: readonly Obstacle[]): readonly Spot[] {
  const [xs, ys] = [0, 1].map((i) => by.map((spot) => entryAt(spot, i))) as [number[], number[]];
  const near = obstacles.filter(
    ({ at: [x, y] }) =>
      x > Math.min(...xs) - AROUND &&
      x < Math.max(...xs) + AROUND &&
      y > Math.min(...ys) - AROUND &&
      y < Math.max(...ys) + AROUND,
  );
  const way = curve(by);
  let points = Array.from({ length: POINTS }, (_, i) => beside(way, i / (POINTS - 1), 0));
  for (let round = 0; round < ROUNDS; round++)
    points = points.map((spot, i) => {
      const [before, after] = [points[i - 1], points[i + 1]];
      if (!before || !after) return spot;
      const pulled: Spot = [
        (spot[0] + (before[0] + after[0]) / 2) / 2,
        (spot[1] + (before[1] + after[1]) / 2) / 2,
      ];
      return near.reduce(pushed, pulled);
    });
  return [...points.slice(0, -1).filter((_, i) => i % 2 === 0), lastOf(points)];
}

/** Out of the obstacle, if it was within it. */
function pushed(spot: Spot, { at, half: [a, b], along: [c, s] }: Obstacle): Spot {
  const [dx, dy] = [spot[0] - at[0], spot[1] - at[1]];
  if (Math.abs(dx) > a || Math.abs(dy) > a) return spot;
  const depth = Math.hypot((dx * c + dy * s) / a, (dy * c - dx * s) / b);
  return depth >= 1 || depth === 0 ? spot : [at[0] + dx / depth, at[1] + dy / depth];
}
