/** A flow solver on a grid of a given fineness. */

import type { CutCellMesh, GridChoice } from "../flow-solver/cut-cell-mesh.ts";
import { chooseEngine } from "../flow-solver/engine.ts";
import { buildFlowSolver, type FlowSolver, type SoundSteps } from "../flow-solver/flow-solver.ts";
import type { FlowGeometry } from "../geometry/geometry.ts";
import { applyGiven, openingRule } from "./boundary-conditions.ts";
import type { BoundaryConditions } from "./flow-field.ts";

/** Opening whose width does not set the grid. */
const UNRESOLVED = "fenestration";

/** s in which sound crosses the plane at the latest: a small part of a beat, so that what enters now leaves now. */
const CROSSING = 0.07;

/** mm: cell width that puts `cellsAcross` cells across the narrowest opening. */
export function cellFor(geometry: FlowGeometry, cellsAcross: number): number {
  const widths = geometry.openings.filter(({ name }) => name !== UNRESOLVED).map(({ width }) => width);
  return Math.min(...widths) / cellsAcross;
}

/** What a grid is laid for. */
interface Laid {
  readonly plane: FlowGeometry;
  readonly boundary: BoundaryConditions | undefined;
  readonly grid: GridChoice;
  readonly mesh: CutCellMesh;
}

/** Blood, and how its steps are shared. `density` in kg/m3, `viscosity` in Pa.s. */
interface Blood {
  readonly density: number;
  readonly viscosity: number;
  readonly soundSteps: SoundSteps;
}

/** m/s: sound that crosses the plane in that time. */
export const minSoundSpeedOf = ({ nx, ny, dx }: CutCellMesh): number =>
  (Math.hypot(nx, ny) * dx * 1e-3) / CROSSING;

/** A solver at rest, for blood of `speed` (m/s). */
export function solverFor(
  { plane, boundary, grid, mesh }: Laid,
  { density, viscosity, soundSteps }: Blood,
  speed: number,
): FlowSolver {
  const laid = buildFlowSolver(
    {
      geometry: plane,
      mesh,
      choice: grid,
      rules: plane.openings.map((opening) => openingRule(opening, boundary)),
    },
    {
      kinematicViscosity: viscosity / density,
      soundSteps,
      minSoundSpeed: minSoundSpeedOf(mesh),
    },
    speed,
    chooseEngine(mesh.nx * mesh.ny, "singles"),
  );
  applyGiven(laid, density);
  return laid;
}
