/** What the body does about blood that is lost, and the brain about blood that brings little oxygen; beside what is published. */
import { describe, expect, test } from "vitest";
import { type BloodLoss, loseBlood } from "../../src/sim/circulation/blood-loss.ts";
import { brainFactor } from "../../src/sim/circulation/brain-flow.ts";
import { ADULT, answer, CHILD, request } from "../sim/circulation/requests.ts";
import { within } from "../within.ts";

const BEFORE = { ...CHILD, haemoglobin: 16.5 };

describe("blood loss, healthy adult", () => {
  const lost = (millilitre: number, minutes: number) =>
    loseBlood(request("two-ventricle", ADULT), millilitre, minutes);
  const over = (name: string, { before, after }: BloodLoss) => after.extras[name]! / before.extras[name]!;
  test("375 mL in 6.4 minutes: stroke volume 94 +- 5 to 81 +- 5, rate 75 to 78 (Leonetti, Clin Auton Res 2004;14:176)", () => {
    const some = lost(375, 6.4);
    within(over("strokeVolume", some), 0.8, 0.92, "stroke volume");
    within(over("heartRate", some), 1, 1.1, "heart rate");
  });
  test("1 L in three stages: arterial mean 90 to 81 and 93 to 86 (Johnson, J Appl Physiol 2014: PMC4459917), rate 59 to 66, stroke volume 118 to 99 (the same group, FASEB J 2013), and less here", () => {
    const much = lost(1000, 35);
    within(much.after.pressures.aortaMean / much.before.pressures.aortaMean, 0.85, 0.95, "arterial mean");
    within(much.after.extras.heartRate! - much.before.extras.heartRate!, 3, 12, "heart rate");
    // 0.84 there.
    within(over("strokeVolume", much), 0.7, 0.9, "stroke volume");
  });
  test("the tissues give water back: haematocrit of 100 donors falls by 1.2 within ten minutes of 460-480 mL (Evaluation of small acute blood loss in man, abstract), more after more", () => {
    const fall = ({ haematocritBefore, haematocritAfter }: BloodLoss) => haematocritBefore - haematocritAfter;
    const some = lost(470, 10);
    within(fall(some), 0.6, 1.8, "points");
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
