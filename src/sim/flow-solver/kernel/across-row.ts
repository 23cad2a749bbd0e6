// One row of u, on west faces: ../time-step.ts with every flux computed once, in single or double precision.
import {
  P_AHEAD,
  SOUTH,
  STRIDE,
  U,
  U_AHEAD,
  U_BEYOND,
  U_CELL,
  U_CORNER,
  U_FLOW,
  U_FLUX,
  U_FRICTION,
  U_INVERSE,
  U_PUSH,
  U_SMOOTH_CELL,
  U_SMOOTH_CORNER,
  U_STEP,
  V_AHEAD,
  WEST,
} from "./addresses";
import { keep } from "./kept-velocity";
import {
  alikeRun,
  BOTH,
  HELD,
  INNER,
  LOWEST,
  ONE,
  OPEN,
  OPEN_SHEAR,
  POSITIVE,
  PUSHED,
  QUARTER,
  SHEAR,
  STEP,
  THIRD,
  WALL,
} from "./step-constants";
import { add, flux, mul, plainFlux, sub, toWest } from "./vectors";

/**
 * Runs of whole vectors in row `j`: pairs of first and last+1 cell at `runs`, `count` of them; the last is negative where all cells of a run
 * are alike (no wall near, one depth): those need no coefficients of their own. `shared`: later steps of sound take the same push.
 */
export function acrossRow<T>(
  nx: i32,
  j: i32,
  runs: usize,
  count: i32,
  swapped: i32,
  shared: bool,
): void {
  const cell: usize = sizeof<T>();
  const row: usize = <usize>nx * cell;
  const start: usize = <usize>j * row;
  // Ahead velocities are read from one pair of arrays and written to the other.
  const from: usize = swapped ? 2 * STRIDE : 0;
  const to: usize = swapped ? 0 : 2 * STRIDE;
  const third = v128.load(THIRD);
  const lowest = v128.load(LOWEST);
  const positive = v128.load(POSITIVE);
  const quarter = v128.load(QUARTER);
  let flowBefore = v128.splat<T>(0 as T);
  let fluxBefore = v128.splat<T>(0 as T);
  let reached: usize = 0;
  for (let run: i32 = 0; run < count; run++) {
    const last = load<i32>(runs + (<usize>run << 3), 4);
    let k: usize = start + <usize>load<i32>(runs + (<usize>run << 3)) * cell;
    const end: usize = start + <usize>(last < 0 ? -last : last) * cell;
    if (k != reached) {
      // Of the vector to the west of a run only what its east side passes on is wanted.
      flowBefore = eastFlow<T>(k - 16, k - 16 + from, row);
      fluxBefore = eastFlux<T>(k - 16, k - 16 + from, flowBefore, v128.load(SHEAR), third, v128.load(INNER), lowest, positive);
    }
    reached = end;
    if (last > 0) {
      const step = v128.load(STEP);
      const shear = v128.load(SHEAR);
      const wall = v128.load(WALL);
      const inner = v128.load(INNER);
      const one = v128.load(ONE);
      for (; k < end; k += 16) {
        const a = k + from;
        const n = k + row;
        const w = k - start;
        const now = v128.load(a, U_AHEAD);
        const valueNorth = v128.load(a + row, U_AHEAD);
        const valueSouth = v128.load(a - row, U_AHEAD);
        const flowEast = eastFlow<T>(k, a, row);
        const fluxEast = eastFlux<T>(k, a, flowEast, shear, third, inner, lowest, positive);
        const flowWest = toWest<T>(flowBefore, flowEast);
        let push = sub<T>(fluxEast, toWest<T>(fluxBefore, fluxEast));
        flowBefore = flowEast;
        fluxBefore = fluxEast;
        const flowNorth = add<T>(
      mul<T>(v128.load(n - cell, SOUTH), v128.load(a + row - cell, V_AHEAD)),
      mul<T>(v128.load(n, SOUTH), v128.load(a + row, V_AHEAD)),
    );
        const fluxNorth = flux<T>(
          sub<T>(valueNorth, now),
          sub<T>(v128.load(a + 2 * row, U_AHEAD), valueSouth),
          v128.load(n, U_CORNER),
          v128.load(n, U_SMOOTH_CORNER),
          flowNorth,
          shear,
          third,
          inner,
          lowest,
          positive,
        );
        const flowSouth = v128.load(w, U_FLOW);
        push = add<T>(push, sub<T>(fluxNorth, v128.load(w, U_FLUX)));
        v128.store(w, flowNorth, U_FLOW);
        v128.store(w, fluxNorth, U_FLUX);
        let carried = add<T>(
          sub<T>(mul<T>(flowEast, v128.load(a + cell, U_AHEAD)), mul<T>(flowWest, v128.load(a - cell, U_AHEAD))),
          sub<T>(mul<T>(flowNorth, valueNorth), mul<T>(flowSouth, valueSouth)),
        );
        const beyond = v128.load(k, U_BEYOND);
        const loss = v128.load(k, U_STEP);
        const old = v128.load(k, U);
        let held = mul<T>(wall, v128.load(k, U_FRICTION));
        // Few cells lie at an outlet or where the depth steps up.
        if (v128.any_true(v128.or(beyond, loss))) {
          const grows = add<T>(sub<T>(flowEast, flowWest), sub<T>(flowNorth, flowSouth));
          carried = sub<T>(carried, mul<T>(mul<T>(beyond, now), grows));
          held = add<T>(held, mul<T>(step, v128.pmax<T>(mul<T>(loss, old), v128.splat<T>(0 as T))));
        }
        push = sub<T>(push, mul<T>(quarter, carried));
        if (shared) v128.store(k, push, U_PUSH);
        const slope = sub<T>(v128.load(k, P_AHEAD), v128.load(k - cell, P_AHEAD));
        push = sub<T>(push, mul<T>(v128.load(k, WEST), slope));
        const change = v128.div<T>(
          sub<T>(mul<T>(mul<T>(step, v128.load(k, U_INVERSE)), push), mul<T>(held, old)),
          add<T>(one, held),
        );
        keep<T>(k, to, old, change, !shared);
      }
    } else {
      alikeRun<T>(load<T>(k, WEST), load<T>(k, U_FRICTION), load<T>(k, U_INVERSE));
      const open = v128.load(OPEN);
      const shear = v128.load(OPEN_SHEAR);
      const pushed = v128.load(PUSHED);
      const held = v128.load(HELD);
      const both = v128.load(BOTH);
      for (; k < end; k += 16) {
        const a = k + from;
        const w = k - start;
        const now = v128.load(a, U_AHEAD);
        const valueEast = v128.load(a + cell, U_AHEAD);
        const valueWest = v128.load(a - cell, U_AHEAD);
        const valueNorth = v128.load(a + row, U_AHEAD);
        const valueSouth = v128.load(a - row, U_AHEAD);
        const flowEast = mul<T>(open, add<T>(now, valueEast));
        const fluxEast = plainFlux<T>(
          sub<T>(valueEast, now),
          sub<T>(v128.load(a + 2 * cell, U_AHEAD), valueWest),
          flowEast,
          shear,
          third,
          both,
          positive,
        );
        const flowWest = toWest<T>(flowBefore, flowEast);
        let push = sub<T>(fluxEast, toWest<T>(fluxBefore, fluxEast));
        flowBefore = flowEast;
        fluxBefore = fluxEast;
        const flowNorth = mul<T>(open, add<T>(v128.load(a + row - cell, V_AHEAD), v128.load(a + row, V_AHEAD)));
        const fluxNorth = plainFlux<T>(
          sub<T>(valueNorth, now),
          sub<T>(v128.load(a + 2 * row, U_AHEAD), valueSouth),
          flowNorth,
          shear,
          third,
          both,
          positive,
        );
        const flowSouth = v128.load(w, U_FLOW);
        push = add<T>(push, sub<T>(fluxNorth, v128.load(w, U_FLUX)));
        v128.store(w, flowNorth, U_FLOW);
        v128.store(w, fluxNorth, U_FLUX);
        const carried = add<T>(
          sub<T>(mul<T>(flowEast, valueEast), mul<T>(flowWest, valueWest)),
          sub<T>(mul<T>(flowNorth, valueNorth), mul<T>(flowSouth, valueSouth)),
        );
        push = sub<T>(push, mul<T>(quarter, carried));
        if (shared) v128.store(k, push, U_PUSH);
        const slope = sub<T>(v128.load(k, P_AHEAD), v128.load(k - cell, P_AHEAD));
        push = sub<T>(push, mul<T>(open, slope));
        const old = v128.load(k, U);
        keep<T>(k, to, old, sub<T>(mul<T>(pushed, push), mul<T>(held, old)), !shared);
      }
    }
  }
}

/** Twice the flow through the middle of the cell. */
@inline function eastFlow<T>(k: usize, a: usize, row: usize): v128 {
  const cell: usize = sizeof<T>();
  return add<T>(
    mul<T>(v128.load(k, WEST), v128.load(a, U_AHEAD)),
    mul<T>(v128.load(k + cell, WEST), v128.load(a + cell, U_AHEAD)),
  );
}

/** Flux there. */
@inline function eastFlux<T>(
  k: usize,
  a: usize,
  flow: v128,
  shear: v128,
  third: v128,
  inner: v128,
  lowest: v128,
  positive: v128,
): v128 {
  const cell: usize = sizeof<T>();
  return flux<T>(
    sub<T>(v128.load(a + cell, U_AHEAD), v128.load(a, U_AHEAD)),
    sub<T>(v128.load(a + 2 * cell, U_AHEAD), v128.load(a - cell, U_AHEAD)),
    v128.load(k, U_CELL),
    v128.load(k, U_SMOOTH_CELL),
    flow,
    shear,
    third,
    inner,
    lowest,
    positive,
  );
}
