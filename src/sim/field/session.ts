/** One flow field that lives on: built, driven, advanced, reshaped, read. It knows no clock and no thread; who steps it does. */
import type { FlowGeometry } from "../geometry/geometry.ts";
import { chooseEngine } from "../lattice/engine.ts";
import { type Engine, type Lattice, layLattice } from "../lattice/lattice.ts";
import { type Raster, rasterise } from "../lattice/raster.ts";
import { fromMillipascalSecond } from "../units.ts";
import { atCentres } from "./at-centres.ts";
import { carryOver } from "./carry-over.ts";
import { applyDrive, applyGiven, driveSpeed, openingRule } from "./drive.ts";
import type { FieldDrive, FieldShape, FlowField } from "./flow-field.ts";
import type { FieldMeans } from "./means.ts";
import { type Readings, trackReadings } from "./readings.ts";

export interface FieldFluid {
  /** kg/m3 */
  readonly density: number;
  /** mPa.s */
  readonly viscosity: number;
}

export interface FieldChoice {
  /** cells across the narrowest opening, a fenestration left out (its own depth keeps its area) */
  readonly cellsAcross: number;
  readonly depth: "uniform" | "round";
}

export interface FieldSession {
  /** Sets what the openings carry; takes effect with the next step, keeping the flow. */
  drive(drive: FieldDrive): void;
  /** Advances whole steps and answers the blood seconds that passed. */
  advance(steps: number): number;
  /** Advances at least `seconds` of blood time. */
  advanceSeconds(seconds: number): number;
  /** New walls, the flow kept: what the new lumen shares with the old goes on; `shape()` changes with it. */
  reshape(geometry: FlowGeometry): void;
  /** The flow now. Fills `into` (arrays given back by the reader) where it fits. */
  read(into?: readonly Float32Array[]): FlowField;
  /** Means over the readings' window, where they are newer than those last taken. */
  takeMeans(): FieldMeans | undefined;
  shape(): FieldShape;
  /** Blood seconds in one step, and cells solved in it: what pace can be reckoned from. */
  readonly step: number;
  readonly cells: number;
  /** Wall-clock seconds that the caller measured for `steps` steps: pace and rate in the readings come from here. */
  timed(steps: number, wallSeconds: number): void;
  /** Drops the memory; nothing may be called afterwards. */
  release(): void;
}

/** Opening whose width does not set the grid. */
const UNRESOLVED = "fenestration";

/** s in which sound crosses the plane at the latest: a small part of a beat, so that what enters now leaves now. */
const CROSSING = 0.07;

/** mm: cell width that puts `cellsAcross` cells across the narrowest opening. */
function cellFor(geometry: FlowGeometry, cellsAcross: number): number {
  const widths = geometry.openings.filter(({ name }) => name !== UNRESOLVED).map(({ width }) => width);
  return Math.min(...widths) / cellsAcross;
}

/** Starts a field at rest. */
export function buildField(geometry: FlowGeometry, fluid: FieldFluid, choice: FieldChoice): FieldSession {
  const viscosity = fromMillipascalSecond(fluid.viscosity);
  const blood = { density: fluid.density, viscosity };
  const kinematicViscosity = viscosity / fluid.density;
  const cell = cellFor(geometry, choice.cellsAcross);
  const gridChoice = { cell, depth: choice.depth };
  let plane = geometry;
  let drive: FieldDrive | undefined;
  let shapeId = 0;
  let bloodTime = 0;
  let speed = expectedSpeed(geometry);
  let lattice = lay(rasterise(plane, gridChoice));
  let readings: Readings = trackReadings(lattice, blood, periodOf(drive), lungSide(drive));

  function lay(raster: Raster, engine?: Engine): Lattice {
    const rules = plane.openings.map((opening) => openingRule(opening, drive));
    const laid = layLattice(
      { geometry: plane, raster, choice: gridChoice, rules },
      { kinematicViscosity, leastSound: (Math.hypot(raster.nx, raster.ny) * raster.cell * 1e-3) / CROSSING },
      speed,
      engine ?? chooseEngine(raster.nx * raster.ny),
    );
    applyGiven(laid, fluid.density);
    return laid;
  }

  function relay(raster: Raster): void {
    const old = lattice;
    speed = old.fastest;
    lattice = lay(raster);
    carryOver(old, lattice);
    if (drive) applyDrive(lattice, drive, bloodTime);
    readings = trackReadings(lattice, blood, periodOf(drive), lungSide(drive), readings);
  }

  function advance(steps: number): number {
    const before = bloodTime;
    for (let left = steps; left > 0; ) {
      const count = Math.min(left, readings.stepsUntilSample());
      let from = lattice.time;
      lattice.advance(count, (time) => {
        bloodTime += time - from;
        from = time;
        if (drive) applyDrive(lattice, drive, bloodTime);
      });
      bloodTime += lattice.time - from;
      readings.sample(count);
      left -= count;
    }
    return bloodTime - before;
  }

  return {
    drive(next) {
      const rules = lattice.openings.map(({ rule }) => rule);
      drive = next;
      const same = plane.openings.every((opening, n) => openingRule(opening, drive) === rules[n]);
      if (same) readings.begin(periodOf(drive), lungSide(drive));
      else relay(lattice.raster);
      lattice.expect(driveSpeed(lattice, drive));
    },
    advance,
    advanceSeconds(seconds) {
      let passed = 0;
      while (passed < seconds) passed += advance(Math.max(1, Math.ceil((seconds - passed) / lattice.step)));
      return passed;
    },
    reshape(next) {
      plane = next;
      shapeId++;
      relay(rasterise(plane, gridChoice));
    },
    read: (into) => ({
      shapeId,
      time: bloodTime,
      ...atCentres(lattice, fluid.density, lungSide(drive), into),
      readings: readings.now(),
    }),
    takeMeans() {
      const means = readings.takeMeans();
      return means && { shapeId, ...means };
    },
    shape: () => readShape(lattice),
    get step() {
      return lattice.step;
    },
    get cells() {
      return lattice.cells;
    },
    timed(steps, wallSeconds) {
      readings.timed(steps, wallSeconds);
    },
    release() {
      lattice = undefined as unknown as Lattice;
    },
  };
}

const lungSide = (drive: FieldDrive | undefined): string[] => Object.keys(drive?.split ?? {});
const periodOf = (drive: FieldDrive | undefined): number => drive?.period ?? 0.5;

/** m/s: fastest blood to reckon with before any has been seen. */
function expectedSpeed(geometry: FlowGeometry): number {
  return Math.max(0.02, ...geometry.openings.map(({ velocity }) => 1.5 * Math.abs(velocity ?? 0)));
}

function readShape({ raster }: Lattice): FieldShape {
  const { nx, ny, cell, originX, originY, distance, depth } = raster;
  return {
    nx,
    ny,
    cell,
    originX,
    originY,
    distance: Float32Array.from(distance),
    depth: Float32Array.from(depth),
  };
}
