/** Kind "blood-loss": blood taken from a person at rest over some minutes, and what the tissues give back meanwhile. */
import { haematocrit } from "../body/blood.ts";
import type { Circulation } from "../circulation/answer/answer.ts";
import { checkRequest } from "../circulation/check-request.ts";
import { loseBlood } from "../circulation/experiments/blood-loss.ts";
import { atRest } from "../circulation/solve.ts";
import type { Fault } from "../faults.ts";
import { type Checked, numberWithin, shown } from "../input-checks.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { circulationUnit, printed } from "./circulation-kind.ts";
import type { Kind } from "./kind.ts";
import { presetSchema, withPreset } from "./preset.ts";
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

const SCHEMA = presetSchema(circulationSchema());

export const BLOOD_LOSS_KIND: Kind<BloodLossRequest> = {
  kind: "blood-loss",
  schema: {
    ...SCHEMA,
    description:
      "as kind circulation, at rest; blood is taken evenly over the minutes. Answers before, after, what the tissues gave back (mL) and haematocrit (%)",
    properties: {
      ...(SCHEMA.properties as object),
      kind: { const: "blood-loss" },
      lost: { type: "number", minimum: RANGES.lost.min, maximum: RANGES.lost.max, description: "mL" },
      minutes: {
        type: "number",
        minimum: RANGES.minutes.min,
        maximum: RANGES.minutes.max,
        description: "min in which it is lost",
      },
    },
    required: [...(SCHEMA.required as string[]), "lost", "minutes"],
  },
  check(input): Checked<BloodLossRequest> {
    const { lost, minutes, ...rest } = input;
    const { rest: expanded, faults: nobody } = withPreset({ ...rest, kind: "circulation" });
    const checked = checkRequest(expanded);
    const faults = [...("faults" in checked ? checked.faults : restless(checked.request)), ...nobody];
    numberWithin(lost, RANGES.lost, "lost", faults);
    numberWithin(minutes, RANGES.minutes, "minutes", faults);
    if ("faults" in checked || faults.length > 0) return { faults };
    return { request: { person: checked.request, lost: lost as number, minutes: minutes as number } };
  },
  run({ person, lost, minutes }) {
    const { before, after, regained } = loseBlood(person, lost, minutes);
    const failed = [before, after].find(({ run }) => !run.converged);
    if (failed) return { reason: failed.run.reason ?? "no answer" };
    const cells = ({ request }: Circulation) => haematocrit(request.body.haemoglobin);
    return {
      answer: {
        before: printed(before),
        after: printed(after),
        regained,
        haematocritBefore: cells(before),
        haematocritAfter: cells(after),
      },
    };
  },
  unitOf: (path) => UNITS[path] ?? circulationUnit(path.replace(/^(before|after)\./, "")),
};

/** One fault for each setting with which the person is not at rest. */
function restless(person: CirculationRequest): readonly Fault[] {
  const { set } = atRest(person);
  return Object.entries(person.set)
    .filter(([name, value]) => set[name] !== value)
    .map(([name, value]) => ({
      path: `set.${name}`,
      found: shown(value),
      allowed: `${shown(set[name])}: blood is lost at rest`,
    }));
}
