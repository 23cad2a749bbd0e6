/** How much energy a solver's blood holds and loses at one moment, over the cells that hold any. */
import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import { depthUnit } from "./solver-units.ts";

/** Weights of one cell's squared velocities, or of their differences; a step of depth weighs their cubes. */
const WEIGHTS = [
  "uCell",
  "vCell",
  "uCorner",
  "vCorner",
  "uRub",
  "vRub",
  "uStep",
  "vStep",
  "uMass",
  "vMass",
] as const;
type Weights = Record<(typeof WEIGHTS)[number], number>;

/**
 * Reads the present energies, each time it is called. Dissipation: the sum over the solver's own links, friction and step losses, which is
 * what the discrete flow loses; the damping of unresolved waves is left out.
 * @param density kg/m3
 * @param viscosity Pa.s
 * @returns dissipation in W (W/m), kinetic energy in J (J/m)
 */
export function energyOf(
  solver: FlowSolver,
  density: number,
  viscosity: number,
): () => { readonly dissipation: number; readonly kinetic: number } {
  const { nx, dx } = solver.mesh;
  const { cells, weights } = weighedCells(solver);
  const metres = dx * 1e-3;
  const unit = depthUnit(solver);
  return () => {
    const { u, v } = solver.arrays;
    let rubbed = 0;
    let stepped = 0;
    let moving = 0;
    for (let n = 0, w = 0; n < cells.length; n++, w += WEIGHTS.length) {
      const k = cells[n]!;
      const here = u[k]!;
      const up = v[k]!;
      rubbed +=
        weights[w]! * (u[k + 1]! - here) ** 2 +
        weights[w + 1]! * (v[k + nx]! - up) ** 2 +
        weights[w + 2]! * (here - u[k - nx]!) ** 2 +
        weights[w + 3]! * (up - v[k - 1]!) ** 2 +
        weights[w + 4]! * here ** 2 +
        weights[w + 5]! * up ** 2;
      stepped +=
        Math.max(0, weights[w + 6]! * here) * here ** 2 + Math.max(0, weights[w + 7]! * up) * up ** 2;
      moving += weights[w + 8]! * here ** 2 + weights[w + 9]! * up ** 2;
    }
    return {
      dissipation: unit * (viscosity * rubbed + density * metres * stepped),
      kinetic: 0.5 * density * moving * metres ** 2 * unit,
    };
  };
}

/** The cells with any weight (indices), and WEIGHTS of each, one cell after the other. */
function weighedCells(solver: FlowSolver): { readonly cells: Int32Array; readonly weights: Float64Array } {
  const { nx, ny } = solver.mesh;
  const cells: number[] = [];
  const weights: number[] = [];
  for (let j = 1; j < ny - 1; j++)
    for (let i = 1; i < nx - 1; i++) {
      const k = j * nx + i;
      if (!hasFlow(solver, k)) continue;
      const own = cellWeights(solver, k);
      const each = WEIGHTS.map((name) => own[name]);
      if (each.every((weight) => weight === 0)) continue;
      cells.push(k);
      weights.push(...each);
    }
  return { cells: Int32Array.from(cells), weights: Float64Array.from(weights) };
}

/** Whether any velocity moves in a cell, or is linked to it: most of the rectangle has neither. */
const hasFlow = ({ arrays: a }: FlowSolver, k: number): boolean =>
  a.uInverse[k]! > 0 ||
  a.vInverse[k]! > 0 ||
  a.uThroughCell[k]! > 0 ||
  a.vThroughCell[k]! > 0 ||
  a.uThroughCorner[k]! > 0 ||
  a.vThroughCorner[k]! > 0;

/** What lies beyond an opening doesn't count. */
function cellWeights({ mesh, arrays: a }: FlowSolver, k: number): Weights {
  const { nx, beyond } = mesh;
  const [own, left, below, across] = [k, k - 1, k - nx, k - nx - 1].map((cell) =>
    beyond[cell]! < 0 ? 1 : 0,
  ) as [number, number, number, number];
  const corner = 0.25 * (own + left + below + across);
  const uMass = a.uInverse[k]! > 0 ? 1 / a.uInverse[k]! : 0;
  const vMass = a.vInverse[k]! > 0 ? 1 / a.vInverse[k]! : 0;
  const uPart = 0.5 * (own + left) * uMass;
  const vPart = 0.5 * (own + below) * vMass;
  return {
    uCell: own * a.uThroughCell[k]!,
    vCell: own * a.vThroughCell[k]!,
    uCorner: corner * a.uThroughCorner[k]!,
    vCorner: corner * a.vThroughCorner[k]!,
    uRub: uPart * a.uFriction[k]!,
    vRub: vPart * a.vFriction[k]!,
    uStep: uPart * a.uStep[k]!,
    vStep: vPart * a.vStep[k]!,
    uMass,
    vMass,
  };
}
