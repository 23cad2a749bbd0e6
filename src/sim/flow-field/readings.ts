/** Readings averaged over whole periods of the boundary conditions, updated as the field advances. */
import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import { toMillilitre, toMilliwatt, toMmHg } from "../units.ts";
import { trackEddies } from "./eddies.ts";
import type { FieldReadings, OpeningReading } from "./flow-field.ts";
import { type KeptMeans, type Means, trackMeans } from "./means.ts";
import { gauge, type Moment, momentsMean, type OpeningMoment } from "./measure.ts";
import { trackPassage } from "./parcel-passage.ts";
import { FEWEST, meanOf, type Period, settledPeriods, sharesOf } from "./periods.ts";
import { sampleClock } from "./sample-clock.ts";

/** A period is divided into ticks; parcels move at each of them. Moments with eddies, and maps, are sampled every so many ticks. */
const TICKS = 192;
const MOMENT_EVERY = 2;
const MEANS_EVERY = 4;

/** Collects moments of a solver and publishes their means. */
export interface Readings {
  stepsUntilSample(): number;
  /** Within so many steps: after how many each sample is due. */
  samplesWithin(steps: number): readonly number[];
  sample(steps: number): void;
  /** Restarts for boundary conditions of this period (s); `lungs`: openings whose mean pressure is the zero, absolute when empty. */
  begin(seconds: number, lungs: readonly string[]): void;
  timed(steps: number, wallSeconds: number): void;
  now(): FieldReadings;
  takeMeans: Means["take"];
  /** What the readings of another grid begin with. */
  kept(): Kept;
}

/** Readings of an earlier grid. `pace`: s of blood in a second; `rate`: cells in a second. */
export interface Kept {
  readonly pace: number;
  readonly rate: number;
  /** of the same plane */
  readonly same:
    | undefined
    | {
        /** shown until this grid's own are as good; undefined before the first period was complete */
        readonly stand: Stand | undefined;
        /** of that period until now */
        readonly begun: readonly Moment[];
        readonly means: KeptMeans | undefined;
      };
}

interface Stand {
  readonly mean: Period;
  readonly settled: boolean;
}

/**
 * `seconds`, `lungs` as for `begin`; density kg/m3, viscosity Pa.s.
 * @param earlier readings before other walls or another grid
 */
export function trackReadings(
  solver: FlowSolver,
  { density, viscosity }: { readonly density: number; readonly viscosity: number },
  seconds: number,
  lungs: readonly string[],
  earlier?: Kept,
): Readings {
  const { openings } = solver;
  const passage = trackPassage(solver);
  const means = trackMeans(solver, density, viscosity, earlier?.same?.means);
  const eddies = trackEddies(solver);
  const measure = gauge(solver, density, viscosity);
  const clock = sampleClock(solver, TICKS);
  let lungSide = lungs;
  let moved = solver.time;
  let moments: Moment[] = [];
  let periods: readonly Period[] = [];
  let settled = false;
  let mean: Period = {
    ...momentsMean([...(earlier?.same?.begun ?? []), measure(lungSide)]),
    eddies: 0,
    passed: {},
  };
  let stand = earlier?.same?.stand;
  let begun = earlier?.same?.begun ?? [];
  let { pace, rate } = earlier ?? { pace: 0, rate: 0 };
  clock.begin(seconds);

  function begin(seconds: number, lungs: readonly string[]): void {
    lungSide = lungs;
    clock.begin(seconds);
    moved = solver.time;
    moments = [];
    eddies.taken();
    periods = [];
    settled = false;
    stand = undefined;
    begun = [];
    means.begin();
  }

  function closePeriod(): void {
    const period = {
      ...momentsMean(moments),
      eddies: eddies.taken(),
      passed: passage.taken(),
    };
    ({ periods, settled } = settledPeriods([...periods, period], settled, passage.known()));
    mean = meanOf(settled ? periods : [period]);
    moments = [];
    if (settled || !stand?.settled || periods.length >= FEWEST) stand = undefined;
    means.close();
  }

  return {
    stepsUntilSample: () => clock.due,
    samplesWithin: clock.within,
    sample(steps) {
      if (!clock.passed(steps)) return;
      const { tick } = clock;
      passage.advance(solver.time - moved, clock.length);
      moved = solver.time;
      if (tick % MOMENT_EVERY === 0) {
        moments.push(measure(lungSide));
        eddies.sample();
        // Until the first period is complete, the mean of its part so far: inflow must be known at once.
        if (periods.length === 0) mean = { ...mean, ...momentsMean([...begun, ...moments]) };
      }
      if (tick % MEANS_EVERY === 0) means.sample(lungSide);
      if (tick === TICKS) closePeriod();
      clock.next();
    },
    begin,
    takeMeans: means.take,
    timed(steps, wallSeconds) {
      if (wallSeconds <= 0) return;
      pace = (steps * solver.step) / wallSeconds;
      rate = (steps * solver.cells) / wallSeconds;
    },
    kept: () => ({
      ...{ pace, rate },
      same: {
        stand: stand ?? (periods.length > 0 ? { mean, settled } : undefined),
        begun: periods.length > 0 ? [] : [...begun, ...moments],
        means: means.kept(),
      },
    }),
    now() {
      const shown = stand ?? { mean, settled };
      return {
        openings: openings.map(({ opening }, n) => ({
          name: opening.name,
          ...openingReading(solver, shown.mean.openings[n]!, opening.width, density, viscosity),
        })),
        ...balance(shown.mean.openings, shown.mean.dissipation),
        shares: sharesOf(shown.mean.passed),
        recirculatingArea: shown.mean.eddies,
        settled: shown.settled,
        pace,
        cellUpdatesPerSecond: rate,
      };
    },
  };
}

/**
 * One opening's means in clinical units (mL/s, mmHg). Total pressure: the mean static pressure plus the rest of the energy per volume of
 * flow. Weighing the static pressure by the flow in time as well would count what two streams that surge in turn lend each other. An opening
 * without flow has no kinetic part.
 * @param width mm
 * @param density kg/m3
 * @param viscosity Pa.s
 */
export function openingReading(
  solver: FlowSolver,
  { flow, pressure, motion }: OpeningMoment,
  width: number,
  density: number,
  viscosity: number,
): Omit<OpeningReading, "name"> {
  const round = solver.choice.depth === "round";
  const metres = width * 1e-3;
  const speed = Math.abs(flow) / (round ? (Math.PI / 4) * metres ** 2 : metres);
  const carries = Math.abs(motion) > 0 && speed > 1e-9;
  return {
    flow: round ? toMillilitre(flow) : flow,
    pressure: toMmHg(pressure),
    totalPressure: toMmHg(pressure + (carries ? motion / flow : 0)),
    reynolds: (density * speed * metres) / viscosity,
  };
}

/**
 * Powers in mW (mW/m with uniform depth), errors in %; the loss is the total pressure's power in minus out.
 * @param dissipation W (W/m)
 */
export function balance(
  means: readonly OpeningMoment[],
  dissipation: number,
): Pick<FieldReadings, "powerLoss" | "dissipation" | "auditPercent" | "massBalancePercent"> {
  const loss = means.reduce((sum, { power }) => sum + power, 0);
  const net = means.reduce((sum, { flow }) => sum + flow, 0);
  const inflow = means.reduce((sum, { flow }) => sum + Math.max(0, flow), 0);
  return {
    powerLoss: toMilliwatt(loss),
    dissipation: toMilliwatt(dissipation),
    auditPercent: Math.abs(loss) > 0 ? (100 * (loss - dissipation)) / Math.abs(loss) : 0,
    massBalancePercent: inflow > 0 ? (100 * net) / inflow : 0,
  };
}
