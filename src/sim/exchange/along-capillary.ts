/** How a capillary's filtration is spread along it, from its arterial to its venous end. */
import { usualWeight } from "../body/bsa.ts";
import type { Circulation } from "../circulation/answer/answer.ts";
import { numberSetting } from "../parameters/parameters.ts";
import { FILTRATION_COEFFICIENT } from "./filtration.ts";

/** mmHg that the blood's pressure falls along a capillary (Guyton: 30 at its arterial end, 10 at its venous one). */
const FALL = 20;
/**
 * mmHg over which filtration dies away where the pressure is less than the protein's pull: in the long run the wall takes next to nothing
 * back, for water taken back would leave its protein behind (Levick & Michel 2010; the width is a teaching value).
 */
const TOE = 2;
const HALVINGS = 60;

/**
 * mL/h through each of as many equal stretches, the arterial end first; together they are what leaves all capillaries (`total`, mL/h),
 * which turns round with it.
 */
export function filtrationAlong(
  total: number,
  { request }: Pick<Circulation, "request">,
  count: number,
): readonly number[] {
  if (total < 0) return filtrationAlong(-total, { request }, count).map((each) => -each);
  const leakage = numberSetting(request, "capillaryLeakage");
  const perPressure = (FILTRATION_COEFFICIENT * usualWeight(request.body.bsa) * leakage * 60) / count;
  const flows = (net: number): readonly number[] =>
    Array.from({ length: count }, (_, i) => {
      const here = net + FALL * (0.5 - (i + 0.5) / count);
      return perPressure * TOE * Math.log1p(Math.exp(here / TOE));
    });
  const sum = (each: readonly number[]) => each.reduce((a, b) => a + b, 0);
  let [low, high] = [-200, 400];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (sum(flows(middle)) < total) low = middle;
    else high = middle;
  }
  const found = flows(high);
  const whole = sum(found);
  return found.map((each) => (each * total) / whole);
}
