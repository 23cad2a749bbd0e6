/** What is read from a flow solver at one moment, SI: flows and pressures at the openings, power, dissipation, kinetic energy. */

import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import { openingFlow, type SolverOpening } from "../flow-solver/openings.ts";
import { pressureOnPlane } from "../flow-solver/pressure-outlet.ts";

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

/** m of depth for one unit of the depth array: mm when round; one metre when uniform, so that answers are per metre. */
const depthUnit = (solver: FlowSolver): number => (solver.choice.depth === "round" ? 1e-3 : 1);

/** Flow in SI (m3/s; m2/s with uniform depth) for one solver unit of flow (m/s times cells times depth). */
export const flowUnit = (solver: FlowSolver): number => solver.mesh.dx * 1e-3 * depthUnit(solver);

/**
 * The present moment. Pressures and powers are relative to the mean pressure of the openings named in `from`: where all flows are given, the
 * level of the pressure has no meaning, and would count what sound stores as a loss. Absolute when `from` is empty.
 * @param density kg/m3
 * @param viscosity Pa.s
 */
export function measure(
  solver: FlowSolver,
  density: number,
  viscosity: number,
  from: readonly string[] = [],
): Moment {
  const zero = referencePressure(solver, density, from);
  return {
    openings: solver.openings.map((opening) => {
      const moment = measureOpening(solver, opening, density);
      return { ...moment, pressure: moment.pressure - zero, power: moment.power - zero * moment.flow };
    }),
    dissipation: dissipation(solver, density, viscosity),
    kinetic: kineticEnergy(solver, density),
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

/** Sum over the solver's own links, friction and step losses: what the discrete flow loses, the damping of unresolved waves left out. */
function dissipation(solver: FlowSolver, density: number, viscosity: number): number {
  const { mesh, arrays: a } = solver;
  const { nx, ny, beyond } = mesh;
  const { u, v } = a;
  let sheared = 0;
  let rubbed = 0;
  let stepped = 0;
  for (let j = 2; j < ny - 2; j++)
    for (let i = 2; i < nx - 2; i++) {
      const k = j * nx + i;
      const own = beyond[k]! < 0 ? 1 : 0;
      const left = beyond[k - 1]! < 0 ? 1 : 0;
      const below = beyond[k - nx]! < 0 ? 1 : 0;
      const corner = 0.25 * (own + left + below + (beyond[k - nx - 1]! < 0 ? 1 : 0));
      if (own > 0)
        sheared +=
          a.uThroughCell[k]! * (u[k + 1]! - u[k]!) ** 2 + a.vThroughCell[k]! * (v[k + nx]! - v[k]!) ** 2;
      if (corner > 0)
        sheared +=
          corner *
          (a.uThroughCorner[k]! * (u[k]! - u[k - nx]!) ** 2 +
            a.vThroughCorner[k]! * (v[k]! - v[k - 1]!) ** 2);
      if (a.uInverse[k]! > 0) {
        const part = (0.5 * (own + left)) / a.uInverse[k]!;
        rubbed += part * a.uFriction[k]! * u[k]! ** 2;
        stepped += part * Math.max(0, a.uStep[k]! * u[k]!) * u[k]! ** 2;
      }
      if (a.vInverse[k]! > 0) {
        const part = (0.5 * (own + below)) / a.vInverse[k]!;
        rubbed += part * a.vFriction[k]! * v[k]! ** 2;
        stepped += part * Math.max(0, a.vStep[k]! * v[k]!) * v[k]! ** 2;
      }
    }
  return depthUnit(solver) * (viscosity * (sheared + rubbed) + density * mesh.dx * 1e-3 * stepped);
}

function kineticEnergy(solver: FlowSolver, density: number): number {
  const { u, v, uInverse, vInverse } = solver.arrays;
  let sum = 0;
  for (let k = 0; k < u.length; k++) {
    if (uInverse[k]! > 0) sum += u[k]! ** 2 / uInverse[k]!;
    if (vInverse[k]! > 0) sum += v[k]! ** 2 / vInverse[k]!;
  }
  return 0.5 * density * sum * (solver.mesh.dx * 1e-3) ** 2 * depthUnit(solver);
}
