/** Wall-clock seconds, for reporting how long an answer took; no answer depends on it. */
const host = globalThis as { performance?: { now(): number } };

export const secondsNow = (): number => (host.performance?.now() ?? 0) / 1000;
