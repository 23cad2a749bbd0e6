/** When the readings take their samples: so many evenly spaced ticks in a period, whatever the step, so that the mean over it is exact. */
import type { FlowSolver } from "../flow-solver/flow-solver.ts";

/** Counts a solver's steps towards the next sample. */
export interface SampleClock {
  /** Ticks of this period that have come. */
  readonly tick: number;
  /** s in a period */
  readonly length: number;
  /** Steps until the next sample. */
  readonly due: number;
  /** A period of so many s (least 0.001) begins now. */
  begin(seconds: number): void;
  /** Whether these steps have brought a sample; `next` follows once it is taken. */
  passed(steps: number): boolean;
  next(): void;
  /** Within so many steps: after how many each sample is due. */
  within(steps: number): readonly number[];
}

/** Begins with a period of 1 s; `ticks`: samples in a period. */
export function sampleClock(solver: Pick<FlowSolver, "time" | "step">, ticks: number): SampleClock {
  let length = 1;
  let begun = 0;
  let tick = 0;
  let due = 1;
  const stepsUntil = (from: number, count: number, time: number) =>
    Math.max(1, Math.round((from + (count * length) / ticks - time) / solver.step));
  const plan = () => {
    due = stepsUntil(begun, tick + 1, solver.time);
  };
  return {
    get tick() {
      return tick;
    },
    get length() {
      return length;
    },
    get due() {
      return Math.max(1, due);
    },
    begin(seconds) {
      length = Math.max(seconds, 1e-3);
      begun = solver.time;
      tick = 0;
      plan();
    },
    passed(steps) {
      due -= steps;
      if (due > 0) return false;
      tick++;
      return true;
    },
    next() {
      if (tick === ticks) {
        begun += length;
        tick = 0;
      }
      plan();
    },
    within(steps) {
      const found: number[] = [];
      let [from, count, time] = [begun, tick, solver.time];
      for (let next = Math.max(1, due), at = next; at <= steps; at += next) {
        found.push(at);
        time += next * solver.step;
        if (++count === ticks) [from, count] = [from + length, 0];
        next = stepsUntil(from, count + 1, time);
      }
      return found;
    },
  };
}
