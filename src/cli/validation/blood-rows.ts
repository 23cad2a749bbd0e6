/** Blood that is lost or thinned, and standing up, in a healthy adult. Same rules as in rows.ts. */
import { haematocrit } from "../../sim/body/blood.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { type BloodLoss, loseBlood } from "../../sim/circulation/experiments/blood-loss.ts";
import { solve } from "../../sim/circulation/solve.ts";
import { CASES, type CirculationRequest, type ParameterValue } from "../../sim/parameters/request.ts";
import { extra, type Row, row } from "./validation-row.ts";

const person = (
  set: Readonly<Record<string, ParameterValue>> = {},
  haemoglobin: number = CASES.caseB.haemoglobin,
): CirculationRequest => ({
  kind: "circulation",
  stage: "two-ventricle",
  body: { ...CASES.caseB, haemoglobin },
  volumeRule: "hold-atrial-pressure",
  set,
});

const over = (name: string, now: Circulation, before: Circulation): number =>
  extra(now, name) / extra(before, name);
const strokes = ({ before, after }: BloodLoss): number => over("strokeVolume", after, before);

/** % of haematocrit */
const fallOfCells = ({ before, after }: BloodLoss): number =>
  haematocrit(before.request.body.haemoglobin) - haematocrit(after.request.body.haemoglobin);

export const bloodRows = (): Row[] => [...lost(), ...otherwise()];

function lost(): Row[] {
  const bled = (millilitre: number, minutes: number) => loseBlood(person(), millilitre, minutes);
  const [some, donated, much] = [bled(375, 6.4), bled(470, 10), bled(1000, 35)] as const;
  const johnson = "Johnson 2014, PMC4459917";
  return [
    row(
      "375 mL lost in 6.4 minutes, stroke volume over before",
      "1",
      strokes(some),
      [0.8, 0.92],
      "94 to 81, Leonetti 2004",
    ),
    row(
      "the same, heart rate over before",
      "1",
      over("heartRate", some.after, some.before),
      [1, 1.1],
      "75 to 78, the same",
    ),
    row(
      "470 mL lost in 10 minutes, fall of haematocrit",
      "%",
      fallOfCells(donated),
      [0.6, 1.8],
      "1.2 ten minutes after 460-480 mL, blood donors (Evaluation of small acute blood loss in man)",
    ),
    row(
      "1 L lost in 35 minutes, stroke volume over before",
      "1",
      strokes(much),
      [0.75, 0.9],
      "0.84, 118 to 99, Johnson 2013; some 0.8, PMC4747890",
    ),
    row(
      "the same, arterial mean",
      "1",
      much.after.pressures.aortaMean / much.before.pressures.aortaMean,
      [0.85, 0.95],
      `93 to 86, 90 to 81, ${johnson}`,
    ),
    row(
      "the same, rise of heart rate",
      "1/min",
      extra(much.after, "heartRate") - extra(much.before, "heartRate"),
      [3, 12],
      `7, ${johnson}`,
    ),
  ];
}

function otherwise(): Row[] {
  const before = solve(person());
  const blood = (haemoglobin: number) => over("cardiacIndex", solve(person({}, haemoglobin)), before);
  return [
    row(
      "haemoglobin 7 over 14, index",
      "1",
      blood(7),
      [1.15, 1.6],
      "rises as haematocrit falls, Oldershaw 1980",
    ),
    row("haemoglobin 20 over 14, index", "1", blood(20), [0.6, 0.9], "the same"),
    row(
      "upright, stroke volume over lying",
      "1",
      over("strokeVolume", solve(person({ posture: "upright" })), before),
      [0.55, 0.8],
      "falls by 20-40 %, textbook",
    ),
    row(
      "the same, less the 17 % of plasma that filters into standing legs in 10 minutes (Lundvall, Acta Physiol Scand 1996)",
      "1",
      over("strokeVolume", solve(filtered(before)), before),
      [0.55, 0.8],
      "falls by 20-40 %, textbook",
    ),
  ];
}

/** The person upright once so much plasma has left their blood. */
function filtered(before: Circulation): CirculationRequest {
  const { haemoglobin } = before.request.body;
  const whole = extra(before, "bloodVolume");
  const bloodVolume = whole * (1 - 0.17 * (1 - haematocrit(haemoglobin) / 100));
  const upright = person({ posture: "upright", bloodVolume }, (haemoglobin * whole) / bloodVolume);
  return { ...upright, volumeRule: "fixed-volume" };
}
