/** The small vessels of muscle that squeezes: held shut by its pressure, widened for it, and felt by no others. */
import { expect, test } from "vitest";
import { traceMean } from "../../../../src/sim/circulation/answer/trace-mean.ts";
import { exertion, widening } from "../../../../src/sim/circulation/regulation/exercise.ts";
import { within } from "../../../within.ts";
import { ADULT, answer, request } from "../requests.ts";

const working = (set: Record<string, number>) => {
  const { pressures, flows } = answer("extracardiac", ADULT, set).traces;
  const [into, legs, calf] = [flows.workingMuscle!, flows.legBed!, pressures.calf!];
  return { into, calf, rest: legs.map((all, i) => all - into[i]!) };
};
const meanWhere = (flow: Float64Array, here: (i: number) => boolean) =>
  traceMean(flow.filter((_, i) => i === 0 || here(i)));

test("blood enters a muscle between its squeezes, the less during them the harder it presses, and never runs back", () => {
  const shares = [0, 30, 60, 100].map((calfPumpPressure) => {
    const { into, calf } = working({ calfPumpPressure });
    expect(Math.min(...into)).toBeGreaterThanOrEqual(0);
    const most = Math.max(...calf);
    return meanWhere(into, (i) => calf[i]! >= 0.9 * most) / traceMean(into);
  });
  for (const [i, share] of shares.slice(1).entries()) expect(share).toBeLessThan(0.9 * shares[i]!);
  within(shares[3]!, 0, 0.05, "at 100 mmHg");
});

test("between squeezes more enters than at rest, so that over all as much does", () => {
  const [rest, work] = [working({}), working({ calfPumpPressure: 60 })];
  within(traceMean(work.into) / traceMean(rest.into), 0.9, 1.1, "mean");
  within(Math.max(...work.into) / Math.max(...rest.into), 1.2, 3, "greatest");
});

test("what muscle does not enclose fills as before", () => {
  const [rest, work] = [working({}), working({ calfPumpPressure: 100 })];
  within(traceMean(work.rest) / traceMean(rest.rest), 0.97, 1.1, "mean");
  within(Math.min(...work.rest) / Math.min(...rest.rest), 0.9, 1.15, "least");
});

test("small vessels widen by what the squeeze holds back, not at all at rest and to twice at most", () => {
  const by = (metabolicEquivalents: number) =>
    widening(exertion(request("extracardiac", ADULT, { metabolicEquivalents })), 85);
  expect(by(1)).toBe(1);
  within(by(2), 1.3, 1.6, "50 mmHg");
  expect(by(4)).toBe(2);
});
