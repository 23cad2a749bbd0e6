/** Kind "pathway": the loss law alone, at prescribed steady flows. */

import { present } from "../checked/present.ts";
import { checkRequest } from "../circulation/check-request.ts";
import type { Fault } from "../faults.ts";
import { ledger, pathwayLoss } from "../hydraulics/ledger.ts";
import type { FlowSplit } from "../hydraulics/loss-law/features.ts";
import { type Outside, pathwayEstimate } from "../hydraulics/pathway-estimate.ts";
import { pathwayLaw } from "../hydraulics/pathway-network.ts";
import { type Checked, numberWithin, recordIn, refuseUnknownKeys, shown } from "../input-checks.ts";
import { type CirculationRequest, hasPathway, PATHWAY_STAGES } from "../parameters/request.ts";
import { fromLitresPerMinute } from "../units.ts";
import { circulationUnit } from "./circulation-kind.ts";
import type { Kind } from "./kind.ts";
import { circulationSchema, object } from "./schema.ts";

const NAMES = ["ivc", "svc", "left", "right"] as const;
const MEANING = {
  ivc: "in from the inferior vena cava",
  svc: "in from the superior vena cava",
  left: "out to the left lung",
  right: "out to the right lung",
} as const;
/** L/min */
const RANGE = { min: 0.01, max: 20, unit: "L/min" } as const;
/** Part by which inflow and outflow may differ. */
const BALANCE = 1e-3;

/** A pathway with the steady flows (m3/s) through its openings. */
export interface PathwayRequest {
  readonly request: CirculationRequest;
  /** m3/s */
  readonly flows: FlowSplit;
}

const { body, set } = circulationSchema().properties as Record<"body" | "set", object>;

export const PATHWAY_KIND: Kind<PathwayRequest> = {
  kind: "pathway",
  schema: object(
    {
      kind: { const: "pathway" },
      stage: { enum: PATHWAY_STAGES, description: "which pathway" },
      body: { ...body },
      set: { ...set },
      flows: object(
        Object.fromEntries(
          NAMES.map((name) => [
            name,
            {
              type: "number",
              minimum: RANGE.min,
              maximum: RANGE.max,
              description: `L/min: ${MEANING[name]}`,
            },
          ]),
        ),
        NAMES,
        "mean flows; what comes in must go out",
      ),
    },
    ["kind", "stage", "body", "flows"],
    "a pathway's loss and where its blood goes, at given steady flows, without the rest of the circulation",
  ),
  check(input): Checked<PathwayRequest> {
    const { flows: given, ...rest } = input;
    const faults: Fault[] = [];
    if ("volumeRule" in rest)
      faults.push({ path: "volumeRule", found: "unknown key", allowed: "kind, stage, body, set, flows" });
    const checked = checkRequest({ ...rest, kind: "circulation" });
    if ("faults" in checked) faults.push(...checked.faults);
    else if (!hasPathway(checked.request.stage))
      faults.push({
        path: "stage",
        found: shown(checked.request.stage),
        allowed: PATHWAY_STAGES.map((each) => `"${each}"`).join(" | "),
      });
    const flows = checkFlows(given, faults);
    if (faults.length > 0 || "faults" in checked || !flows) return { faults };
    return { request: { request: checked.request, flows } };
  },
  run({ request, flows }) {
    const law = pathwayLaw(request, flows);
    const loss = pathwayLoss(law, flows);
    const { band, shares, outsideSet } = present(pathwayEstimate(request, flows, loss));
    return {
      answer: {
        pathway: { ...loss, band, outsideSet, ledger: ledger(law, flows) },
        shares,
        ...(outsideSet.length > 0 ? { note: noteOn(outsideSet) } : {}),
      },
    };
  },
  unitOf: circulationUnit,
};

const noteOn = (outside: readonly Outside[]): string =>
  `outside the 3D cases that the law was fitted to: ${outside.join(", ")}; the bands are wider`;

function checkFlows(given: unknown, faults: Fault[]): FlowSplit | undefined {
  const found = recordIn(given, "flows", faults, `an object with ${NAMES.join(", ")}`);
  if (!found) return undefined;
  const before = faults.length;
  refuseUnknownKeys(found, NAMES, "flows.", faults);
  for (const name of NAMES) numberWithin(found[name], RANGE, `flows.${name}`, faults);
  if (faults.length > before) return undefined;
  const [ivc, svc, left, right] = NAMES.map((name) => found[name] as number) as [
    number,
    number,
    number,
    number,
  ];
  if (Math.abs(ivc + svc - left - right) > BALANCE * (ivc + svc)) {
    faults.push({
      path: "flows",
      found: `${shown(Number((ivc + svc).toFixed(4)))} L/min in, ${shown(Number((left + right).toFixed(4)))} L/min out`,
      allowed: "in and out alike within 0.1 %",
    });
    return undefined;
  }
  return {
    ivc: fromLitresPerMinute(ivc),
    svc: fromLitresPerMinute(svc),
    left: fromLitresPerMinute(left),
    right: fromLitresPerMinute(right),
  };
}
