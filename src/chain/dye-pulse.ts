/** One pulse of dye at a time, and how it and those after it wash out. */
import {
  beginDye,
  recordWashOut,
  type TracerCloud,
  type WashOut,
  type WashOutSpread,
  washOutSpread,
} from "../sim/tracers/index.ts";

/** s of blood time for which a pulse of dye enters */
const PULSE = 0.5;
/** s after which a wash-out curve ends, whatever is left */
const LONGEST_CURVE = 60;

export interface DyePulse {
  /** null before the first pulse */
  readonly washOut: WashOut | null;
  /** undefined until all pulses have left */
  readonly spread: WashOutSpread | undefined;
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
    get spread() {
      return washOut ? washOutSpread(washOut) : undefined;
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
