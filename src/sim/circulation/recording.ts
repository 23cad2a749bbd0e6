/** One more repeat of a found periodic state, watched: means, samples, extremes, powers. All SI. */
import * as at from "./compartments.ts";
import { type EnergyBudget, energyBudget, watchPowers } from "./energy-budget.ts";
import { SAMPLES_PER_BEAT } from "./forcing.ts";
import type { Periodic } from "./periodic.ts";

export interface Recording {
  /** means over the cycle: Pa by compartment, m3/s by flow of FLOWS, m3 and m3/s by state */
  readonly pressures: Float64Array;
  readonly flows: Float64Array;
  readonly states: Float64Array;
  /** m3/s: mean of what passes the fenestration forward, and backward (positive) */
  readonly fenestrationForward: number;
  readonly fenestrationBackward: number;
  /** [samples of the cycle, begin included, end not] of each compartment, flow and state */
  readonly sampled: {
    readonly pressures: readonly Float64Array[];
    readonly flows: readonly Float64Array[];
    readonly states: readonly Float64Array[];
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
const { AORTA, JUNCTION, RIGHT_VENTRICLE, STATES, VENTRICLE, VOLUMES } = at;
const FLOWS = at.FLOWS.length;
const FENESTRATION = at.FLOW_INDEX.fenestration;

export function record(periodic: Periodic): Recording {
  const { forcing, stepper, point, heartPeriod, network } = periodic;
  const steps = forcing.steps * forcing.beats;
  const every = forcing.steps / SAMPLES_PER_BEAT;
  const samples = SAMPLES_PER_BEAT * forcing.beats;
  const pressures = new Float64Array(VOLUMES);
  const flows = new Float64Array(FLOWS);
  const states = new Float64Array(STATES);
  const columns = (count: number) => Array.from({ length: count }, () => new Float64Array(samples));
  const sampled = {
    pressures: columns(VOLUMES),
    flows: columns(FLOWS),
    states: columns(STATES),
  };
  const state = point.slice();
  const { scratch, rates } = stepper;
  const powers = watchPowers(network, forcing);
  const aorta = extremes();
  const rightVentricle = extremes();
  const pulmonaryArtery = extremes();
  const ventricle = extremes();
  let forward = 0;
  let backward = 0;
  let endDiastolicPressure = 0;
  let endDiastolicVolume = 0;

  stepper.advance(state, heartPeriod / forcing.steps, point[STATES + 1]!, (step) => {
    for (let i = 0; i < VOLUMES; i++) pressures[i] = pressures[i]! + scratch.pressures[i]!;
    for (let i = 0; i < FLOWS; i++) flows[i] = flows[i]! + scratch.flows[i]!;
    for (let i = 0; i < STATES; i++) states[i] = states[i]! + state[i]!;
    const leak = scratch.flows[FENESTRATION]!;
    if (leak > 0) forward += leak;
    else backward -= leak;
    powers.add(step, state, rates, scratch);
    aorta.see(scratch.pressures[AORTA]!);
    rightVentricle.see(scratch.pressures[RIGHT_VENTRICLE]!);
    pulmonaryArtery.see(scratch.pressures[JUNCTION]!);
    ventricle.see(state[VENTRICLE]!);
    if (step % forcing.steps === 0) {
      endDiastolicPressure += scratch.pressures[VENTRICLE]!;
      endDiastolicVolume += state[VENTRICLE]!;
    }
    if ((step + 1) % forcing.steps === 0)
      for (const each of [aorta, rightVentricle, pulmonaryArtery, ventricle]) each.closeBeat();
    if (step % every === 0) {
      const sample = step / every;
      for (let i = 0; i < VOLUMES; i++) sampled.pressures[i]![sample] = scratch.pressures[i]!;
      for (let i = 0; i < FLOWS; i++) sampled.flows[i]![sample] = scratch.flows[i]!;
      for (let i = 0; i < STATES; i++) sampled.states[i]![sample] = state[i]!;
    }
  });

  for (const means of [pressures, flows, states])
    for (let i = 0; i < means.length; i++) means[i] = means[i]! / steps;
  return {
    pressures,
    flows,
    states,
    fenestrationForward: forward / steps,
    fenestrationBackward: backward / steps,
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
