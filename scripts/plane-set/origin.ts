/** How blood of the lower vein spreads through the plane: 1 is blood from below, 0 blood from above, mixed across the lines of flow. */
import type { FlowSolver } from "../../src/sim/flow-solver/flow-solver.ts";
import type { AtCells } from "./at-cells.ts";

/** What mixes: a part of speed times the lumen's diameter, or of the rate of turning and slowing times its square. */
export interface Mixing {
  readonly by: "speed" | "bending";
  readonly part: number;
}

export interface Origin {
  readonly mixing: Mixing;
  /** Moves on by `seconds`. */
  advance(seconds: number): void;
  /** flow of lower-vein blood out through each opening since last asked (solver units times s) */
  taken(): number[];
}

/** Most of a cell's blood that may be exchanged at once: explicit steps stay stable. */
const MAX_EXCHANGE = 0.8;
/** Most that mixes, over the fastest blood's speed times the lumen's diameter: near a stagnation point blood turns infinitely fast. */
const MAX_MIXING = 0.1;

/** The faces that blood crosses in one direction, `step` places from cell to cell. */
function facesAlong(solver: FlowSolver, { inside }: AtCells, step: number): Int32Array {
  const open = step === 1 ? solver.mesh.west : solver.mesh.south;
  return Int32Array.from(open.keys()).filter((k) => open[k]! > 0 && (inside[k] || inside[k - step]));
}

export function trackOrigin(solver: FlowSolver, here: AtCells, mixing: Mixing): Origin {
  const { nx, ny, dx, beyond, depth, west, south } = solver.mesh;
  const { arrays: a, openings } = solver;
  const { inside, cells, speed, turning, slowing } = here;
  const metre = dx * 1e-3;
  const lower = openings.findIndex(({ opening }) => opening.name === "ivc");
  const free = Uint8Array.from(beyond, (cut) => (cut >= 0 && openings[cut]!.rule === "pressure" ? 1 : 0));
  const across = facesAlong(solver, here, 1);
  const up = facesAlong(solver, here, nx);
  const begun = Float64Array.from(beyond, (opening) => (opening === lower ? 1 : 0));
  let now = begun;
  let next = begun.slice();
  const spread = new Float64Array(nx * ny);
  let left = openings.map(() => 0);

  /** m/s: how far each cell's blood is mixed in all, and the greatest. */
  function mix(): number {
    let most = 0;
    for (const k of cells) {
      const wide = (4 / Math.PI) * depth[k]! * 1e-3;
      const rate = mixing.by === "speed" ? speed[k]! / wide : Math.hypot(turning[k]!, slowing[k]!);
      spread[k] = (wide * Math.min(mixing.part * wide * rate, MAX_MIXING * solver.fastest)) / metre;
      most = Math.max(most, spread[k]!);
    }
    return most;
  }

  /** What is carried from cell `from` to `to`, `before` lying upstream of both: van Leer's limiter. */
  function value(from: number, to: number, before: number, isOpen: boolean): number {
    if (beyond[from]! >= 0) return free[from] ? now[to]! : now[from]!;
    const rise = now[to]! - now[from]!;
    if (rise === 0 || !isOpen || beyond[to]! >= 0) return now[from]!;
    const ratio = (now[from]! - now[before]!) / rise;
    return now[from]! + (ratio > 0 ? (ratio / (1 + ratio)) * rise : 0);
  }

  function pass(faces: Int32Array, step: number, seconds: number): void {
    const [open, areas, speeds] = step === 1 ? [west, a.westArea, a.u] : [south, a.southArea, a.v];
    const rate = seconds / metre;
    for (const k of faces) {
      const b = k - step;
      const flow = areas[k]! * speeds[k]!;
      const carried =
        flow > 0 ? value(b, k, b - step, open[b]! > 0) : value(k, b, k + step, open[k + step]! > 0);
      let passed = flow * carried;
      if (inside[k] && inside[b]) passed -= areas[k]! * 0.5 * (spread[k]! + spread[b]!) * (now[k]! - now[b]!);
      else {
        const isOut = inside[b];
        left[isOut ? beyond[k]! : beyond[b]!]! += seconds * (isOut ? passed : -passed);
      }
      if (inside[k]) next[k]! += rate * a.pInverse[k]! * (passed - flow * now[k]!);
      if (inside[b]) next[b]! -= rate * a.pInverse[b]! * (passed - flow * now[b]!);
    }
  }

  return {
    mixing,
    advance(seconds) {
      const parts = Math.ceil(((seconds / metre) * (2 * solver.fastest + 4 * mix())) / MAX_EXCHANGE);
      for (let n = 0; n < parts; n++) {
        next.set(now);
        pass(across, 1, seconds / parts);
        pass(up, nx, seconds / parts);
        [now, next] = [next, now];
      }
    },
    taken() {
      const before = left;
      left = openings.map(() => 0);
      return before;
    },
  };
}
