/** The stepper: classical Runge-Kutta of fourth order, fixed step, over one whole cycle, in memory allocated once. */

import * as compartment from "../network/compartments.ts";
import { type Point, type Scratch, type State, scratch } from "../network/compartments.ts";
import { derivative } from "./equations.ts";
import type { ClosedLoop } from "./forcing.ts";

const { RATE, STATES } = compartment;

/** Owns the memory of a run. */
export interface Stepper {
  /** the evaluation at the step's begin, valid within `visit` */
  readonly scratch: Scratch;
  /**
   * Moves `state` on by one cycle in place.
   * @param stepSize s
   * @param regulated holds the reflex factors in force; may be `state` itself
   * @param visit called at the begin of every step, before the state moves
   */
  advance(state: State, stepSize: number, regulated: Point, visit: (step: number) => void): void;
}

/** A stepper for this loop; it follows changes of the network's branches. */
export function stepperOf(loop: ClosedLoop): Stepper {
  const { forcing } = loop;
  const first = scratch();
  const second = scratch();
  const third = scratch();
  const fourth = scratch();
  const k1 = first.rates;
  const k2 = second.rates;
  const k3 = third.rates;
  const k4 = fourth.rates;
  const trial: State = compartment.vector(STATES);
  return {
    scratch: first,
    advance(state, stepSize, regulated, visit) {
      forcing.beatAt(regulated[RATE]);
      const steps = forcing.steps * forcing.beats;
      for (let step = 0; step < steps; step++) {
        const half = 2 * step;
        derivative(loop, half, regulated, state, first);
        visit(step);
        ahead(trial, state, k1, 0.5 * stepSize);
        derivative(loop, half + 1, regulated, trial, second);
        ahead(trial, state, k2, 0.5 * stepSize);
        derivative(loop, half + 1, regulated, trial, third);
        ahead(trial, state, k3, stepSize);
        derivative(loop, half + 2, regulated, trial, fourth);
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
