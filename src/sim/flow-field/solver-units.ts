/** What a solver's own units are in SI. */
import type { FlowSolver } from "../flow-solver/flow-solver.ts";

/** m of depth for one unit of the depth array: mm when round; one metre when uniform, so that answers are per metre. */
export const depthUnit = (solver: FlowSolver): number => (solver.choice.depth === "round" ? 1e-3 : 1);

/** Flow in SI (m3/s; m2/s with uniform depth) for one solver unit of flow (m/s times cells times depth). */
export const flowUnit = (solver: FlowSolver): number => solver.mesh.dx * 1e-3 * depthUnit(solver);
