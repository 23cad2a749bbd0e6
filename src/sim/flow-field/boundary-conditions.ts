/** Applies the boundary conditions of a moment to a solver's openings. */

import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import { holdFlow, type SolverOpening } from "../flow-solver/openings.ts";
import type { OpeningRule } from "../flow-solver/stencil-coefficients.ts";
import type { Opening } from "../geometry/geometry.ts";
import { fromMillilitre, fromMmHg } from "../units.ts";
import type { BoundaryConditions } from "./flow-field.ts";
import { flowUnit } from "./solver-units.ts";

/** Whether an opening's velocity or its pressure is given: by the boundary conditions where they name the opening, else by the geometry. */
export function openingRule(opening: Opening, boundary: BoundaryConditions | undefined): OpeningRule {
  if (boundary && opening.name in boundary.inflow) return "velocity";
  // What leaves finds its own profile: the pressure follows the flow that is asked for.
  if (boundary && (opening.name in boundary.split || opening.name in boundary.outflow)) return "pressure";
  return opening.velocity !== undefined ? "velocity" : "pressure";
}

/** A sample of a repeating wave, linear in between. */
function waveAt(wave: Float32Array, turns: number): number {
  const place = (turns - Math.floor(turns)) * wave.length;
  const index = Math.min(wave.length - 1, Math.floor(place));
  const share = place - index;
  return wave[index]! * (1 - share) + wave[(index + 1) % wave.length]! * share;
}

/** mL/s (m2/s with uniform depth) to the solver's unit. */
const solverFlow = (solver: FlowSolver, flow: number): number =>
  (solver.choice.depth === "round" ? fromMillilitre(flow) : flow) / flowUnit(solver);

/**
 * Sets given inflows and wanted outflows at `time` (s). Openings that the boundary conditions do not name keep what the geometry gives
 * ({@link applyGiven}). `hold` is handed each given flow (m/s times cells times mm).
 */
export function applyBoundary(
  solver: FlowSolver,
  boundary: BoundaryConditions,
  time: number,
  hold: typeof holdFlow = holdFlow,
): void {
  const turns = boundary.period > 0 ? time / boundary.period : 0;
  let leaving = 0;
  for (const opening of solver.openings) {
    const { name } = opening.opening;
    const inflow = boundary.inflow[name];
    const outflow = boundary.outflow[name];
    if (inflow && opening.rule === "velocity") {
      const flow = solverFlow(solver, waveAt(inflow, turns));
      leaving += flow;
      hold(opening, flow, solver.arrays);
    } else if (outflow) {
      const flow = solverFlow(solver, waveAt(outflow, turns));
      leaving -= flow;
      opening.wanted = flow / opening.area;
    }
  }
  for (const opening of solver.openings) {
    const part = boundary.split[opening.opening.name];
    if (part !== undefined && opening.rule === "pressure") opening.wanted = (part * leaving) / opening.area;
  }
}

/** Holds what the geometry itself gives: mean velocity (m/s) or mean pressure (mmHg). `density` in kg/m3. */
export function applyGiven(solver: FlowSolver, density: number): void {
  for (const opening of solver.openings) {
    const { velocity, pressure } = opening.opening;
    if (opening.rule === "velocity")
      holdFlow(opening, (velocity ?? 0) * fullArea(solver, opening), solver.arrays);
    else opening.target = fromMmHg(pressure ?? 0) / density;
  }
}

/** Open area that a mean velocity is given for: width, or the round lumen of that width (cells times depth unit). */
function fullArea(solver: FlowSolver, { opening }: SolverOpening): number {
  const across = opening.width / solver.mesh.dx;
  return solver.choice.depth === "round" ? (across * Math.PI * opening.width) / 4 : across;
}

/** m/s: the fastest blood that the boundary conditions send through any opening, in the middle of its parabola. */
export function boundarySpeed(solver: FlowSolver, boundary: BoundaryConditions): number {
  let fastest = 0;
  for (const opening of solver.openings) {
    const wave = boundary.inflow[opening.opening.name] ?? boundary.outflow[opening.opening.name];
    if (!wave) continue;
    const most = wave.reduce((peak, flow) => Math.max(peak, Math.abs(flow)), 0);
    fastest = Math.max(fastest, (1.5 * solverFlow(solver, most)) / fullArea(solver, opening));
  }
  return fastest;
}
