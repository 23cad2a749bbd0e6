// Numbers that stay the same over a step or a run, all lanes alike. They lie in memory because the compiler of the browser would work out
// anew at each cell what it can see through.

const FIRST: usize = 32768;
export const STEP: usize = FIRST;
/** dx times the viscosity, and dt/dx times that */
export const SHEAR: usize = FIRST + 16;
export const WALL: usize = FIRST + 32;
/** damping: of outer differences, of the inner one in those, of inner ones alone, of both kinds of inner ones */
export const THIRD: usize = FIRST + 48;
export const INNER: usize = FIRST + 64;
export const LOWEST: usize = FIRST + 80;
export const BOTH: usize = FIRST + 96;
/** all bits but the sign */
export const POSITIVE: usize = FIRST + 112;
export const QUARTER: usize = FIRST + 128;
/** how much of the last change a velocity goes ahead by */
export const LEAD: usize = FIRST + 144;
export const ONE: usize = FIRST + 160;
/** of a run of cells that are alike: open area, viscous link, change for a push, change for a velocity held back */
export const OPEN: usize = FIRST + 176;
export const OPEN_SHEAR: usize = FIRST + 192;
export const PUSHED: usize = FIRST + 208;
export const HELD: usize = FIRST + 224;

/** Constants of a step; `soundSteps` of them share one push. */
export function stepConstants<T>(s: T, nu: T, upstream: T, soundSteps: i32): void {
  v128.store(STEP, v128.splat<T>(s));
  v128.store(SHEAR, v128.splat<T>(nu));
  v128.store(WALL, v128.splat<T>((s * nu) as T));
  v128.store(THIRD, v128.splat<T>(((0.5 as T) * upstream) as T));
  v128.store(INNER, v128.splat<T>(((1.375 as T) * upstream) as T));
  v128.store(LOWEST, v128.splat<T>(((0.125 as T) * upstream) as T));
  v128.store(BOTH, v128.splat<T>(((1.5 as T) * upstream) as T));
  v128.store(POSITIVE, v128.abs<T>(v128.not(v128.splat<i32>(0))));
  v128.store(QUARTER, v128.splat<T>(0.25 as T));
  v128.store(LEAD, v128.splat<T>(((0.5 as T) * (soundSteps as T)) as T));
  v128.store(ONE, v128.splat<T>(1 as T));
}

/** Constants of a run whose cells all have this area, friction and inverse volume. */
export function alikeRun<T>(area: T, friction: T, volumeInverse: T): void {
  const held = (load<T>(WALL) * friction) as T;
  const freed = ((1 as T) / ((1 as T) + held)) as T;
  v128.store(OPEN, v128.splat<T>(area));
  v128.store(OPEN_SHEAR, v128.splat<T>((load<T>(SHEAR) * area) as T));
  v128.store(PUSHED, v128.splat<T>((load<T>(STEP) * volumeInverse * freed) as T));
  v128.store(HELD, v128.splat<T>((held * freed) as T));
}
