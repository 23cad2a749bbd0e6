/** Kind "exertion-test": effort raised step by step to the greatest that is met; peak oxygen use and what pressure it costs. */
import { checkRequest } from "../circulation/check-request.ts";
import {
  type ExertionStep,
  type ExertionTest,
  exertionTest,
} from "../circulation/experiments/exertion-test.ts";
import type { Checked } from "../input-checks.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import type { Kind } from "./kind.ts";
import { presetSchema, withPreset } from "./preset.ts";
import { circulationSchema } from "./schema.ts";

const UNITS: Readonly<Record<keyof ExertionStep, string>> = {
  metabolicEquivalents: "MET",
  heartRate: "1/min",
  strokeVolume: "mL",
  cardiacIndex: "L/min/m2",
  pathway: "mmHg",
  wedge: "mmHg",
  aortaMean: "mmHg",
  arterialSaturation: "%",
  mixedVenousSaturation: "%",
  oxygenUse: "mL/min/kg",
};
const COLUMNS = Object.keys(UNITS) as (keyof ExertionStep)[];

export const EXERTION_TEST_KIND: Kind<CirculationRequest> = {
  kind: "exertion-test",
  schema: {
    ...presetSchema(circulationSchema()),
    description:
      "as kind circulation; effort rises by 0.5 MET until a tenth of the oxygen asked for is missing. Answers each step, the peak, and the slopes of lung-artery and wedge pressure against lung flow (mmHg.min/L; over 3 and over 2 count as abnormal)",
    properties: {
      ...(presetSchema(circulationSchema()).properties as object),
      kind: { const: "exertion-test" },
    },
  },
  check(input): Checked<CirculationRequest> {
    const { rest, faults } = withPreset({ ...input, kind: "circulation" });
    const checked = checkRequest(rest);
    if ("faults" in checked) return { faults: [...checked.faults, ...faults] };
    return faults.length > 0 ? { faults } : checked;
  },
  run(request) {
    const answer = exertionTest(request);
    return answer ? { answer } : { reason: "these settings have no answer even at rest" };
  },
  table: (answer) => ({
    columns: COLUMNS.map((name) => `${name}, ${UNITS[name]}`),
    rows: (answer as ExertionTest).steps.map((step) => COLUMNS.map((name) => step[name])),
  }),
};
