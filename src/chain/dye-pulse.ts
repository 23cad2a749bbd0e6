/** One pulse of dye at a time, and how it washes out. */
import {
  beginDye,
  recordWashOut,
  type TracerCloud,
  type WashOut,
  washOutSeconds,
} from "../sim/tracers/index.ts";

/** s of blood time for which a pulse of dye enters */
const PULSE = 0.5;
/** s after which a wash-out curve ends, whatever is left */
const LONGEST_CURVE = 60;

export interface DyePulse {
  /** null before the first pulse */
  readonly washOut: WashOut | null;
  /** s until nine tenths of the last pulse had left; undefined while they have not */
  readonly seconds: number | undefined;
  /** Releases a pulse; earlier dye loses its mark. */
  begin(): void;
  /** Tracers have moved by `seconds`. */
  passed(seconds: number): void;
}

export function dyePulse(cloud: TracerCloud): DyePulse {
  let washOut: WashOut | null = null;
  let since = 0;
  return {
    get washOut() {
      return washOut;
    },
    get seconds() {
      return washOut ? washOutSeconds(washOut) : undefined;
    },
    begin() {
      washOut = beginDye(cloud, PULSE);
      since = 0;
    },
    passed(seconds) {
      if (!washOut || since > LONGEST_CURVE) return;
      since += seconds;
      recordWashOut(washOut, cloud, since);
    },
  };
}
