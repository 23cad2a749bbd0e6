/** One more cycle of a found periodic state, watched: means, samples, extremes, powers. All SI. */

import { type EnergyBudget, energyBudget, watchPowers } from "../equations/energy-budget.ts";
import { SAMPLES_PER_BEAT } from "../equations/forcing.ts";
import * as at from "../network/compartments.ts";
import type { Periodic } from "../search/periodic.ts";

/** One column of samples for each named place. */
type Sampled<Place extends number> = readonly Float64Array[] & {
  readonly [At in Place]: Float64Array;
};

/** Means, samples and extremes of one cycle. */
export interface Recording {
  /** means over the cycle: Pa by compartment, m3/s by flow of FLOWS, m3 and m3/s by state */
  readonly pressures: at.ByCompartment;
  readonly flows: at.Flows;
  readonly states: at.State;
  /** m3/s: mean of what passes the fenestration forward, and backward (positive) */
  readonly fenestrationForward: number;
  readonly fenestrationBackward: number;
  /** m3/s: mean of what the valves leak backward (positive) */
  readonly inletBackward: number;
  readonly outletBackward: number;
  /** [samples of the cycle, begin included, end not] of each compartment, flow and state */
  readonly sampled: {
    readonly pressures: Sampled<at.Compartment>;
    readonly flows: Sampled<at.Flow>;
    readonly states: Sampled<at.Compartment | at.InertFlow>;
  };
  /** means over the beats of each beat's extremes: Pa, m3 */
  readonly aortaHighest: number;
  readonly aortaLowest: number;
  readonly rightVentricleHighest: number;
  readonly pulmonaryArteryHighest: number;
  readonly pulmonaryArteryLowest: number;
  readonly ventricleSmallest: number;
  /** means over the beats at the onset of contraction: Pa, m3 */
  readonly endDiastolicPressure: number;
  readonly endDiastolicVolume: number;
  readonly energy: EnergyBudget;
  /** s */
  readonly period: number;
}

// Own copies, as in equations.ts: the visit below runs once a step.
const {
  AORTA,
  FENESTRATION,
  ATRIOVENTRICULAR_VALVE,
  JUNCTION,
  SEMILUNAR_VALVE,
  RIGHT_VENTRICLE,
  STATES,
  VENTRICLE,
  VOLUMES,
} = at;
const FLOWS = at.FLOWS.length;

/** Runs one more cycle of the state and records it; the state itself stays as it is. */
export function record(periodic: Periodic): Recording {
  const { forcing, stepper, point, heartPeriod } = periodic;
  const steps = forcing.steps * forcing.beats;
  const every = forcing.steps / SAMPLES_PER_BEAT;
  const samples = SAMPLES_PER_BEAT * forcing.beats;
  const pressures: at.ByCompartment = at.vector(VOLUMES);
  const flows: at.Flows = at.vector(FLOWS);
  const states: at.State = at.vector(STATES);
  const columns = <Place extends number>(count: number) =>
    Array.from({ length: count }, () => new Float64Array(samples)) as unknown as Sampled<Place>;
  const sampled: Recording["sampled"] = {
    pressures: columns(VOLUMES),
    flows: columns(FLOWS),
    states: columns(STATES),
  };
  const state = point.slice() as at.Point;
  const { scratch } = stepper;
  const powers = watchPowers(periodic);
  const aorta = extremes();
  const rightVentricle = extremes();
  const pulmonaryArtery = extremes();
  const ventricle = extremes();
  let forward = 0;
  let backward = 0;
  let inletBackward = 0;
  let outletBackward = 0;
  let endDiastolicPressure = 0;
  let endDiastolicVolume = 0;

  const inert = state.subarray(0, STATES);
  stepper.advance(state, heartPeriod / forcing.steps, point, (step) => {
    add(pressures, scratch.pressures);
    add(flows, scratch.flows);
    add(states, inert);
    inletBackward += Math.max(0, -scratch.flows[ATRIOVENTRICULAR_VALVE]);
    outletBackward += Math.max(0, -scratch.flows[SEMILUNAR_VALVE]);
    const leak = scratch.flows[FENESTRATION];
    if (leak > 0) forward += leak;
    else backward -= leak;
    powers.add(step, state, scratch);
    aorta.see(scratch.pressures[AORTA]);
    rightVentricle.see(scratch.pressures[RIGHT_VENTRICLE]);
    pulmonaryArtery.see(scratch.pressures[JUNCTION]);
    ventricle.see(state[VENTRICLE]);
    if (step % forcing.steps === 0) {
      endDiastolicPressure += scratch.pressures[VENTRICLE];
      endDiastolicVolume += state[VENTRICLE];
    }
    if ((step + 1) % forcing.steps === 0)
      for (const each of [aorta, rightVentricle, pulmonaryArtery, ventricle]) each.closeBeat();
    if (step % every === 0) {
      const sample = step / every;
      keep(sampled.pressures, sample, scratch.pressures);
      keep(sampled.flows, sample, scratch.flows);
      keep(sampled.states, sample, inert);
    }
  });

  for (const means of [pressures, flows, states])
    means.forEach((sum, i) => {
      means[i] = sum / steps;
    });
  return {
    pressures,
    flows,
    states,
    fenestrationForward: forward / steps,
    fenestrationBackward: backward / steps,
    inletBackward: inletBackward / steps,
    outletBackward: outletBackward / steps,
    sampled,
    aortaHighest: aorta.highest(),
    aortaLowest: aorta.lowest(),
    rightVentricleHighest: rightVentricle.highest(),
    pulmonaryArteryHighest: pulmonaryArtery.highest(),
    pulmonaryArteryLowest: pulmonaryArtery.lowest(),
    ventricleSmallest: ventricle.lowest(),
    endDiastolicPressure: endDiastolicPressure / forcing.beats,
    endDiastolicVolume: endDiastolicVolume / forcing.beats,
    energy: energyBudget(powers, steps, periodic.returns),
    period: heartPeriod * forcing.beats,
  };
}

function add(sums: Float64Array, values: Float64Array): void {
  for (let i = 0; i < sums.length; i++) sums[i] = (sums[i] ?? 0) + (values[i] ?? 0);
}

function keep(columns: readonly Float64Array[], sample: number, values: Float64Array): void {
  columns.forEach((column, i) => {
    column[sample] = values[i] ?? 0;
  });
}

/** Means over beats of each beat's greatest and least value. */
function extremes() {
  let greatest = Number.NEGATIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  let greatestSum = 0;
  let leastSum = 0;
  let beats = 0;
  return {
    see(value: number) {
      if (value > greatest) greatest = value;
      if (value < least) least = value;
    },
    closeBeat() {
      greatestSum += greatest;
      leastSum += least;
      beats++;
      greatest = Number.NEGATIVE_INFINITY;
      least = Number.POSITIVE_INFINITY;
    },
    highest: () => greatestSum / beats,
    lowest: () => leastSum / beats,
  };
}
