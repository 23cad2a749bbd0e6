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
@inline export function flux<T>(
  d: v128,
  wide: v128,
  link: v128,
  smooth: v128,
  flow: v128,
  shear: v128,
  third: v128,
  inner: v128,
  lowest: v128,
  positive: v128,
): v128 {
  const bent = sub<T>(mul<T>(smooth, sub<T>(mul<T>(third, wide), mul<T>(inner, d))), mul<T>(lowest, d));
  return sub<T>(mul<T>(mul<T>(shear, link), d), mul<T>(v128.and(flow, positive), bent));
}

/** The same where no wall is near: `shear` times one depth, and the two kinds of damping of the inner difference added up in `both`. */
@inline export function plainFlux<T>(d: v128, wide: v128, flow: v128, shear: v128, third: v128, both: v128, positive: v128): v128 {
  const bent = sub<T>(mul<T>(third, wide), mul<T>(both, d));
  return sub<T>(mul<T>(shear, d), mul<T>(v128.and(flow, positive), bent));
}
