// Arithmetic on a vector of cells in single (four cells) or double precision (two).

@inline export function add<T>(a: v128, b: v128): v128 {
  return v128.add<T>(a, b);
}
@inline export function sub<T>(a: v128, b: v128): v128 {
  return v128.sub<T>(a, b);
}
@inline export function mul<T>(a: v128, b: v128): v128 {
  return v128.mul<T>(a, b);
}
/** The vector one cell to the west of `now`, of which `before` is the whole vector to the west. */
@inline export function toWest<T>(before: v128, now: v128): v128 {
  if (sizeof<T>() == 4) return v128.shuffle<f32>(before, now, 3, 4, 5, 6);
  return v128.shuffle<f64>(before, now, 1, 2);
}

/** Flux between two velocities that differ by `d`: shear over `link`, less damping of waves too short for the grid (`wide`: outer two differ by). */
@inline export function flux<T>(d: v128, wide: v128, link: v128, smooth: v128, flow: v128, nu: v128, e: v128): v128 {
  const bent = sub<T>(mul<T>(smooth, sub<T>(wide, mul<T>(v128.splat<T>(2.75 as T), d))), mul<T>(v128.splat<T>(0.25 as T), d));
  return sub<T>(mul<T>(mul<T>(nu, link), d), mul<T>(mul<T>(e, v128.abs<T>(flow)), bent));
}

/** Adds `change`; single precision carries what rounding leaves over, or a slow approach to the steady state would be lost. */
@inline export function advance<T>(
  k: usize,
  to: usize,
  at: usize,
  low: usize,
  ahead: usize,
  old: v128,
  change: v128,
  half: v128,
): void {
  let fresh: v128;
  if (sizeof<T>() == 4) {
    const whole = add<T>(v128.load(k + low), change);
    fresh = add<T>(old, whole);
    const taken = sub<T>(fresh, old);
    v128.store(k + low, sub<T>(whole, taken));
    v128.store(k + to + ahead, add<T>(fresh, mul<T>(half, taken)));
  } else {
    fresh = add<T>(old, change);
    v128.store(k + to + ahead, add<T>(fresh, mul<T>(half, change)));
  }
  v128.store(k + at, fresh);
}
