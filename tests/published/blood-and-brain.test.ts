/** What the body does about blood that is lost, and the brain about blood that brings little oxygen; beside what is published. */
import { describe, expect, test } from "vitest";
import { bloodRows } from "../../src/cli/validation/blood-rows.ts";
import { haematocrit } from "../../src/sim/body/blood.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { type BloodLoss, loseBlood } from "../../src/sim/circulation/experiments/blood-loss.ts";
import { brainFactor } from "../../src/sim/circulation/regulation/brain-flow.ts";
import { ADULT, answer, CHILD, request } from "../sim/circulation/requests.ts";
import { within } from "../within.ts";

const BEFORE = { ...CHILD, haemoglobin: 16.5 };

describe("blood loss, thinned blood and standing up, healthy adult", () => {
  test.each(bloodRows())("$quantity: $source", ({ quantity, value, low, high }) => {
    within(value, low, high, quantity);
  });
  test("the tissues give more water back after more", () => {
    const lost = (millilitre: number, minutes: number) =>
      loseBlood(request("two-ventricle", ADULT), millilitre, minutes);
    const cells = ({ request: { body } }: Circulation) => haematocrit(body.haemoglobin);
    const fall = ({ before, after }: BloodLoss) => cells(before) - cells(after);
    const some = lost(470, 10);
    expect(fall(lost(1000, 35))).toBeGreaterThan(1.5 * fall(some));
    expect(some.after.extras.bloodVolume! - some.before.extras.bloodVolume!).toBeCloseTo(
      some.regained - 470,
      0,
    );
  });
});

describe("the brain's flow", () => {
  test("hardly rises within hours at 4,572 m, since carbon dioxide falls (Ondrus, Adv Phys Educ 2017;7:47: +4 % after 6 hours, +24 % after 48)", () => {
    const { saturations, extras } = answer("two-ventricle", ADULT, { altitude: 4572 });
    const gas = { saturation: saturations.arterial / 100, carbonDioxide: extras.carbonDioxide! };
    within(brainFactor(gas), 0.9, 1.24, "factor");
    expect(brainFactor({ ...gas, carbonDioxide: 40 })).toBeGreaterThan(1.1);
  });
  test("at the Glenn stage carbon dioxide sends more blood through the lungs: saturation, lung flow and output rise, the body's resistance falls (Hoskote, J Am Coll Cardiol 2004, 45 and 55 against 35 mmHg)", () => {
    const [low, middle, high] = [35, 45, 55].map((carbonDioxide) =>
      answer("glenn", BEFORE, { breathing: "ventilator", inspiredOxygen: 40, carbonDioxide }),
    );
    for (const raised of [middle!, high!]) {
      expect(raised.saturations.arterial).toBeGreaterThan(low!.saturations.arterial + 0.3);
      expect(raised.extras.lungFlow!).toBeGreaterThan(1.03 * low!.extras.lungFlow!);
      expect(raised.extras.cardiacIndex!).toBeGreaterThan(low!.extras.cardiacIndex!);
      expect(raised.extras.bodyResistanceIndex!).toBeLessThan(0.97 * low!.extras.bodyResistanceIndex!);
    }
  });
});
