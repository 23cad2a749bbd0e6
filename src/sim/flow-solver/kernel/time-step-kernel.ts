// One time step for a vector of cells at a time, in AssemblyScript: ../time-step.ts with every flux computed once, in single or double
// precision.
import {
  P,
  P_AHEAD,
  P_INVERSE,
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
  U_LOW,
  U_SMOOTH_CELL,
  U_SMOOTH_CORNER,
  U_STEP,
  V,
  V_AHEAD,
  V_BEYOND,
  V_CELL,
  V_CORNER,
  V_FLOW,
  V_FLUX,
  V_FRICTION,
  V_INVERSE,
  V_LOW,
  V_SMOOTH_CELL,
  V_SMOOTH_CORNER,
  V_STEP,
  WEST,
} from "./addresses";
import { add, advance, flux, mul, sub, toWest } from "./vectors";

/** One step in single precision; velocities keep the rest of their rounding in U_LOW and V_LOW. */
export function singles(
  nx: i32,
  ny: i32,
  spans: usize,
  swapped: i32,
  s: f64,
  nu: f64,
  soundSquared: f64,
  damping: f64,
  upstream: f64,
): void {
  sweep<f32>(nx, ny, spans, swapped, s, nu, soundSquared, damping, upstream);
}

/** One step in double precision. */
export function doubles(
  nx: i32,
  ny: i32,
  spans: usize,
  swapped: i32,
  s: f64,
  nu: f64,
  soundSquared: f64,
  damping: f64,
  upstream: f64,
): void {
  sweep<f64>(nx, ny, spans, swapped, s, nu, soundSquared, damping, upstream);
}

@inline function sweep<T>(
  nx: i32,
  ny: i32,
  spans: usize,
  swapped: i32,
  s: f64,
  nu: f64,
  soundSquared: f64,
  damping: f64,
  upstream: f64,
): void {
  for (let j = 2; j < ny - 2; j++) {
    let span = spans + (<usize>j << 3);
    let first = load<i32>(span);
    let last = load<i32>(span, 4);
    if (last > first) momentumRow<T>(nx, j, first, last, swapped, s as T, nu as T, upstream as T);
    span -= 8;
    first = load<i32>(span);
    last = load<i32>(span, 4);
    if (last > first) pressureRow<T>(nx, j - 1, first, last, (s * soundSquared) as T, damping as T);
  }
}

function momentumRow<T>(nx: i32, j: i32, first: i32, last: i32, swapped: i32, s: T, nu: T, upstream: T): void {
  const cell: usize = sizeof<T>();
  const row: usize = <usize>nx * cell;
  const start: usize = <usize>j * row;
  const end: usize = start + <usize>last * cell;
  // Ahead velocities are read from one pair of arrays and written to the other.
  const from: usize = swapped ? 2 * STRIDE : 0;
  const to: usize = swapped ? 0 : 2 * STRIDE;
  const step = v128.splat<T>(s);
  const shear = v128.splat<T>(nu);
  const wall = v128.splat<T>(s * nu);
  const damp = v128.splat<T>(((0.5 as T) * upstream) as T);
  const half = v128.splat<T>(0.5 as T);
  const quarter = v128.splat<T>(0.25 as T);
  const one = v128.splat<T>(1 as T);
  const zero = v128.splat<T>(0 as T);
  // The vector to the west of the row's first: only what its east side passes on is wanted.
  let k: usize = start + <usize>first * cell - 16;
  let uFlowWest = zero;
  let uFluxWest = zero;
  let vFlowWest = zero;
  let vFluxWest = zero;
  let northWest = zero;
  let within = false;
  for (; k < end; k += 16) {
    const a = k + from;
    const aN = a + row;
    const aS = a - row;
    const n = k + row;
    const b = k - row;
    const w = k - start;
    const uk = v128.load(a, U_AHEAD);
    const uE = v128.load(a + cell, U_AHEAD);
    const uW = v128.load(a - cell, U_AHEAD);
    const vk = v128.load(a, V_AHEAD);
    const vE = v128.load(a + cell, V_AHEAD);
    const vW = v128.load(a - cell, V_AHEAD);
    // Twice the flows; the halves are put in once below.
    const east = mul<T>(v128.load(k + cell, WEST), uE);
    const north = mul<T>(v128.load(n, SOUTH), v128.load(aN, V_AHEAD));
    const uFlowEast = add<T>(mul<T>(v128.load(k, WEST), uk), east);
    const vFlowEast = add<T>(mul<T>(v128.load(b + cell, WEST), v128.load(aS + cell, U_AHEAD)), east);
    const dE = sub<T>(uE, uk);
    const uFluxEast = flux<T>(
      dE,
      sub<T>(v128.load(a + 2 * cell, U_AHEAD), uW),
      v128.load(k, U_CELL),
      v128.load(k, U_SMOOTH_CELL),
      uFlowEast,
      shear,
      damp,
    );
    const vFluxEast = flux<T>(
      sub<T>(vE, vk),
      sub<T>(v128.load(a + 2 * cell, V_AHEAD), vW),
      v128.load(k + cell, V_CORNER),
      v128.load(k + cell, V_SMOOTH_CORNER),
      vFlowEast,
      shear,
      damp,
    );
    if (within) {
      const pk = v128.load(k, P_AHEAD);
      {
        const uN = v128.load(aN, U_AHEAD);
        const uS = v128.load(aS, U_AHEAD);
        const flowNorth = add<T>(toWest<T>(northWest, north), north);
        const fluxNorth = flux<T>(
          sub<T>(uN, uk),
          sub<T>(v128.load(aN + row, U_AHEAD), uS),
          v128.load(n, U_CORNER),
          v128.load(n, U_SMOOTH_CORNER),
          flowNorth,
          shear,
          damp,
        );
        const flowSouth = v128.load(w, U_FLOW);
        const fluxSouth = v128.load(w, U_FLUX);
        v128.store(w, flowNorth, U_FLOW);
        v128.store(w, fluxNorth, U_FLUX);
        const flowWest = toWest<T>(uFlowWest, uFlowEast);
        const fluxes = add<T>(sub<T>(uFluxEast, toWest<T>(uFluxWest, uFluxEast)), sub<T>(fluxNorth, fluxSouth));
        let carried = add<T>(
          sub<T>(mul<T>(uFlowEast, uE), mul<T>(flowWest, uW)),
          sub<T>(mul<T>(flowNorth, uN), mul<T>(flowSouth, uS)),
        );
        const beyond = v128.load(k, U_BEYOND);
        const loss = v128.load(k, U_STEP);
        const old = v128.load(k, U);
        let held = mul<T>(wall, v128.load(k, U_FRICTION));
        // Few cells lie at an outlet or where the depth steps up.
        if (v128.any_true(v128.or(beyond, loss))) {
          const grows = add<T>(sub<T>(uFlowEast, flowWest), sub<T>(flowNorth, flowSouth));
          carried = sub<T>(carried, mul<T>(mul<T>(beyond, uk), grows));
          held = add<T>(held, mul<T>(step, v128.pmax<T>(mul<T>(loss, old), zero)));
        }
        const gradient = mul<T>(v128.load(k, WEST), sub<T>(pk, v128.load(k - cell, P_AHEAD)));
        const push = sub<T>(sub<T>(fluxes, mul<T>(quarter, carried)), gradient);
        const change = v128.div<T>(
          sub<T>(mul<T>(mul<T>(step, v128.load(k, U_INVERSE)), push), mul<T>(held, old)),
          add<T>(one, held),
        );
        advance<T>(k, to, U, U_LOW, U_AHEAD, old, change, half);
      }
      {
        const vN = v128.load(aN, V_AHEAD);
        const vS = v128.load(aS, V_AHEAD);
        const flowNorth = add<T>(mul<T>(v128.load(k, SOUTH), vk), north);
        const fluxNorth = flux<T>(
          sub<T>(vN, vk),
          sub<T>(v128.load(aN + row, V_AHEAD), vS),
          v128.load(k, V_CELL),
          v128.load(k, V_SMOOTH_CELL),
          flowNorth,
          shear,
          damp,
        );
        const flowSouth = v128.load(w, V_FLOW);
        const fluxSouth = v128.load(w, V_FLUX);
        v128.store(w, flowNorth, V_FLOW);
        v128.store(w, fluxNorth, V_FLUX);
        const flowWest = toWest<T>(vFlowWest, vFlowEast);
        const fluxes = add<T>(sub<T>(vFluxEast, toWest<T>(vFluxWest, vFluxEast)), sub<T>(fluxNorth, fluxSouth));
        let carried = add<T>(
          sub<T>(mul<T>(vFlowEast, vE), mul<T>(flowWest, vW)),
          sub<T>(mul<T>(flowNorth, vN), mul<T>(flowSouth, vS)),
        );
        const beyond = v128.load(k, V_BEYOND);
        const loss = v128.load(k, V_STEP);
        const old = v128.load(k, V);
        let held = mul<T>(wall, v128.load(k, V_FRICTION));
        if (v128.any_true(v128.or(beyond, loss))) {
          const grows = add<T>(sub<T>(vFlowEast, flowWest), sub<T>(flowNorth, flowSouth));
          carried = sub<T>(carried, mul<T>(mul<T>(beyond, vk), grows));
          held = add<T>(held, mul<T>(step, v128.pmax<T>(mul<T>(loss, old), zero)));
        }
        const gradient = mul<T>(v128.load(k, SOUTH), sub<T>(pk, v128.load(b, P_AHEAD)));
        const push = sub<T>(sub<T>(fluxes, mul<T>(quarter, carried)), gradient);
        const change = v128.div<T>(
          sub<T>(mul<T>(mul<T>(step, v128.load(k, V_INVERSE)), push), mul<T>(held, old)),
          add<T>(one, held),
        );
        advance<T>(k, to, V, V_LOW, V_AHEAD, old, change, half);
      }
    }
    within = true;
    uFlowWest = uFlowEast;
    uFluxWest = uFluxEast;
    vFlowWest = vFlowEast;
    vFluxWest = vFluxEast;
    northWest = north;
  }
}

function pressureRow<T>(nx: i32, j: i32, first: i32, last: i32, rate: T, damping: T): void {
  const cell: usize = sizeof<T>();
  const row: usize = <usize>nx * cell;
  const begin: usize = <usize>j * row + <usize>first * cell;
  const end: usize = <usize>j * row + <usize>last * cell;
  const rates = v128.splat<T>((-rate) as T);
  const ahead = v128.splat<T>(damping);
  for (let k: usize = begin; k < end; k += 16) {
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
