/** Wall-clock time: how long an answer took, and when a long run must stop. */
const host = globalThis as { performance?: { now(): number } };

/** Wall-clock seconds after which a flow is answered as it is, "steady": false. */
export const MAX_WALL_SECONDS = 110;

/** s of wall-clock time since some fixed start; 0 where there is no clock. */
export const secondsNow = (): number => (host.performance?.now() ?? 0) / 1000;
