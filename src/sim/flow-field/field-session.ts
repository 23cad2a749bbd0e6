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
  /** s of blood time: the first boundary conditions find a flow that has already run so long, not blood at rest, unless the session was advanced before */
  readonly runUp?: number;
  /** count of sound's steps to one of advection and shear, 1 when left out */
  readonly soundSteps?: SoundSteps;
}

/** What may change while a field runs. */
type Resolution = Pick<FieldChoice, "cellsAcross" | "soundSteps">;

/** A running field. Times are blood time in s unless stated. */
export interface FieldSession {
  /** Lays what the first boundary conditions will move, as the geometry expects them: they then find it laid. */
  prepare(): void;
  /** Sets what the openings carry; takes effect with the next step, keeping the flow. */
  setBoundary(boundary: BoundaryConditions): void;
  /** Advances whole steps; returns the seconds of blood time that passed. */
  advance(steps: number): number;
  /** Advances at least `seconds` of blood time. */
  advanceSeconds(seconds: number): number;
  /** For a computer elsewhere that does what `advance` does: what it works on until the next boundary conditions or walls. */
  live(): LiveField;
  /**
   * Another grid between the same walls: each call of what is returned lays a part of it, the present one goes on in between, be it for other boundary
   * conditions; true once the flow has moved over. Readings stand until the new grid's are as good.
   */
  refine(cellsAcross: number): () => boolean;
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

/** A field's present solver and what is read of it. */
interface Running {
  readonly solver: FlowSolver;
  readonly readings: Readings;
}

/** Also its boundary conditions at the solver's `time` (s); flows go to `hold`. */
interface LiveField extends Running {
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
  let mesh = buildMesh(plane, gridChoice);
  /** Laid when it is first needed: which openings' velocities are given is known with the boundary conditions. */
  let running: Running | undefined;

  const lay = (grid: GridChoice, mesh: CutCellMesh): FlowSolver =>
    solverFor({ plane, boundary, grid, mesh }, { ...blood, soundSteps }, speed);
  const early = laidEarly(lay);
  const read = (solver: FlowSolver, kept?: Kept) => readingOf(solver, blood, boundary, kept);
  function now(): Running {
    if (running) return running;
    const solver = early.take(mesh, boundary) ?? lay(gridChoice, mesh);
    if (boundary) lead = -runAhead(solver, boundary, choice.runUp ?? 0);
    running = read(solver);
    return running;
  }

  /** The same flow on a grid laid anew. */
  function relay({ solver, readings }: Running): void {
    speed = solver.fastest;
    const anew = lay(gridChoice, mesh);
    carry(solver, anew);
    running = read(anew, { ...readings.kept(), same: undefined });
  }

  /** The flow of `old` goes on in `solver`. */
  function carry(old: FlowSolver, solver: FlowSolver): void {
    lead += old.time;
    remap(old, solver);
    if (boundary) applyBoundary(solver, boundary, lead);
  }

  function* refining(across: number): Generator<undefined, void> {
    const grid = { ...gridChoice, dx: cellFor(plane, across) };
    const finer = yield* layMesh(plane, grid);
    let used: BoundaryConditions | undefined;
    let next: Running;
    // Once more where what flows in has changed meanwhile.
    do {
      used = boundary;
      speed = now().solver.fastest;
      const anew = lay(grid, finer);
      yield;
      next = read(anew, now().readings.kept());
    } while (used !== boundary);
    mesh = finer;
    gridChoice = grid;
    cellsAcross = across;
    carry(now().solver, next.solver);
    running = next;
  }

  /** The boundary conditions at the solver's `time`. */
  const drive = (time: number, hold = holdFlow): void => {
    if (boundary) applyBoundary(now().solver, boundary, lead + time, hold);
  };
  const advance = (steps: number): number => advanceReading(now(), steps, drive);
  return {
    prepare: () => early.lay(gridChoice, mesh),
    setBoundary(next) {
      // What was only read so far is still at rest: its run-up is to come.
      if (!boundary && running?.solver.time === 0) running = undefined;
      boundary = next;
      if (running && !fits(running.solver, next)) relay(running);
      else running?.readings.begin(periodOf(next), lungSide(next));
      expectInflow(now().solver, next);
    },
    advance,
    advanceSeconds: (seconds) => advanceFor(seconds, () => now().solver.step, advance),
    live: () => ({ ...now(), drive }),
    refine: (across) => inParts(refining(across)),
    reshape(next, changed) {
      plane = next;
      if (changed && changed.cellsAcross !== cellsAcross)
        gridChoice = { ...gridChoice, dx: cellFor(plane, changed.cellsAcross) };
      if (changed) ({ cellsAcross, soundSteps = 1 } = changed);
      shapeId++;
      mesh = buildMesh(plane, gridChoice);
      if (running) relay(running);
    },
    read: (into) => ({
      ...{ shapeId, time: lead + now().solver.time, readings: now().readings.now() },
      ...atCentres(now().solver, fluid.density, lungSide(boundary), into),
    }),
    takeMeans: () => meansOf(running, shapeId),
    shape: () => readShape(mesh),
    get step() {
      return now().solver.step;
    },
    get cells() {
      return now().solver.cells;
    },
    timed: (steps, wallSeconds) => now().readings.timed(steps, wallSeconds),
    release() {
      running = undefined;
    },
  };
}

/** The solver that was laid before it was known what flows in, at rest. */
function laidEarly(lay: (grid: GridChoice, mesh: CutCellMesh) => FlowSolver) {
  let solver: FlowSolver | undefined;
  return {
    lay(grid: GridChoice, mesh: CutCellMesh) {
      solver = lay(grid, mesh);
    },
    /** Undefined where there is none, or it is none for these. */
    take(mesh: CutCellMesh, boundary: BoundaryConditions | undefined): FlowSolver | undefined {
      const serves = solver?.mesh === mesh && fits(solver, boundary) ? solver : undefined;
      solver = undefined;
      return serves;
    },
  };
}

const inParts =
  (parts: Generator): (() => boolean) =>
  () =>
    parts.next().done === true;

const meansOf = (running: Running | undefined, shapeId: number): FieldMeans | undefined => {
  const means = running?.readings.takeMeans();
  return means && { shapeId, ...means };
};

/** Advances `steps`, with readings where they are due; s that passed. */
function advanceReading({ solver, readings }: Running, steps: number, drive: (time: number) => void): number {
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

/** Lets the boundary conditions move blood at rest for `seconds`, up to the moment when the field's own time begins; s that passed. */
function runAhead(solver: FlowSolver, boundary: BoundaryConditions, seconds: number): number {
  expectInflow(solver, boundary);
  while (solver.time < seconds)
    solver.advance(Math.max(1, Math.floor((seconds - solver.time) / solver.step)), (time) =>
      applyBoundary(solver, boundary, time - seconds),
    );
  applyBoundary(solver, boundary, 0);
  return solver.time;
}

const expectInflow = (solver: FlowSolver, boundary: BoundaryConditions): void =>
  solver.expect(boundarySpeed(solver, boundary));

/** Whether what is given at each opening is still of the same kind. */
const fits = ({ openings }: FlowSolver, boundary: BoundaryConditions | undefined): boolean =>
  openings.every(({ opening, rule }) => openingRule(opening, boundary) === rule);

/** `density` kg/m3, `viscosity` Pa.s; as {@link trackReadings}. */
const readingOf = (
  solver: FlowSolver,
  blood: { readonly density: number; readonly viscosity: number },
  boundary: BoundaryConditions | undefined,
  kept: Kept | undefined,
): Running => ({
  solver,
  readings: trackReadings(solver, blood, periodOf(boundary), lungSide(boundary), kept),
});

const lungSide = (boundary: BoundaryConditions | undefined): string[] => Object.keys(boundary?.split ?? {});
const periodOf = (boundary: BoundaryConditions | undefined): number => boundary?.period ?? 0.5;

/** m/s: fastest blood to allow for before any has been measured. */
function expectedSpeed(geometry: FlowGeometry): number {
  return Math.max(0.02, ...geometry.openings.map(({ velocity }) => 1.5 * Math.abs(velocity ?? 0)));
}

function readShape({ nx, ny, dx, originX, originY, distance, depth }: CutCellMesh): FieldShape {
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
