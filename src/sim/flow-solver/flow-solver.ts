/** Owns the memory of one flow field and advances it. Lengths in cells (depth in mm), velocities m/s, pressure over density m2/s2. */
import { present } from "../checked/present.ts";
import type { FlowGeometry } from "../geometry/geometry.ts";
import {
  type GridSize,
  type RowSpans,
  type SolverArrays,
  type StepSettings,
  viewArrays,
} from "./array-layout.ts";
import type { CutCellMesh, GridChoice } from "./cut-cell-mesh.ts";
import { layOpening, type SolverOpening } from "./openings.ts";
import { applyPressureOutlet } from "./pressure-outlet.ts";
import { fillCoefficients, type OpeningRule, rowSpans } from "./stencil-coefficients.ts";
import { timeStep } from "./time-step.ts";

/** Artificial sound speed over that of the fastest blood: the error of an unsteady flow falls with its square. */
const SOUND_SPEED_RATIO = 4;
/**
 * What a step may use of the bound of the shortest wave, 8 C2 (1 + 2 damping) + 4 L < 4: C = cells that sound passes in a step, L = decay of
 * that wave by viscosity and upstream damping. Steps of sound that share a push leave L out. `viscous`: largest viscosity times step of sound over
 * cell squared; `slows`: part by which sound follows slower blood at each look.
 */
export const SOUND = {
  1: { room: 0.8, viscous: 0.07, slows: 0.02 },
  3: { room: 0.9, viscous: 0.003, slows: 0.1 },
} as const;
/** How steps of sound share pushes: how many, their damping, and up to which Mach number. */
interface Shared {
  readonly soundSteps: number;
  readonly damping: number;
  readonly mach: number;
}
export const SINGLE: Shared = { soundSteps: 1, damping: 0.15, mach: Number.POSITIVE_INFINITY };
/**
 * Sound that blood carries along grows unless it is damped; the slower the blood, the more steps may share a push and the less damping they need. Cheapest
 * first; all waves of a uniform flow stay bounded up to a Mach number 8 % above the one given.
 */
export const SHARED: readonly Shared[] = [
  { soundSteps: 6, damping: 0.4, mach: 0.137 },
  { soundSteps: 5, damping: 0.4, mach: 0.163 },
  { soundSteps: 4, damping: 0.4, mach: 0.205 },
  { soundSteps: 3, damping: 0.4, mach: 0.236 },
  { soundSteps: 3, damping: 0.5, mach: Number.POSITIVE_INFINITY },
];
const UPSTREAM = 1 / 16;
/** Steps of sound between two looks for the fastest blood. */
export const LOOK_EVERY = 20;
/** Rate at which an opening adapts to a new flow, per crossing of the plane by sound: faster reflects waves, slower makes the flow lag. */
const FORGET = 2;

/** Count of sound's steps that share one push of advection and shear: with 3, and more where blood is slow, a second of blood costs little more than half of the work. */
export type SoundSteps = keyof typeof SOUND;

/** What a solver must know of the fluid; density enters only where pressures are read. */
export interface SolverFluid {
  /** m2/s */
  readonly kinematicViscosity: number;
  /** ratio of sound speed to the fastest blood's, {@link SOUND_SPEED_RATIO} when left out: a larger one is more accurate in unsteady flow and needs more steps */
  readonly soundSpeedRatio?: number;
  /** count of sound's steps that share one push of advection and shear, 3 or more for 3; 1 when left out */
  readonly soundSteps?: SoundSteps;
  /** m/s: sound is never slower than this, however slow the blood, so that a beat does not arrive late at the far end */
  readonly minSoundSpeed?: number;
}

/** A running solver. */
export interface FlowSolver {
  readonly mesh: CutCellMesh;
  readonly choice: GridChoice;
  readonly arrays: SolverArrays;
  /** cell indices, see {@link RowSpans} */
  readonly spans: RowSpans;
  readonly openings: readonly SolverOpening[];
  readonly settings: StepSettings;
  /** s of blood time since it was built */
  readonly time: number;
  /** s: the coming step's length, all its steps of sound together */
  readonly step: number;
  /** count of cells that are solved */
  readonly cells: number;
  /** m/s: fastest blood when last measured */
  readonly fastest: number;
  /** Sets the step for blood of `speed` (m/s), before any has been measured. */
  expect(speed: number): void;
  /** Advances `steps`; `before` may set openings' flows and targets each step (s). */
  advance(steps: number, before?: (time: number) => void): void;
  /** For a computer elsewhere that works on a copy of the arrays and brings its end back: looks for the fastest blood, if it is time to. */
  lookAgain(): void;
  /** m/s: the artificial speed of sound, and the fraction of an opening's slow mean that is renewed in one step */
  outletRates(): { readonly soundSpeed: number; readonly forget: number };
  /** The arrays hold the flow `steps` later. */
  passed(steps: number): void;
}

/** How step `part` of sound, from 0, over all rows is done: plain, or by the vector kernel. */
type TimeStep = (
  grid: GridSize,
  spans: RowSpans,
  arrays: SolverArrays,
  settings: StepSettings,
  part: number,
) => void;

/** Memory for `count` cells and the time step that works in it. */
export interface Engine {
  readonly arrays: SolverArrays;
  readonly timeStep: TimeStep;
}

/** Memory for `count` cells and the plain time step. */
export const plainEngine = (count: number): Engine => ({
  arrays: viewArrays(() => new Float64Array(count)),
  timeStep,
});

/** A shape on its grid, and what is given at each of its openings. */
export interface SolverPlane {
  readonly geometry: FlowGeometry;
  readonly mesh: CutCellMesh;
  readonly choice: GridChoice;
  readonly rules: readonly OpeningRule[];
}

/**
 * A flow solver at rest.
 * @param speed m/s: fastest blood to expect at first
 */
export function buildFlowSolver(
  { geometry, mesh, choice, rules }: SolverPlane,
  fluid: SolverFluid,
  speed: number,
  engine: Engine = plainEngine(mesh.nx * mesh.ny),
): FlowSolver {
  const { arrays } = engine;
  const round = choice.depth === "round";
  fillCoefficients(mesh, rules, round, arrays);
  const plane = { mesh, arrays, round, kinematicViscosity: fluid.kinematicViscosity };
  const openings = geometry.openings.map((opening, n) => layOpening(plane, opening, n, rules[n]!));
  return runFlowSolver({ mesh, choice, openings }, fluid, speed, engine);
}

/** As {@link buildFlowSolver}, for arrays already filled; `speed` in m/s. */
export function runFlowSolver(
  { mesh, choice, openings }: Pick<FlowSolver, "mesh" | "choice" | "openings">,
  fluid: SolverFluid,
  speed: number,
  { arrays, timeStep: run }: Engine,
): FlowSolver {
  const { nx, ny } = mesh;
  const spans = rowSpans(mesh, arrays);
  const dxMetres = mesh.dx * 1e-3;
  const viscosityOverDx = fluid.kinematicViscosity / dxMetres;
  let cells = 0;
  for (const inverse of arrays.pInverse) if (inverse > 0) cells++;
  const diagonal = Math.hypot(nx, ny);
  let fastest = speed;
  let sinceLooked = 0;
  let time = 0;
  const artificialSoundSpeed = (speed: number) =>
    Math.max((fluid.soundSpeedRatio ?? SOUND_SPEED_RATIO) * speed, fluid.minSoundSpeed ?? 0);
  const soundSteps = fluid.soundSteps ?? 1;
  const chosen = (speed: number) => choose(speed, viscosityOverDx, artificialSoundSpeed(speed), soundSteps);
  let settings = chosen(speed);

  function look(): void {
    const looks = Math.floor(sinceLooked / LOOK_EVERY);
    sinceLooked = 0;
    const now = fastestBlood(arrays, nx, spans);
    // The step shrinks at once for a jet and grows back slowly.
    fastest = Math.max(now, fastest + Math.min(1, SOUND[soundSteps].slows * looks) * (now - fastest), 1e-6);
    if (!Number.isFinite(fastest)) return;
    const least = chosen(fastest);
    const shares = least.soundSteps !== settings.soundSteps || least.soundDamping !== settings.soundDamping;
    if (shares || Math.abs(least.dtOverDx / settings.dtOverDx - 1) > 0.02) settings = least;
  }

  const length = () => settings.dtOverDx * settings.soundSteps * dxMetres;
  const passed = (steps: number): void => {
    sinceLooked += steps * settings.soundSteps;
    time += steps * length();
  };
  const outletRates = () => {
    const soundSpeed = Math.sqrt(settings.soundSpeedSquared);
    return { soundSpeed, forget: Math.min(0.5, (FORGET * soundSpeed * settings.dtOverDx) / diagonal) };
  };

  return {
    mesh,
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
      return length();
    },
    get fastest() {
      return fastest;
    },
    expect(speed) {
      fastest = Math.max(fastest, speed);
      settings = chosen(fastest);
    },
    advance(steps, before) {
      for (let n = 0; n < steps; n++) {
        if (sinceLooked >= LOOK_EVERY) look();
        before?.(time);
        const { soundSpeed, forget } = outletRates();
        for (let part = 0; part < settings.soundSteps; part++) {
          for (const opening of openings)
            if (opening.rule === "pressure")
              applyPressureOutlet(opening, arrays, soundSpeed, forget, part === 0);
          run(mesh, spans, arrays, settings, part);
        }
        exchange(arrays);
        passed(1);
      }
    },
    lookAgain() {
      if (sinceLooked >= LOOK_EVERY) look();
    },
    outletRates,
    passed,
  };
}

/** The longest stable step of sound. */
function choose(
  speed: number,
  viscosityOverDx: number,
  artificialSoundSpeed: number,
  shared: SoundSteps,
): StepSettings {
  const { room, viscous } = SOUND[shared];
  const mach = speed / artificialSoundSpeed;
  const { soundSteps, damping } = shared === 1 ? SINGLE : present(SHARED.find((each) => mach <= each.mach));
  const limit = (left: number) => (left > 0 ? Math.sqrt(left / (2 * (1 + 2 * damping))) : 0);
  let dtOverDx = Math.min(Math.min(0.5, limit(room)) / artificialSoundSpeed, viscous / viscosityOverDx);
  for (;;) {
    const decay = 8 * viscosityOverDx * dtOverDx + 32 * UPSTREAM * speed * dtOverDx;
    const passed = limit(soundSteps === 1 ? room - decay : room);
    if (passed >= (1 - 1e-9) * artificialSoundSpeed * dtOverDx && passed > 0)
      return {
        dtOverDx,
        viscosityOverDx,
        soundSpeedSquared: (passed / dtOverDx) ** 2,
        soundSteps,
        soundDamping: damping,
        upstream: UPSTREAM,
      };
    dtOverDx *= 0.95;
  }
}

function exchange(a: SolverArrays): void {
  [a.uAhead, a.uNext] = [a.uNext, a.uAhead];
  [a.vAhead, a.vNext] = [a.vNext, a.vAhead];
}

function fastestBlood({ u, v }: SolverArrays, nx: number, spans: RowSpans): number {
  let fastest = 0;
  for (let j = 0; j < spans.length / 2; j++)
    for (let k = j * nx + spans[2 * j]!; k < j * nx + spans[2 * j + 1]!; k++)
      fastest = Math.max(fastest, u[k]! * u[k]! + v[k]! * v[k]!);
  return Math.sqrt(fastest);
}
