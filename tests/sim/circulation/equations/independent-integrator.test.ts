/** The house's fixed step against a general-purpose integrator from the package registry (odex: Gragg, Bulirsch and Stoer). */
import { Solver } from "odex";
import { expect, test } from "vitest";
import { referenceSet } from "../../../../src/sim/body/growth.ts";
import { record } from "../../../../src/sim/circulation/answer/recording.ts";
import { breathPattern, filling } from "../../../../src/sim/circulation/equations/breathing.ts";
import {
  atrialActivation,
  sinusCentre,
  systoleStretch,
  ventricularActivation,
} from "../../../../src/sim/circulation/equations/chamber.ts";
import { derivative } from "../../../../src/sim/circulation/equations/equations.ts";
import type { Forcing } from "../../../../src/sim/circulation/equations/forcing.ts";
import { networkOf } from "../../../../src/sim/circulation/network/circuit-network.ts";
import {
  COMPARTMENTS,
  SEMILUNAR_VALVE,
  STATES,
  type State,
  scratch,
  VOLUMES,
} from "../../../../src/sim/circulation/network/compartments.ts";
import { volumeControl } from "../../../../src/sim/circulation/regulation/volume-rule.ts";
import { findPeriodic } from "../../../../src/sim/circulation/search/periodic.ts";
import { pathwayLaw } from "../../../../src/sim/hydraulics/pathway-network.ts";
import type { CirculationRequest } from "../../../../src/sim/parameters/request.ts";
import { fromMmHg } from "../../../../src/sim/units.ts";
import { CHILD, request } from "../requests.ts";

/** A forcing of one entry, set for each moment: no table, no steps. */
function momentOf(asked: CirculationRequest, heartPeriod: number, period: number) {
  const stretch = systoleStretch(60 / heartPeriod / referenceSet(asked.stage, asked.body.bsa).heartRate, 1);
  const pattern = breathPattern(asked);
  const one = () => new Float64Array(1);
  const forcing: Forcing = {
    beats: 1,
    steps: 1,
    ventricle: one(),
    atrium: one(),
    intrathoracic: one(),
    abdominal: one(),
    alveolar: one(),
    muscle: one(),
    meanChest: 0,
    muscleShare: 1,
    beatAt: () => {},
  };
  const setTime = (time: number) => {
    const beat = (time / heartPeriod) % 1;
    const filled = filling((time / period) % 1);
    forcing.ventricle[0] = ventricularActivation(beat, stretch);
    forcing.atrium[0] = atrialActivation(beat, sinusCentre(stretch), stretch);
    forcing.intrathoracic[0] = fromMmHg(pattern.intrathoracic(filled));
    forcing.abdominal[0] = fromMmHg(pattern.abdominal(filled));
    forcing.alveolar[0] = fromMmHg(pattern.alveolar(filled));
  };
  return { forcing, setTime };
}

for (const [stage, set] of [
  ["extracardiac", { fenestrationDiameter: 4 }],
  ["two-ventricle", {}],
] as const)
  test(`an independent integrator agrees within 0.1 % on the averages of ${stage}`, () => {
    const asked = request(stage, CHILD, set, "fixed-volume");
    const network = networkOf(asked, pathwayLaw(asked));
    const found = findPeriodic(
      { request: asked, network, fineness: 1, adapted: undefined },
      volumeControl(asked, network),
    );
    const ours = record(found);
    const { forcing, setTime } = momentOf(asked, found.heartPeriod, ours.period);
    const kept = scratch();
    // Volumes in mL and flows in mL/s; behind them the running integrals of each compartment's pressure (Pa.s) and of outflow.
    const count = STATES + VOLUMES + 1;
    const right = (time: number, y: number[]): number[] => {
      setTime(time);
      const state = Float64Array.from({ length: STATES }, (_, i) => y[i]! * 1e-6) as State;
      derivative({ network, forcing }, 0, found.point, state, kept);
      return [...kept.rates.map((rate) => rate * 1e6), ...kept.pressures, kept.flows[SEMILUNAR_VALVE] * 1e6];
    };
    const solver = new Solver(count);
    solver.absoluteTolerance = 1e-5;
    solver.relativeTolerance = 1e-6;
    solver.maxSteps = 100_000;
    let y = [...found.point.subarray(0, STATES)].map((value) => value * 1e6);
    const cycles = 3;
    let integrals: number[] = [];
    for (let cycle = 0; cycle < cycles; cycle++) {
      const start = [...y, ...new Array<number>(VOLUMES + 1).fill(0)];
      const end = solver.solve(right, cycle * ours.period, start, (cycle + 1) * ours.period).y as number[];
      y = end.slice(0, STATES);
      integrals = end.slice(STATES);
    }
    COMPARTMENTS.forEach((name, i) => {
      const reference = integrals[i]! / ours.period;
      if (reference === 0) return;
      expect(Math.abs(ours.pressures[i]! / reference - 1), name).toBeLessThan(1e-3);
    });
    const outflow = integrals[VOLUMES]! / ours.period;
    expect(Math.abs((ours.flows[SEMILUNAR_VALVE] * 1e6) / outflow - 1)).toBeLessThan(1e-3);
  });
