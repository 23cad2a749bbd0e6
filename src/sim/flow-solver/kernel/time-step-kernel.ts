// One time step for a vector of cells at a time, in AssemblyScript, in single or double precision.
import { acrossRow } from "./across-row";
import { P, P_AHEAD, P_INVERSE, RUNS, SOUTH, STRIDE, U, V, WEST } from "./addresses";
import { moveRow } from "./move-row";
import { PUSHED, stepConstants } from "./step-constants";
import { upRow } from "./up-row";
import { add, mul, sub } from "./vectors";

/** Step `part` of `soundSteps` in single precision; velocities keep the rest of their rounding in U_LOW and V_LOW. */
export function singles(
  nx: i32,
  ny: i32,
  swapped: i32,
  s: f64,
  nu: f64,
  soundSquared: f64,
  damping: f64,
  upstream: f64,
  soundSteps: i32,
  part: i32,
): void {
  sweep<f32>(nx, ny, swapped, s, nu, soundSquared, damping, upstream, soundSteps, part);
}

/** The same in double precision. */
export function doubles(
  nx: i32,
  ny: i32,
  swapped: i32,
  s: f64,
  nu: f64,
  soundSquared: f64,
  damping: f64,
  upstream: f64,
  soundSteps: i32,
  part: i32,
): void {
  sweep<f64>(nx, ny, swapped, s, nu, soundSquared, damping, upstream, soundSteps, part);
}

@inline function sweep<T>(
  nx: i32,
  ny: i32,
  swapped: i32,
  s: f64,
  nu: f64,
  soundSquared: f64,
  damping: f64,
  upstream: f64,
  soundSteps: i32,
  part: i32,
): void {
  stepConstants<T>(s as T, nu as T, upstream as T, soundSteps);
  const row: usize = <usize>nx * sizeof<T>();
  let runs: usize = RUNS;
  let runsBelow: usize = RUNS;
  let countBelow = 0;
  for (let j = 2; j < ny - 2; j++) {
    const count = load<i32>(runs);
    runs += 4;
    if (part == 0) {
      acrossRow<T>(nx, j, runs, count, swapped, soundSteps > 1);
      upRow<T>(nx, j, runs, count, swapped, soundSteps > 1);
    } else {
      moveRow<T>(<usize>j * row, runs, count, swapped, sizeof<T>(), 0, part == soundSteps - 1);
      moveRow<T>(<usize>j * row, runs, count, swapped, row, STRIDE, part == soundSteps - 1);
    }
    // A row's pressure may change once the faces above it are done: its old value is no longer needed.
    pressureRow<T>(nx, j - 1, runsBelow, countBelow, (s * soundSquared) as T, damping as T);
    runsBelow = runs;
    countBelow = count;
    runs += <usize>count << 3;
  }
}

function pressureRow<T>(nx: i32, j: i32, runs: usize, count: i32, rate: T, damping: T): void {
  const cell: usize = sizeof<T>();
  const row: usize = <usize>nx * cell;
  const start: usize = <usize>j * row;
  const rates = v128.splat<T>((-rate) as T);
  const ahead = v128.splat<T>(damping);
  for (let run: i32 = 0; run < count; run++) {
    const last = load<i32>(runs + (<usize>run << 3), 4);
    let k: usize = start + <usize>load<i32>(runs + (<usize>run << 3)) * cell;
    const end: usize = start + <usize>(last < 0 ? -last : last) * cell;
    if (last < 0) {
      // One area over one volume stands for four areas.
      v128.store(PUSHED, v128.splat<T>((-rate * load<T>(k, WEST) * load<T>(k, P_INVERSE)) as T));
      const pushed = v128.load(PUSHED);
      for (; k < end; k += 16) {
        const across = sub<T>(v128.load(k + cell, U), v128.load(k, U));
        const change = mul<T>(pushed, add<T>(across, sub<T>(v128.load(k + row, V), v128.load(k, V))));
        const fresh = add<T>(v128.load(k, P), change);
        v128.store(k, fresh, P);
        v128.store(k, add<T>(fresh, mul<T>(ahead, change)), P_AHEAD);
      }
      continue;
    }
    for (; k < end; k += 16) {
      const n = k + row;
      const across = sub<T>(
        mul<T>(v128.load(k + cell, WEST), v128.load(k + cell, U)),
        mul<T>(v128.load(k, WEST), v128.load(k, U)),
      );
      const up = sub<T>(mul<T>(v128.load(n, SOUTH), v128.load(n, V)), mul<T>(v128.load(k, SOUTH), v128.load(k, V)));
      const change = mul<T>(mul<T>(rates, v128.load(k, P_INVERSE)), add<T>(across, up));
      const fresh = add<T>(v128.load(k, P), change);
      v128.store(k, fresh, P);
      v128.store(k, add<T>(fresh, mul<T>(ahead, change)), P_AHEAD);
    }
  }
}
