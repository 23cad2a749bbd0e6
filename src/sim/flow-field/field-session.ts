/** One flow field over its whole life: built, given boundary conditions, advanced, reshaped, read. Clock and thread are the caller's. */

import { buildMesh, type CutCellMesh, type GridChoice, layMesh } from "../flow-solver/cut-cell-mesh.ts";
import type { FlowSolver, SoundSteps } from "../flow-solver/flow-solver.ts";
import { holdFlow } from "../flow-solver/openings.ts";
import type { FlowGeometry } from "../geometry/geometry.ts";
import { fromMillipascalSecond } from "../units.ts";
import { atCentres } from "./at-centres.ts";
import { applyBoundary, boundarySpeed, openingRule } from "./boundary-conditions.ts";
import type { BoundaryConditions, FieldShape, FlowField } from "./flow-field.ts";
import { cellFor, solverFor } from "./lay-solver.ts";
import type { FieldMeans } from "./means.ts";
import { type Kept, type Readings, trackReadings } from "./readings.ts";
import { remap } from "./remap.ts";

/** The blood's properties. */
export interface FieldFluid {
  /** kg/m3 */
  readonly density: number;
  /** mPa.s */
  readonly viscosity: number;
}

/** Resolution and depth of the plane. */
export interface FieldChoice {
  /** cells across the narrowest opening, a fenestration left out (its own depth keeps its area) */
  readonly cellsAcross: number;
  readonly depth: "uniform" | "round";
  /** the first boundary conditions find a flow that has already run for a while on a coarse grid, not blood at rest */
  readonly lead?: Lead;
  /** count of sound's steps to one of advection and shear, 1 when left out */
  readonly soundSteps?: SoundSteps;
}

/** What may change while a field runs. */
type Resolution = Pick<FieldChoice, "cellsAcross" | "soundSteps">;

/** What a field runs on a coarse grid before its own time begins. */
interface Lead {
  /** count across the narrowest opening, 4 at least */
  readonly cellsAcross: number;
  /** s of blood time */
  readonly seconds: number;
}

/** A running field. Times are blood time in s unless stated. */
export interface FieldSession {
  /** Sets what the openings carry; takes effect with the next step, keeping the flow. */
  setBoundary(boundary: BoundaryConditions): void;
  /** Advances whole steps; returns the seconds of blood time that passed. */
  advance(steps: number): number;
  /** Advances at least `seconds` of blood time. */
  advanceSeconds(seconds: number): number;
  /** For a computer elsewhere that does what `advance` does: what it works on until the next boundary conditions or walls. */
  live(): LiveField;
  /**
   * Another grid between the same walls and for the same boundary conditions: each call of what is returned lays a part of it, the present one goes on in
   * between; true once the flow has moved over. Readings stand until the new grid's are as good.
   */
  refine(choice: Resolution): () => boolean;
  /** New walls or cells of another width: flow is kept where the new lumen overlaps the old; `shape()` changes with it. */
  reshape(geometry: FlowGeometry, choice?: Resolution): void;
  /** The flow now. Fills `into` (arrays given back by the reader) where it fits. */
  read(into?: readonly Float32Array[]): FlowField;
  /** Means over the readings' window; undefined when there are none newer than those last taken. */
  takeMeans(): FieldMeans | undefined;
  shape(): FieldShape;
  /** s of blood time in one step */
  readonly step: number;
  /** number of cells solved in one step */
  readonly cells: number;
  /** Reports the wall-clock seconds that the caller measured for `steps` steps: pace and rate in the readings come from these. */
  timed(steps: number, wallSeconds: number): void;
  /** Drops the memory; nothing may be called afterwards. */
  release(): void;
}

/** A field's present solver and readings, and its boundary conditions at the solver's `time` (s); flows go to `hold`. */
interface LiveField {
  readonly solver: FlowSolver;
  readonly readings: Readings;
  drive(time: number, hold?: typeof holdFlow): void;
}

/**
 * Starts a field at rest.
 * @param choice cells across the narrowest opening set the cell width (mm); 4 at least
 */
export function buildField(geometry: FlowGeometry, fluid: FieldFluid, choice: FieldChoice): FieldSession {
  const blood = { density: fluid.density, viscosity: fromMillipascalSecond(fluid.viscosity) };
  let gridChoice: GridChoice = { dx: cellFor(geometry, choice.cellsAcross), depth: choice.depth };
  let { cellsAcross, soundSteps = 1 } = choice;
  let plane = geometry;
  let boundary: BoundaryConditions | undefined;
  let shapeId = 0;
  /** s by which blood time is ahead of the present solver's own */
  let lead = 0;
  let speed = expectedSpeed(geometry);
  let solver = lay(gridChoice);
  let readings = read();

  function lay(grid: GridChoice, mesh = buildMesh(plane, grid)): FlowSolver {
    return solverFor({ plane, boundary, grid, mesh }, { ...blood, soundSteps }, speed);
  }

  function read(kept?: Kept): Readings {
    return trackReadings(solver, blood, periodOf(boundary), lungSide(boundary), kept);
  }

  function relay(mesh?: CutCellMesh, old = solver): void {
    speed = old.fastest;
    const { pace, rate } = readings.kept();
    moveTo(lay(gridChoice, mesh), old, { pace, rate });
  }

  /** Goes on with the flow of `old`; `kept`: what the readings begin with. */
  function moveTo(next: FlowSolver, old: FlowSolver, kept: Kept): void {
    lead += solver.time;
    solver = next;
    remap(old, solver);
    drive(0);
    readings = read(kept);
  }

  function* refining(next: Resolution): Generator<undefined, void> {
    const grid = { ...gridChoice, dx: cellFor(plane, next.cellsAcross) };
    const mesh = yield* layMesh(plane, grid);
    speed = solver.fastest;
    const laid = lay(grid, mesh);
    yield;
    gridChoice = grid;
    ({ cellsAcross, soundSteps = 1 } = next);
    moveTo(laid, solver, readings.kept());
  }

  /** The boundary conditions at the solver's `time`. */
  const drive = (time: number, hold = holdFlow): void => {
    if (boundary) applyBoundary(solver, boundary, lead + time, hold);
  };

  const advance = (steps: number): number => advanceReading(solver, readings, steps, drive);

  return {
    setBoundary(next) {
      const rules = solver.openings.map(({ rule }) => rule);
      const first = boundary === undefined && lead + solver.time === 0;
      boundary = next;
      if (first && choice.lead) {
        const dx = cellFor(plane, choice.lead.cellsAcross);
        const coarse = dx === gridChoice.dx ? lay(gridChoice, solver.mesh) : lay({ ...gridChoice, dx });
        runAhead(coarse, next, choice.lead.seconds);
        relay(solver.mesh, coarse);
        return;
      }
      const same = plane.openings.every((opening, n) => openingRule(opening, boundary) === rules[n]);
      if (same) readings.begin(periodOf(boundary), lungSide(boundary));
      else relay(solver.mesh);
      solver.expect(boundarySpeed(solver, boundary));
    },
    advance,
    advanceSeconds: (seconds) => advanceFor(seconds, () => solver.step, advance),
    live: () => ({ solver, readings, drive }),
    refine(choice) {
      const parts = refining(choice);
      return () => parts.next().done === true;
    },
    reshape(next, changed) {
      plane = next;
      if (changed && changed.cellsAcross !== cellsAcross)
        gridChoice = { ...gridChoice, dx: cellFor(plane, changed.cellsAcross) };
      if (changed) ({ cellsAcross, soundSteps = 1 } = changed);
      shapeId++;
      relay();
    },
    read: (into) => ({
      shapeId,
      time: lead + solver.time,
      ...atCentres(solver, fluid.density, lungSide(boundary), into),
      readings: readings.now(),
    }),
    takeMeans() {
      const means = readings.takeMeans();
      return means && { shapeId, ...means };
    },
    shape: () => readShape(solver),
    get step() {
      return solver.step;
    },
    get cells() {
      return solver.cells;
    },
    timed: (steps, wallSeconds) => readings.timed(steps, wallSeconds),
    release() {
      solver = undefined as unknown as FlowSolver;
    },
  };
}

/** Advances `steps`, with readings where they are due; s that passed. */
function advanceReading(
  solver: FlowSolver,
  readings: Readings,
  steps: number,
  drive: (time: number) => void,
): number {
  const before = solver.time;
  for (let left = steps; left > 0; ) {
    const count = Math.min(left, readings.stepsUntilSample());
    solver.advance(count, drive);
    readings.sample(count);
    left -= count;
  }
  return solver.time - before;
}

/** Advances at least `seconds`, with steps of `step` s now; s that passed. */
function advanceFor(seconds: number, step: () => number, advance: (steps: number) => number): number {
  let passed = 0;
  while (passed < seconds) passed += advance(Math.max(1, Math.ceil((seconds - passed) / step())));
  return passed;
}

/** Lets the boundary conditions move blood at rest for `seconds`, up to the moment when the field's own time begins. */
function runAhead(coarse: FlowSolver, boundary: BoundaryConditions, seconds: number): void {
  coarse.expect(boundarySpeed(coarse, boundary));
  while (coarse.time < seconds)
    coarse.advance(Math.max(1, Math.floor((seconds - coarse.time) / coarse.step)), (time) =>
      applyBoundary(coarse, boundary, time - seconds),
    );
}

const lungSide = (boundary: BoundaryConditions | undefined): string[] => Object.keys(boundary?.split ?? {});
const periodOf = (boundary: BoundaryConditions | undefined): number => boundary?.period ?? 0.5;

/** m/s: fastest blood to allow for before any has been measured. */
function expectedSpeed(geometry: FlowGeometry): number {
  return Math.max(0.02, ...geometry.openings.map(({ velocity }) => 1.5 * Math.abs(velocity ?? 0)));
}

function readShape({ mesh }: FlowSolver): FieldShape {
  const { nx, ny, dx, originX, originY, distance, depth } = mesh;
  return {
    nx,
    ny,
    dx,
    originX,
    originY,
    distance: Float32Array.from(distance),
    depth: Float32Array.from(depth),
  };
}
