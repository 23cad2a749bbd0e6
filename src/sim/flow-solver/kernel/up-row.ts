// One row of v, on south faces: ../time-step.ts with every flux computed once, in single or double precision.
import {
  P_AHEAD,
  SOUTH,
  STRIDE,
  U_AHEAD,
  V,
  V_AHEAD,
  V_BEYOND,
  V_CELL,
  V_CORNER,
  V_FLOW,
  V_FLUX,
  V_FRICTION,
  V_INVERSE,
  V_PUSH,
  V_SMOOTH_CELL,
  V_SMOOTH_CORNER,
  V_STEP,
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
export function upRow<T>(
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
        const now = v128.load(a, V_AHEAD);
        const valueNorth = v128.load(a + row, V_AHEAD);
        const valueSouth = v128.load(a - row, V_AHEAD);
        const flowEast = eastFlow<T>(k, a, row);
        const fluxEast = eastFlux<T>(k, a, flowEast, shear, third, inner, lowest, positive);
        const flowWest = toWest<T>(flowBefore, flowEast);
        let push = sub<T>(fluxEast, toWest<T>(fluxBefore, fluxEast));
        flowBefore = flowEast;
        fluxBefore = fluxEast;
        const flowNorth = add<T>(mul<T>(v128.load(k, SOUTH), now), mul<T>(v128.load(n, SOUTH), valueNorth));
        const fluxNorth = flux<T>(
          sub<T>(valueNorth, now),
          sub<T>(v128.load(a + 2 * row, V_AHEAD), valueSouth),
          v128.load(k, V_CELL),
          v128.load(k, V_SMOOTH_CELL),
          flowNorth,
          shear,
          third,
          inner,
          lowest,
          positive,
        );
        const flowSouth = v128.load(w, V_FLOW);
        push = add<T>(push, sub<T>(fluxNorth, v128.load(w, V_FLUX)));
        v128.store(w, flowNorth, V_FLOW);
        v128.store(w, fluxNorth, V_FLUX);
        let carried = add<T>(
          sub<T>(mul<T>(flowEast, v128.load(a + cell, V_AHEAD)), mul<T>(flowWest, v128.load(a - cell, V_AHEAD))),
          sub<T>(mul<T>(flowNorth, valueNorth), mul<T>(flowSouth, valueSouth)),
        );
        const beyond = v128.load(k, V_BEYOND);
        const loss = v128.load(k, V_STEP);
        const old = v128.load(k, V);
        let held = mul<T>(wall, v128.load(k, V_FRICTION));
        // Few cells lie at an outlet or where the depth steps up.
        if (v128.any_true(v128.or(beyond, loss))) {
          const grows = add<T>(sub<T>(flowEast, flowWest), sub<T>(flowNorth, flowSouth));
          carried = sub<T>(carried, mul<T>(mul<T>(beyond, now), grows));
          held = add<T>(held, mul<T>(step, v128.pmax<T>(mul<T>(loss, old), v128.splat<T>(0 as T))));
        }
        push = sub<T>(push, mul<T>(quarter, carried));
        if (shared) v128.store(k, push, V_PUSH);
        const slope = sub<T>(v128.load(k, P_AHEAD), v128.load(k - row, P_AHEAD));
        push = sub<T>(push, mul<T>(v128.load(k, SOUTH), slope));
        const change = v128.div<T>(
          sub<T>(mul<T>(mul<T>(step, v128.load(k, V_INVERSE)), push), mul<T>(held, old)),
          add<T>(one, held),
        );
        keep<T>(k + STRIDE, to, old, change, !shared);
      }
    } else {
      alikeRun<T>(load<T>(k, SOUTH), load<T>(k, V_FRICTION), load<T>(k, V_INVERSE));
      const open = v128.load(OPEN);
      const shear = v128.load(OPEN_SHEAR);
      const pushed = v128.load(PUSHED);
      const held = v128.load(HELD);
      const both = v128.load(BOTH);
      for (; k < end; k += 16) {
        const a = k + from;
        const w = k - start;
        const now = v128.load(a, V_AHEAD);
        const valueEast = v128.load(a + cell, V_AHEAD);
        const valueWest = v128.load(a - cell, V_AHEAD);
        const valueNorth = v128.load(a + row, V_AHEAD);
        const valueSouth = v128.load(a - row, V_AHEAD);
        const flowEast = mul<T>(open, add<T>(v128.load(a + cell - row, U_AHEAD), v128.load(a + cell, U_AHEAD)));
        const fluxEast = plainFlux<T>(
          sub<T>(valueEast, now),
          sub<T>(v128.load(a + 2 * cell, V_AHEAD), valueWest),
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
        const flowNorth = mul<T>(open, add<T>(now, valueNorth));
        const fluxNorth = plainFlux<T>(
          sub<T>(valueNorth, now),
          sub<T>(v128.load(a + 2 * row, V_AHEAD), valueSouth),
          flowNorth,
          shear,
          third,
          both,
          positive,
        );
        const flowSouth = v128.load(w, V_FLOW);
        push = add<T>(push, sub<T>(fluxNorth, v128.load(w, V_FLUX)));
        v128.store(w, flowNorth, V_FLOW);
        v128.store(w, fluxNorth, V_FLUX);
        const carried = add<T>(
          sub<T>(mul<T>(flowEast, valueEast), mul<T>(flowWest, valueWest)),
          sub<T>(mul<T>(flowNorth, valueNorth), mul<T>(flowSouth, valueSouth)),
        );
        push = sub<T>(push, mul<T>(quarter, carried));
        if (shared) v128.store(k, push, V_PUSH);
        const slope = sub<T>(v128.load(k, P_AHEAD), v128.load(k - row, P_AHEAD));
        push = sub<T>(push, mul<T>(open, slope));
        const old = v128.load(k, V);
        keep<T>(k + STRIDE, to, old, sub<T>(mul<T>(pushed, push), mul<T>(held, old)), !shared);
      }
    }
  }
}

/** Twice the flow through the corner to the east below. */
@inline function eastFlow<T>(k: usize, a: usize, row: usize): v128 {
  const cell: usize = sizeof<T>();
  return add<T>(
    mul<T>(v128.load(k + cell - row, WEST), v128.load(a + cell - row, U_AHEAD)),
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
    sub<T>(v128.load(a + cell, V_AHEAD), v128.load(a, V_AHEAD)),
    sub<T>(v128.load(a + 2 * cell, V_AHEAD), v128.load(a - cell, V_AHEAD)),
    v128.load(k + cell, V_CORNER),
    v128.load(k + cell, V_SMOOTH_CORNER),
    flow,
    shear,
    third,
    inner,
    lowest,
    positive,
  );
}
