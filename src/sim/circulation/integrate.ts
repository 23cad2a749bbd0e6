/** The stepper: classical Runge-Kutta of fourth order, fixed step, over one whole repeat, in memory allocated once. */

import type { Network } from "./circuit-network.ts";
import * as compartment from "./compartments.ts";
import { type Point, type Scratch, type State, scratch } from "./compartments.ts";
import { derivative } from "./equations.ts";
import type { Forcing } from "./forcing.ts";

const { RATE, STATES } = compartment;

export interface Stepper {
  readonly scratch: Scratch;
  /** [STATES] d(state)/dt at the step's begin, valid within `visit` */
  readonly rates: State;
  /**
   * Moves `state` on by one cycle in place.
   * @param stepSize s
   * @param regulated holds the reflex factors in force; may be `state` itself
   * @param visit called at the begin of every step, before the state moves
   */
  advance(state: State, stepSize: number, regulated: Point, visit: (step: number) => void): void;
}

export function stepperOf(network: Network, forcing: Forcing): Stepper {
  const k1: State = compartment.vector(STATES);
  const k2: State = compartment.vector(STATES);
  const k3: State = compartment.vector(STATES);
  const k4: State = compartment.vector(STATES);
  const trial: State = compartment.vector(STATES);
  const kept = scratch();
  const passing = scratch();
  return {
    scratch: kept,
    rates: k1,
    advance(state, stepSize, regulated, visit) {
      forcing.beatAt(regulated[RATE]);
      const steps = forcing.steps * forcing.beats;
      for (let step = 0; step < steps; step++) {
        const half = 2 * step;
        derivative(network, forcing, half, regulated, state, k1, kept);
        visit(step);
        ahead(trial, state, k1, 0.5 * stepSize);
        derivative(network, forcing, half + 1, regulated, trial, k2, passing);
        ahead(trial, state, k2, 0.5 * stepSize);
        derivative(network, forcing, half + 1, regulated, trial, k3, passing);
        ahead(trial, state, k3, stepSize);
        derivative(network, forcing, half + 2, regulated, trial, k4, passing);
        for (let i = 0; i < STATES; i++)
          state[i] = of(state, i) + (stepSize / 6) * (of(k1, i) + 2 * (of(k2, i) + of(k3, i)) + of(k4, i));
      }
    },
  };
}

const of = (values: State, i: number): number => values[i] ?? 0;

function ahead(trial: State, state: State, rates: State, time: number): void {
  for (let i = 0; i < STATES; i++) trial[i] = of(state, i) + time * of(rates, i);
}
