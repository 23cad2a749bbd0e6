/**
 * What a plane lacks of a flow in three dimensions, as friction and viscosity that come and go with the flow. All of it follows how fast
 * blood changes direction or slows down on its way, so that a developed tube feels nothing.
 */
import type { FlowSolver } from "../../src/sim/flow-solver/flow-solver.ts";
import type { AtCells } from "./at-cells.ts";

/** Constants, dimensionless; 0 (momentum: 1) leaves the plane as it is. */
export interface Closure {
  /** factor of the profile across the depth on the flux of momentum */
  readonly momentum: number;
  /** momentum lost over momentum turned aside */
  readonly turn: number;
  /** momentum lost over momentum given up where the stream slows down */
  readonly slow: number;
  /** viscosity over (rate of turning and slowing, times the lumen's diameter squared) */
  readonly eddy: number;
}

/** The plane as it is. */
export const OFF: Closure = { momentum: 1, turn: 0, slow: 0, eddy: 0 };

/** How much of the newest look at the flow counts. */
const RENEWED = 0.2;
/** Most that a viscosity may be, times step over cell squared, and a friction, times step: the time step stays stable. */
const MAX_VISCOSITY = 0.02;
const MAX_FRICTION = 0.2;

const LINKS = ["uThroughCell", "vThroughCell", "uThroughCorner", "vThroughCorner"] as const;
const FRICTION = ["uFriction", "vFriction"] as const;
type Held = (typeof LINKS)[number] | (typeof FRICTION)[number];

/**
 * Takes hold of a solver's friction and links, before its first step.
 * @returns to be called every few steps, after `here` has looked at the flow
 */
export function applyClosure(solver: FlowSolver, here: AtCells, { turn, slow, eddy }: Closure): () => void {
  if (turn === 0 && slow === 0 && eddy === 0) return () => undefined;
  const { arrays: a } = solver;
  const { nx, ny, dx, depth } = solver.mesh;
  // The vector kernel may no longer take one number for many cells.
  for (let k = 0; k < a.vFriction.length; k++) a.vFriction[k]! *= 1 + 1e-12;
  const own = Object.fromEntries(
    [...LINKS, ...FRICTION].map((name) => [name, Float64Array.from(a[name])]),
  ) as Record<Held, Float64Array>;
  const drag = new Float64Array(nx * ny);
  const mixing = new Float64Array(nx * ny);
  const { inside, cells, turning, slowing } = here;
  const metre = dx * 1e-3;
  return () => {
    const { dtOverDx, viscosityOverDx } = solver.settings;
    const step = dtOverDx * metre;
    const mostFriction = MAX_FRICTION / step;
    const mostViscosity = (MAX_VISCOSITY * metre ** 2) / step;
    for (const k of cells) {
      const across = (4 / Math.PI) * depth[k]! * 1e-3;
      const rate = Math.min(mostFriction, turn * turning[k]! + slow * slowing[k]!);
      drag[k]! += RENEWED * (rate - drag[k]!);
      if (eddy === 0) continue;
      const extra = Math.min(mostViscosity, eddy * across ** 2 * Math.hypot(turning[k]!, slowing[k]!));
      mixing[k]! += RENEWED * (extra / (viscosityOverDx * metre) - mixing[k]!);
    }
    const friction = (0.5 * metre) / viscosityOverDx;
    for (const k of cells) {
      const w = inside[k - 1] ? k - 1 : k;
      const s = inside[k - nx] ? k - nx : k;
      // a velocity that is given feels no friction
      if (a.uInverse[k]! > 0) a.uFriction[k] = own.uFriction[k]! + friction * (drag[k]! + drag[w]!);
      if (a.vInverse[k]! > 0) a.vFriction[k] = own.vFriction[k]! + friction * (drag[k]! + drag[s]!);
      if (eddy === 0) continue;
      const cell = 1 + mixing[k]!;
      const corner = 1 + 0.5 * (mixing[w]! + mixing[s]!);
      a.uThroughCell[k] = own.uThroughCell[k]! * cell;
      a.vThroughCell[k] = own.vThroughCell[k]! * cell;
      a.uThroughCorner[k] = own.uThroughCorner[k]! * corner;
      a.vThroughCorner[k] = own.vThroughCorner[k]! * corner;
    }
  };
}
