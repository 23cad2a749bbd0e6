// One time step for pairs of cells: the vector form of ../time-step.ts, in AssemblyScript.
// Array numbers follow ../array-layout.ts. Memory: arrays from `base`, each `count` doubles; row spans before them.

@inline function at(base: usize, count: i32, array: i32): usize {
  return base + ((<usize>array * <usize>count) << 3);
}
@inline function L(p: usize): v128 {
  return v128.load(p);
}
@inline function add(a: v128, b: v128): v128 {
  return f64x2.add(a, b);
}
@inline function sub(a: v128, b: v128): v128 {
  return f64x2.sub(a, b);
}
@inline function mul(a: v128, b: v128): v128 {
  return f64x2.mul(a, b);
}

export function sweep(
  nx: i32,
  ny: i32,
  spans: usize,
  base: usize,
  count: i32,
  swapped: i32,
  dtOverDx: f64,
  viscosityOverDx: f64,
  soundSpeedSquared: f64,
  soundDamping: f64,
  upstream: f64,
): void {
  for (let j = 2; j < ny - 2; j++) {
    let first = load<i32>(spans + (<usize>(2 * j) << 2));
    let last = load<i32>(spans + (<usize>(2 * j + 1) << 2));
    if (last > first)
      momentumRow(nx, j * nx + first, j * nx + last, base, count, swapped, dtOverDx, viscosityOverDx, upstream);
    first = load<i32>(spans + (<usize>(2 * j - 2) << 2));
    last = load<i32>(spans + (<usize>(2 * j - 1) << 2));
    if (last > first)
      pressureRow(nx, (j - 1) * nx + first, (j - 1) * nx + last, base, count, dtOverDx * soundSpeedSquared, soundDamping);
  }
}

function momentumRow(
  nx: i32,
  first: i32,
  last: i32,
  base: usize,
  count: i32,
  swapped: i32,
  s: f64,
  nu: f64,
  eps: f64,
): void {
  const u = at(base, count, 0);
  const v = at(base, count, 1);
  const ua = at(base, count, swapped ? 5 : 3);
  const va = at(base, count, swapped ? 6 : 4);
  const un = at(base, count, swapped ? 3 : 5);
  const vn = at(base, count, swapped ? 4 : 6);
  const pa = at(base, count, 7);
  const wa = at(base, count, 8);
  const sa = at(base, count, 9);
  const ui = at(base, count, 10);
  const vi = at(base, count, 11);
  const ucell = at(base, count, 13);
  const ucorner = at(base, count, 14);
  const vcell = at(base, count, 15);
  const vcorner = at(base, count, 16);
  const uf = at(base, count, 17);
  const vf = at(base, count, 18);
  const us = at(base, count, 19);
  const vs = at(base, count, 20);
  const usc = at(base, count, 21);
  const usk = at(base, count, 22);
  const vsc = at(base, count, 23);
  const vsk = at(base, count, 24);
  const by = at(base, count, 25);
  const row: usize = <usize>nx << 3;
  const half = f64x2.splat(0.5);
  const most = f64x2.splat(2.75);
  const one = f64x2.splat(1);
  const oneHalf = f64x2.splat(1.5);
  const zero = f64x2.splat(0);
  const sv = f64x2.splat(s);
  const nuv = f64x2.splat(nu);
  const wall = f64x2.splat(s * nu);
  const epsv = f64x2.splat(eps);
  const end: usize = <usize>last << 3;
  for (let k: usize = <usize>first << 3; k < end; k += 16) {
    const n = k + row;
    const b = k - row;
    const uk = L(ua + k);
    const vk = L(va + k);
    const uE = L(ua + k + 8);
    const uW = L(ua + k - 8);
    const uN = L(ua + n);
    const uS = L(ua + b);
    const vE = L(va + k + 8);
    const vW = L(va + k - 8);
    const vN = L(va + n);
    const vS = L(va + b);
    // Twice the flows; the halves are put in once below.
    const west = mul(L(wa + k), uk);
    const south = mul(L(sa + k), vk);
    const east = mul(L(wa + k + 8), uE);
    const north = mul(L(sa + n), vN);
    const below = mul(L(wa + b), uS);
    const flowEast = add(west, east);
    const flowWest = add(west, mul(L(wa + k - 8), uW));
    const flowNorth = add(south, north);
    const flowSouth = add(south, mul(L(sa + b), vS));
    const upCorner = add(mul(L(sa + k - 8), vW), south);
    const upCornerNorth = add(mul(L(sa + n - 8), L(va + n - 8)), north);
    const rightCorner = add(below, west);
    const rightCornerEast = add(mul(L(wa + b + 8), L(ua + b + 8)), east);
    const quarter = mul(half, half);
    const e = mul(epsv, half);

    let dE = sub(uE, uk);
    let dW = sub(uk, uW);
    let dN = sub(uN, uk);
    let dS = sub(uk, uS);
    let advection = add(sub(mul(flowEast, uE), mul(flowWest, uW)), sub(mul(upCornerNorth, uN), mul(upCorner, uS)));
    let grows = add(sub(flowEast, flowWest), sub(upCornerNorth, upCorner));
    const bk = L(by + k);
    advection = mul(quarter, sub(advection, mul(mul(add(bk, L(by + k - 8)), uk), grows)));
    let bent = mul(f64x2.abs(flowEast), sub(mul(L(usc + k), sub(sub(L(ua + k + 16), uW), mul(most, dE))), mul(quarter, dE)));
    bent = sub(bent, mul(f64x2.abs(flowWest), sub(mul(L(usc + k - 8), sub(sub(uE, L(ua + k - 16)), mul(most, dW))), mul(quarter, dW))));
    bent = add(bent, mul(f64x2.abs(upCornerNorth), sub(mul(L(usk + n), sub(sub(L(ua + n + row), uS), mul(most, dN))), mul(quarter, dN))));
    bent = sub(bent, mul(f64x2.abs(upCorner), sub(mul(L(usk + k), sub(sub(uN, L(ua + b - row)), mul(most, dS))), mul(quarter, dS))));
    advection = add(advection, mul(e, bent));
    let diffusion = sub(mul(L(ucell + k), dE), mul(L(ucell + k - 8), dW));
    diffusion = add(diffusion, sub(mul(L(ucorner + n), dN), mul(L(ucorner + k), dS)));
    const pk = L(pa + k);
    let pressureGradient = mul(L(wa + k), sub(pk, L(pa + k - 8)));
    const uOld = L(u + k);
    let fresh = add(uOld, mul(mul(sv, L(ui + k)), sub(sub(mul(nuv, diffusion), advection), pressureGradient)));
    let held = add(one, mul(wall, L(uf + k)));
    held = add(held, mul(sv, f64x2.pmax(mul(L(us + k), uOld), zero)));
    fresh = f64x2.div(fresh, held);
    v128.store(u + k, fresh);
    v128.store(un + k, sub(mul(oneHalf, fresh), mul(half, uOld)));

    dE = sub(vE, vk);
    dW = sub(vk, vW);
    dN = sub(vN, vk);
    dS = sub(vk, vS);
    advection = add(sub(mul(rightCornerEast, vE), mul(rightCorner, vW)), sub(mul(flowNorth, vN), mul(flowSouth, vS)));
    grows = add(sub(rightCornerEast, rightCorner), sub(flowNorth, flowSouth));
    advection = mul(quarter, sub(advection, mul(mul(add(bk, L(by + b)), vk), grows)));
    bent = mul(f64x2.abs(rightCornerEast), sub(mul(L(vsk + k + 8), sub(sub(L(va + k + 16), vW), mul(most, dE))), mul(quarter, dE)));
    bent = sub(bent, mul(f64x2.abs(rightCorner), sub(mul(L(vsk + k), sub(sub(vE, L(va + k - 16)), mul(most, dW))), mul(quarter, dW))));
    bent = add(bent, mul(f64x2.abs(flowNorth), sub(mul(L(vsc + k), sub(sub(L(va + n + row), vS), mul(most, dN))), mul(quarter, dN))));
    bent = sub(bent, mul(f64x2.abs(flowSouth), sub(mul(L(vsc + b), sub(sub(vN, L(va + b - row)), mul(most, dS))), mul(quarter, dS))));
    advection = add(advection, mul(e, bent));
    diffusion = sub(mul(L(vcorner + k + 8), dE), mul(L(vcorner + k), dW));
    diffusion = add(diffusion, sub(mul(L(vcell + k), dN), mul(L(vcell + b), dS)));
    pressureGradient = mul(L(sa + k), sub(pk, L(pa + b)));
    const vOld = L(v + k);
    fresh = add(vOld, mul(mul(sv, L(vi + k)), sub(sub(mul(nuv, diffusion), advection), pressureGradient)));
    held = add(one, mul(wall, L(vf + k)));
    held = add(held, mul(sv, f64x2.pmax(mul(L(vs + k), vOld), zero)));
    fresh = f64x2.div(fresh, held);
    v128.store(v + k, fresh);
    v128.store(vn + k, sub(mul(oneHalf, fresh), mul(half, vOld)));
  }
}

function pressureRow(nx: i32, first: i32, last: i32, base: usize, count: i32, rate: f64, ahead: f64): void {
  const u = at(base, count, 0);
  const v = at(base, count, 1);
  const p = at(base, count, 2);
  const pa = at(base, count, 7);
  const wa = at(base, count, 8);
  const sa = at(base, count, 9);
  const pi = at(base, count, 12);
  const row: usize = <usize>nx << 3;
  const ratev = f64x2.splat(-rate);
  const aheadv = f64x2.splat(ahead);
  const end: usize = <usize>last << 3;
  for (let k: usize = <usize>first << 3; k < end; k += 16) {
    const across = sub(mul(L(wa + k + 8), L(u + k + 8)), mul(L(wa + k), L(u + k)));
    const up = sub(mul(L(sa + k + row), L(v + k + row)), mul(L(sa + k), L(v + k)));
    const change = mul(mul(ratev, L(pi + k)), add(across, up));
    const fresh = add(L(p + k), change);
    v128.store(p + k, fresh);
    v128.store(pa + k, add(fresh, mul(aheadv, change)));
  }
}
