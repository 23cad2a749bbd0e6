/** Owns the memory of one flow field and advances it. Lengths in cells (depth in mm), velocities m/s, pressure over density m2/s2. */
import type { FlowGeometry } from "../geometry/geometry.ts";
import { fillCoefficients, type OpeningRule, rowSpans } from "./coefficients.ts";
import { holdPressure } from "./hold-pressure.ts";
import { ARRAYS, type LatticeArrays, type RowSpans, type StepSettings, viewArrays } from "./layout.ts";
import { type LatticeOpening, layOpening } from "./openings.ts";
import type { GridChoice, Raster } from "./raster.ts";
import { sweep } from "./sweep.ts";

/** Sound goes this many times faster than the fastest blood: its lag is what an unsteady flow is wrong by, squared. */
const SOUND_OVER_SPEED = 4;
const SOUND_DAMPING = 0.15;
/** Part of the stability bound that a step may use. */
const SAFETY = 0.8;
/** Largest viscosity times step over cell squared. */
const VISCOUS_STEP = 0.07;
const UPSTREAM = 1 / 16;
/** Times that sound could cross the plane while an opening forgets the flow it had: quicker, and waves come back; slower, and flow lags. */
const FORGET = 2;

export interface LatticeFluid {
  /** m2/s */
  readonly kinematicViscosity: number;
  /** sound's speed over the fastest blood's, {@link SOUND_OVER_SPEED} when left out: what an unsteady flow's accuracy costs steps for */
  readonly soundOverSpeed?: number;
  /** m/s: sound is never slower than this, however slow the blood; what keeps a beat from arriving late at the far end */
  readonly leastSound?: number;
}

export interface Lattice {
  readonly raster: Raster;
  readonly choice: GridChoice;
  readonly arrays: LatticeArrays;
  readonly spans: RowSpans;
  readonly openings: readonly LatticeOpening[];
  readonly settings: StepSettings;
  /** s of blood time since it was built */
  readonly time: number;
  /** s: the coming step's length */
  readonly step: number;
  /** cells that are solved */
  readonly cells: number;
  /** m/s: fastest blood when last looked */
  readonly fastest: number;
  /** Makes ready for blood of `speed` (m/s), before any has been seen. */
  expect(speed: number): void;
  /** Advances `steps`; `before` may set openings' flows and targets each step (s). */
  advance(steps: number, before?: (time: number) => void): void;
}

/** How one step over all rows is done: plain, or by the vector kernel. */
type Sweep = (nx: number, ny: number, spans: RowSpans, arrays: LatticeArrays, settings: StepSettings) => void;

/** Memory for `count` cells and the sweep that works in it. */
export interface Engine {
  readonly arrays: LatticeArrays;
  readonly sweep: Sweep;
}

export const plainEngine = (count: number): Engine => ({
  arrays: viewArrays(new ArrayBuffer(8 * ARRAYS.length * count), 0, count),
  sweep,
});

/** A shape on its grid, and what is given at each of its openings. */
export interface LatticePlane {
  readonly geometry: FlowGeometry;
  readonly raster: Raster;
  readonly choice: GridChoice;
  readonly rules: readonly OpeningRule[];
}

/** Lays a lattice at rest. `rules` says for each opening what is given; `speed` (m/s) is the fastest blood to expect at first. */
export function layLattice(
  { geometry, raster, choice, rules }: LatticePlane,
  fluid: LatticeFluid,
  speed: number,
  engine: Engine = plainEngine(raster.nx * raster.ny),
): Lattice {
  const { arrays } = engine;
  const round = choice.depth === "round";
  fillCoefficients(raster, rules, round, arrays);
  const plane = { raster, arrays, round, kinematicViscosity: fluid.kinematicViscosity };
  const openings = geometry.openings.map((opening, n) => layOpening(plane, opening, n, rules[n]!));
  return runLattice({ raster, choice, openings }, fluid, speed, engine);
}

/** As {@link layLattice}, for arrays already filled. */
export function runLattice(
  { raster, choice, openings }: Pick<Lattice, "raster" | "choice" | "openings">,
  fluid: LatticeFluid,
  speed: number,
  { arrays, sweep: run }: Engine,
): Lattice {
  const { nx, ny } = raster;
  const spans = rowSpans(raster, arrays);
  const cellMetres = raster.cell * 1e-3;
  const viscosityOverCell = fluid.kinematicViscosity / cellMetres;
  const cells = arrays.pInverse.reduce((count, value) => count + (value > 0 ? 1 : 0), 0);
  const diagonal = Math.hypot(nx, ny);
  let fastest = speed;
  let sinceLooked = 0;
  let time = 0;
  const sound = (speed: number) =>
    Math.max((fluid.soundOverSpeed ?? SOUND_OVER_SPEED) * speed, fluid.leastSound ?? 0);
  let settings = choose(speed, viscosityOverCell, sound(speed));

  function look(): void {
    sinceLooked = 0;
    const now = fastestBlood(arrays, nx, spans);
    // Quick to slow down for a jet, slow to speed up again.
    fastest = Math.max(now, fastest + 0.02 * (now - fastest), 1e-6);
    if (!Number.isFinite(fastest)) return;
    const least = choose(fastest, viscosityOverCell, sound(fastest));
    if (Math.abs(least.stepOverCell / settings.stepOverCell - 1) > 0.02) settings = least;
  }

  return {
    raster,
    choice,
    arrays,
    spans,
    openings,
    cells,
    get settings() {
      return settings;
    },
    get time() {
      return time;
    },
    get step() {
      return settings.stepOverCell * cellMetres;
    },
    get fastest() {
      return fastest;
    },
    expect(speed) {
      fastest = Math.max(fastest, speed);
      settings = choose(fastest, viscosityOverCell, sound(fastest));
    },
    advance(steps, before) {
      for (let n = 0; n < steps; n++) {
        if (sinceLooked++ >= 20) look();
        before?.(time);
        const soundSpeed = Math.sqrt(settings.soundSquared);
        const forget = Math.min(0.5, (FORGET * soundSpeed * settings.stepOverCell) / diagonal);
        for (const opening of openings)
          if (opening.rule === "pressure") holdPressure(opening, arrays, soundSpeed, forget);
        run(nx, ny, spans, arrays, settings);
        exchange(arrays);
        time += settings.stepOverCell * cellMetres;
      }
    },
  };
}

/**
 * The longest stable step. The shortest wave, sign changing from cell to cell, stays bounded while
 * 8 C2 (1 + 2 damping) + 4 L < 4: C = cells that sound passes in a step, L = decay of that wave by viscosity and upstream damping.
 */
function choose(speed: number, viscosityOverCell: number, sound: number): StepSettings {
  let stepOverCell = Math.min(0.5 / sound, VISCOUS_STEP / viscosityOverCell);
  for (;;) {
    const decay = 8 * viscosityOverCell * stepOverCell + 32 * UPSTREAM * speed * stepOverCell;
    const room = SAFETY - decay;
    const passed = room > 0 ? Math.sqrt(room / (2 * (1 + 2 * SOUND_DAMPING))) : 0;
    if (passed >= sound * stepOverCell && passed > 0)
      return {
        stepOverCell,
        viscosityOverCell,
        soundSquared: (passed / stepOverCell) ** 2,
        soundDamping: SOUND_DAMPING,
        upstream: UPSTREAM,
      };
    stepOverCell *= 0.95;
  }
}

function exchange(a: LatticeArrays): void {
  [a.uAhead, a.uNext] = [a.uNext, a.uAhead];
  [a.vAhead, a.vNext] = [a.vNext, a.vAhead];
}

function fastestBlood({ u, v }: LatticeArrays, nx: number, spans: RowSpans): number {
  let fastest = 0;
  for (let j = 0; j < spans.length / 2; j++)
    for (let k = j * nx + spans[2 * j]!; k < j * nx + spans[2 * j + 1]!; k++)
      fastest = Math.max(fastest, u[k]! * u[k]! + v[k]! * v[k]!);
  return Math.sqrt(fastest);
}
