/** Wall-clock seconds: how long an answer took, and when a long one is given as far as it goes. */
const host = globalThis as { performance?: { now(): number } };

/** Wall-clock seconds after which a flow is answered as it stands, "steady": false. */
export const MAX_WALL_SECONDS = 110;

export const secondsNow = (): number => (host.performance?.now() ?? 0) / 1000;
