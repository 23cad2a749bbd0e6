/** Changes of the picture that are not the model's own: they fade, they never jump or flash. */

/** s: shortest fade of anything large */
const FADE = 0.45;

/**
 * One step of an easing towards `target`: exponential, arriving (within 2 %) after about `duration` seconds.
 * `elapsed` = Infinity arrives at once.
 */
export function ease(current: number, target: number, elapsed: number, duration = FADE): number {
  if (!Number.isFinite(elapsed)) return target;
  const next = target + (current - target) * Math.exp((-4 * elapsed) / duration);
  return Math.abs(next - target) < 1e-4 * Math.max(1, Math.abs(target)) ? target : next;
}
