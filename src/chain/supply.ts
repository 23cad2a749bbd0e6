/** Where a pane's blood comes from: by its answer, and until that has come by what is foreseen of it. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { FlowField } from "../sim/flow-field/flow-field.ts";
import type { Supply } from "../sim/tracers/index.ts";
import { toMillilitresPerSecond } from "./field-boundary.ts";

/** Of a pane's blood. */
export interface KnownSupply {
  readonly circulation: Circulation | null;
  readonly foreseen?: Supply | undefined;
}

const HALF = 0.5;

/** As measured in the field. */
export const supplyOf = ({ readings }: FlowField, known: KnownSupply): Supply => ({
  inflow: Object.fromEntries(readings.openings.map(({ name, flow }) => [name, flow])),
  hepaticShare: firstSupply(known).hepaticShare,
});

/** Before the field has been measured. */
export const firstSupply = ({ circulation, foreseen }: KnownSupply): Supply =>
  circulation
    ? {
        inflow: {
          ivc: toMillilitresPerSecond(circulation.flows.ivc),
          svc: toMillilitresPerSecond(circulation.flows.svc),
        },
        hepaticShare: hepaticShareOf(circulation),
      }
    : (foreseen ?? { inflow: { ivc: 1, svc: 1 }, hepaticShare: HALF });

/** Part of the lower body's return that comes from liver and gut. */
export function hepaticShareOf({ traces }: Circulation): number {
  const { splanchnic, legs } = traces.flows;
  if (!splanchnic || !legs) return HALF;
  const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
  const [liver, rest] = [sum(splanchnic), sum(legs)];
  return liver + rest > 0 ? Math.min(1, Math.max(0, liver / (liver + rest))) : HALF;
}
