/** Readings averaged over a repeat of the drive, refreshed as the field advances. */
import type { Lattice } from "../lattice/lattice.ts";
import { toMillilitre, toMilliwatt, toMmHg } from "../units.ts";
import type { FieldReadings, OpeningReading } from "./flow-field.ts";
import { type Moment, measure } from "./measure.ts";
import { flowShares, recirculatingArea } from "./pathlines.ts";

const SAMPLES_IN_PERIOD = 24;
/** Lines per opening and cells skipped when the paths are drawn anew; once in a period. */
const LINES = 60;
const STRIDE = 3;
/** Relative change of kinetic energy from one period to the next below which a field counts as settled. */
const SETTLED = 2e-3;

export interface Readings {
  stepsUntilSample(): number;
  sample(steps: number): void;
  period(seconds: number): void;
  timed(steps: number, wallSeconds: number): void;
  /** Pa: mean pressure of the openings that share what leaves, from which all pressures count */
  referencePressure(): number;
  now(): FieldReadings;
}

interface Mean {
  flow: number;
  pressure: number;
  power: number;
}

/** `lungSide`: openings from whose mean pressure all pressures count; none: absolute. `earlier` hands over what goes on across a reshaping: the pace. */
export function trackReadings(
  lattice: Lattice,
  density: number,
  viscosity: number,
  seconds: number,
  lungSide: readonly string[],
  earlier?: Readings,
): Readings {
  const { openings } = lattice;
  let length = Math.max(seconds, 1e-3);
  let due = 1;
  let taken: Moment[] = [];
  let since = lattice.time;
  let last: Moment[] = [measure(lattice, density, viscosity)];
  let lastKinetic = Number.NaN;
  let settled = false;
  let shares: FieldReadings["shares"] = {};
  let eddies = 0;
  let pace = earlier?.now().pace ?? 0;
  let rate = earlier?.now().cellUpdatesPerSecond ?? 0;

  const stepsUntilSample = () => Math.max(1, due);
  const plan = () => Math.max(1, Math.round(length / SAMPLES_IN_PERIOD / lattice.step));

  function closePeriod(): void {
    const kinetic = taken.reduce((sum, moment) => sum + moment.kinetic, 0) / taken.length;
    settled = Math.abs(kinetic - lastKinetic) <= SETTLED * kinetic;
    lastKinetic = kinetic;
    last = taken;
    taken = [];
    since = lattice.time;
    shares = flowShares(lattice, LINES);
    eddies = recirculatingArea(lattice, STRIDE);
  }

  return {
    stepsUntilSample,
    sample(steps) {
      due -= steps;
      if (due > 0) return;
      due = plan();
      taken.push(measure(lattice, density, viscosity));
      if (lattice.time - since >= length) closePeriod();
    },
    period(next) {
      length = Math.max(next, 1e-3);
    },
    timed(steps, wallSeconds) {
      if (wallSeconds <= 0) return;
      pace = (steps * lattice.step) / wallSeconds;
      rate = (steps * lattice.cells) / wallSeconds;
    },
    referencePressure: () => reference(lattice, averages(last, openings.length), lungSide),
    now() {
      const means = averages(last, openings.length);
      const zero = reference(lattice, means, lungSide);
      const dissipation = last.reduce((sum, moment) => sum + moment.dissipation, 0) / last.length;
      return {
        openings: openings.map(({ opening }, n) => ({
          name: opening.name,
          ...openingReading(lattice, means[n]!, zero, opening.width, density, viscosity),
        })),
        ...balance(means, dissipation),
        shares,
        recirculatingArea: eddies,
        settled,
        pace,
        cellUpdatesPerSecond: rate,
      };
    },
  };
}

function averages(moments: readonly Moment[], count: number): Mean[] {
  return Array.from({ length: count }, (_, n) => {
    const mean: Mean = { flow: 0, pressure: 0, power: 0 };
    for (const { openings } of moments) {
      mean.flow += openings[n]!.flow / moments.length;
      mean.pressure += openings[n]!.pressure / moments.length;
      mean.power += openings[n]!.power / moments.length;
    }
    return mean;
  });
}

function reference(lattice: Lattice, means: readonly Mean[], lungSide: readonly string[]): number {
  const given = means.filter((_, n) => lungSide.includes(lattice.openings[n]!.opening.name));
  return given.length === 0 ? 0 : given.reduce((sum, { pressure }) => sum + pressure, 0) / given.length;
}

/** Trade units of one opening's means; a total pressure is power over flow, so an opening without flow has none of its own. */
export function openingReading(
  lattice: Lattice,
  { flow, pressure, power }: Mean,
  zero: number,
  width: number,
  density: number,
  viscosity: number,
): Omit<OpeningReading, "name"> {
  const round = lattice.choice.depth === "round";
  const metres = width * 1e-3;
  const speed = Math.abs(flow) / (round ? (Math.PI / 4) * metres ** 2 : metres);
  const carries = Math.abs(power) > 0 && speed > 1e-9;
  return {
    flow: round ? toMillilitre(flow) : flow,
    pressure: toMmHg(pressure - zero),
    totalPressure: toMmHg((carries ? power / flow : pressure) - zero),
    reynolds: (density * speed * metres) / viscosity,
  };
}

/** `dissipation` W; the loss is the total pressure's power in minus out. */
export function balance(
  means: readonly Mean[],
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
