/** Kind "blood-loss": blood taken from a person at rest over some minutes, and what the tissues give back meanwhile. */
import { loseBlood } from "../circulation/blood-loss.ts";
import { type Checked, checkRequest, isRecord, numberWithin } from "../circulation/check-request.ts";
import type { Fault } from "../faults.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { circulationUnit, printed } from "./circulation-kind.ts";
import type { Kind } from "./kind.ts";
import { circulationSchema } from "./schema.ts";

const RANGES = {
  lost: { min: 0, max: 2000, unit: "mL" },
  minutes: { min: 1, max: 60, unit: "min" },
} as const;

interface BloodLossRequest {
  readonly person: CirculationRequest;
  readonly lost: number;
  readonly minutes: number;
}

const UNITS: Readonly<Record<string, string>> = {
  regained: "mL",
  haematocritBefore: "%",
  haematocritAfter: "%",
};

export const BLOOD_LOSS_KIND: Kind<BloodLossRequest> = {
  kind: "blood-loss",
  schema: {
    ...circulationSchema(),
    description:
      "as kind circulation, at rest; blood is taken evenly over the minutes. Answers before, after, what the tissues gave back (mL) and haematocrit (%)",
    properties: {
      ...(circulationSchema().properties as object),
      kind: { const: "blood-loss" },
      lost: { type: "number", minimum: RANGES.lost.min, maximum: RANGES.lost.max, description: "mL" },
      minutes: {
        type: "number",
        minimum: RANGES.minutes.min,
        maximum: RANGES.minutes.max,
        description: "min in which it is lost",
      },
    },
    required: [...(circulationSchema().required as string[]), "lost", "minutes"],
  },
  check(input): Checked<BloodLossRequest> {
    const { lost, minutes, ...rest } = isRecord(input) ? input : {};
    const checked = checkRequest({ ...rest, kind: "circulation" });
    const faults: Fault[] = "faults" in checked ? [...checked.faults] : [];
    numberWithin(lost, RANGES.lost, "lost", faults);
    numberWithin(minutes, RANGES.minutes, "minutes", faults);
    if ("faults" in checked || faults.length > 0) return { faults };
    return { request: { person: checked.request, lost: lost as number, minutes: minutes as number } };
  },
  run({ person, lost, minutes }) {
    const { before, after, ...water } = loseBlood(person, lost, minutes);
    const failed = [before, after].find(({ run }) => !run.converged);
    if (failed) return { reason: failed.run.reason ?? "no answer" };
    return { answer: { before: printed(before), after: printed(after), ...water } };
  },
  unitOf: (path) => UNITS[path] ?? circulationUnit(path.replace(/^(before|after)\./, "")),
};
