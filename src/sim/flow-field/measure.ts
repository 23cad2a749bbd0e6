/** What is read from a flow solver at one moment, SI: flows and pressures at the openings, power, dissipation, kinetic energy. */

import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import { openingFlow, type SolverOpening } from "../flow-solver/openings.ts";
import { pressureOnPlane } from "../flow-solver/pressure-outlet.ts";
import { energyOf } from "./energy.ts";
import { flowUnit } from "./solver-units.ts";

/** One opening at one moment, SI. */
export interface OpeningMoment {
  /** m3/s into the blood ("round"); m2/s per depth with uniform depth */
  readonly flow: number;
  /** Pa, mean static on the plane */
  readonly pressure: number;
  /** W (W/m): total pressure carried in by the flow */
  readonly power: number;
  /** W (W/m): the part of it not carried by the mean static pressure: motion, and how pressure varies across the opening */
  readonly motion: number;
}

/** All openings and the whole plane at one moment, SI; per metre of depth when the depth is uniform. */
export interface Moment {
  readonly openings: readonly OpeningMoment[];
  /** W (W/m): walls, shear, drag and steps of depth */
  readonly dissipation: number;
  /** J (J/m) */
  readonly kinetic: number;
}

/**
 * Measures a solver's present moment, each time it is called. Pressures and powers are relative to the mean pressure of the openings named in
 * `from`: where all flows are given, the level of the pressure has no meaning, and would count what sound stores as a loss. Absolute when `from` is empty.
 * @param density kg/m3
 * @param viscosity Pa.s
 */
export function gauge(
  solver: FlowSolver,
  density: number,
  viscosity: number,
): (from?: readonly string[]) => Moment {
  const energies = energyOf(solver, density, viscosity);
  return (from = []) => {
    const zero = referencePressure(solver, density, from);
    return {
      openings: solver.openings.map((opening) => {
        const moment = measureOpening(solver, opening, density);
        return { ...moment, pressure: moment.pressure - zero, power: moment.power - zero * moment.flow };
      }),
      ...energies(),
    };
  };
}

/** Pa: mean pressure of the named openings now; 0 without names. `density` in kg/m3. */
export function referencePressure(solver: FlowSolver, density: number, names: readonly string[]): number {
  const named = solver.openings.filter(({ opening }) => names.includes(opening.name));
  const pressures = named.map((opening) => measureOpening(solver, opening, density).pressure);
  return pressures.reduce((sum, pressure) => sum + pressure / named.length, 0);
}

/** Means of the moments' flows, pressures, powers, dissipation and kinetic energy, in their own units. One moment at least. */
export function momentsMean(moments: readonly Moment[]): Moment {
  const mean = (of: (moment: Moment) => number) =>
    moments.reduce((sum, moment) => sum + of(moment) / moments.length, 0);
  return {
    openings: moments[0]!.openings.map((_, n) => ({
      flow: mean(({ openings }) => openings[n]!.flow),
      pressure: mean(({ openings }) => openings[n]!.pressure),
      power: mean(({ openings }) => openings[n]!.power),
      motion: mean(({ openings }) => openings[n]!.motion),
    })),
    dissipation: mean(({ dissipation }) => dissipation),
    kinetic: mean(({ kinetic }) => kinetic),
  };
}

function measureOpening(solver: FlowSolver, opening: SolverOpening, density: number): OpeningMoment {
  const { arrays } = solver;
  const { nx } = solver.mesh;
  const { u, v, p, westArea, southArea } = arrays;
  const { face, vertical, into, inside, insideBeyond } = opening.crossing;
  const outward = -openingFlow(opening, arrays) / opening.area;
  let open = 0;
  let pressure = 0;
  let power = 0;
  for (let n = 0; n < face.length; n++) {
    const k = face[n]!;
    const onPlane =
      opening.rule === "pressure"
        ? pressureOnPlane(opening.crossing, arrays, n)
        : p[inside[n]!]! - insideBeyond[n]! * opening.slope * outward;
    const area = vertical[n] ? southArea[k]! : westArea[k]!;
    const across = vertical[n] ? v[k]! : u[k]!;
    const aside = vertical[n]
      ? 0.25 * (u[k]! + u[k + 1]! + u[k - nx]! + u[k - nx + 1]!)
      : 0.25 * (v[k]! + v[k + nx]! + v[k - 1]! + v[k + nx - 1]!);
    open += area;
    pressure += area * onPlane;
    power += into[n]! * area * across * (onPlane + 0.5 * (across * across + aside * aside));
  }
  const mean = open > 0 ? pressure / open : 0;
  const flow = openingFlow(opening, arrays);
  return {
    flow: flow * flowUnit(solver),
    pressure: density * mean,
    power: density * power * flowUnit(solver),
    motion: density * (power - mean * flow) * flowUnit(solver),
  };
}
