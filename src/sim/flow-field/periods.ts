/** Periods of the boundary conditions: when a flow counts as settled, and over which periods its readings are means. */
import { type Moment, momentsMean } from "./measure.ts";
import { addPassed, type Passed } from "./parcel-passage.ts";

/** Means over one period of the boundary conditions. */
export interface Period extends Moment {
  /** fraction of the blood's area */
  readonly eddies: number;
  readonly passed: Passed;
}

/** Most periods that readings are means over. */
const LONGEST = 12;
/** Relative change of kinetic energy, and of the power lost, from one period to the next below which a flow repeats. */
const CYCLES = { kinetic: 2e-3, loss: 1e-2 };
/** For flows that never repeat: fewest periods (the first left out) whose two halves must have means that agree this well. */
export const FEWEST = 7;
const RUN_IN = 1;
const WANDERS = { kinetic: 2e-2, loss: 5e-2 };

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const lossOf = ({ openings }: Moment): number => sum(openings.map(({ power }) => power));

function agree(a: Moment, b: Moment, within: typeof CYCLES): boolean {
  const near = (x: number, y: number, part: number) => Math.abs(y - x) <= part * Math.abs(y);
  return near(a.kinetic, b.kinetic, within.kinetic) && near(lossOf(a), lossOf(b), within.loss);
}

/**
 * Settled: all shares are known (`known`), and the last two periods agree, or both halves of a longer run do (an unsteady flow never
 * repeats exactly). It then stays settled, and the readings become means over up to {@link LONGEST} periods.
 */
export function settledPeriods(
  all: readonly Period[],
  already: boolean,
  known: boolean,
): { periods: readonly Period[]; settled: boolean } {
  const periods = all.slice(-LONGEST);
  if (already || !known) return { periods, settled: already };
  const last = periods.slice(-2);
  if (last.length === 2 && agree(last[0]!, last[1]!, CYCLES)) return { periods: last, settled: true };
  const later = periods.slice(RUN_IN);
  const half = later.length >> 1;
  const settled =
    periods.length >= FEWEST && agree(meanOf(later.slice(0, half)), meanOf(later.slice(half)), WANDERS);
  return { periods: settled ? later : periods, settled };
}

/** Means of the periods in their own units (SI, fractions); parcels are summed. One period at least. */
export function meanOf(periods: readonly Period[]): Period {
  const passed: Passed = {};
  for (const period of periods)
    for (const [from, to] of Object.entries(period.passed))
      for (const [name, count] of Object.entries(to)) addPassed(passed, from, name, count);
  return {
    ...momentsMean(periods),
    eddies: sum(periods.map(({ eddies }) => eddies)) / periods.length,
    passed,
  };
}

/** from opening -> to opening -> fraction of what passed */
export function sharesOf(passed: Passed): Record<string, Record<string, number>> {
  return Object.fromEntries(
    Object.entries(passed).map(([from, to]) => {
      const all = sum(Object.values(to));
      return [from, Object.fromEntries(Object.entries(to).map(([name, count]) => [name, count / all]))];
    }),
  );
}
