/** Kind "test-occlusion": a circulation with its fenestration open, and closed at the same volume. */
import { checkRequest } from "../circulation/check-request.ts";
import { occludeFenestration } from "../circulation/experiments/test-occlusion.ts";
import type { Checked } from "../input-checks.ts";
import { numberSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { circulationUnit, printed } from "./circulation-kind.ts";
import type { Kind } from "./kind.ts";
import { circulationSchema } from "./schema.ts";

export const TEST_OCCLUSION_KIND: Kind<CirculationRequest> = {
  kind: "test-occlusion",
  schema: {
    ...circulationSchema(),
    description: "as kind circulation, with a fenestration; answered open and shut",
    properties: {
      ...(circulationSchema().properties as object),
      kind: { const: "test-occlusion" },
    },
  },
  check(input): Checked<CirculationRequest> {
    const checked = checkRequest({ ...input, kind: "circulation" });
    if ("faults" in checked || hasFenestration(checked.request)) return checked;
    return {
      faults: [
        {
          path: "set.fenestrationDiameter",
          found: "no open fenestration",
          allowed: "more than 0 mm, in a stage with a pathway",
        },
      ],
    };
  },
  run(request) {
    const { open, closed } = occludeFenestration(request);
    const failed = [open, closed].find(({ run }) => !run.converged);
    if (failed) return { reason: failed.run.reason ?? "no answer" };
    return { answer: { open: printed(open), closed: printed(closed) } };
  },
  unitOf: (path) => circulationUnit(path.replace(/^(open|closed)\./, "")),
};

const hasFenestration = (request: CirculationRequest): boolean =>
  request.stage !== "two-ventricle" &&
  request.stage !== "glenn" &&
  numberSetting(request, "fenestrationDiameter") > 0;
