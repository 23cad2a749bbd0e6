import { describe, expect, it } from "vitest";
import { sampleClock } from "../../../src/sim/flow-field/sample-clock.ts";

/** A solver of which only the time counts. */
function passing(step: number) {
  const solver = { time: 0, step };
  return { solver, pass: (steps: number) => (solver.time += steps * step) };
}

describe("the clock of samples", () => {
  it.each([0.0007, 0.00013, 0.011])(
    "foretells within a batch the samples that come, at steps of %f s",
    (step) => {
      const { solver, pass } = passing(step);
      const clock = sampleClock(solver, 12);
      clock.begin(0.3);
      for (let batch = 0; batch < 40; batch++) {
        const steps = 37 + 11 * batch;
        const foretold = clock.within(steps);
        const came: number[] = [];
        for (let done = 0; done < steps; ) {
          const count = Math.min(steps - done, clock.due);
          pass(count);
          done += count;
          if (!clock.passed(count)) continue;
          came.push(done);
          clock.next();
        }
        expect(came).toEqual(foretold);
      }
    },
  );

  it("spaces its ticks evenly over the period, whatever the step", () => {
    const { solver, pass } = passing(0.0011);
    const clock = sampleClock(solver, 10);
    clock.begin(0.5);
    const times: number[] = [];
    while (times.length < 30) {
      pass(1);
      if (!clock.passed(1)) continue;
      times.push(solver.time);
      clock.next();
    }
    times.forEach((time, n) => {
      expect(Math.abs(time - 0.05 * (n + 1))).toBeLessThanOrEqual(0.00056);
    });
  });
});
