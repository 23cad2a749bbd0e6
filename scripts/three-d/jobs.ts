/** From a case to the solver's input: flows, grid, flow solver speed. */
import { BLOOD_DENSITY, bloodViscosity } from "../../src/sim/body/blood.ts";
import { pathwaySizes } from "../../src/sim/geometry/pathways/sizes.ts";
import type { CirculationRequest } from "../../src/sim/parameters/request.ts";
import type { Case } from "./case.ts";

/** Flow solver speeds: of the fastest opening's peak, and of the even stream in a narrowing. */
const PEAK = 0.08;
const THROAT = 0.11;

/** Flush times over which a pulsating case is averaged, enough for four breaths. */
const PULSED = 14;

export const requestOf = ({ stage, body, set }: Case): CirculationRequest => ({
  kind: "circulation",
  stage,
  body,
  volumeRule: "hold-output",
  set,
});

/** Flush times of a repeat from another start: until its start is forgotten, and averaged. */
const FROM_START = { settle: 5, least: 3, most: 5 };

/** mL/s */
export function flowsOf({ body, index, lower, left, leak }: Case) {
  const veins = (index * body.bsa * 1000) / 60;
  const lungs = veins * (1 - leak);
  const flows = {
    ivc: lower * veins,
    svc: (1 - lower) * veins,
    left: left * lungs,
    right: (1 - left) * lungs,
  };
  return leak > 0 ? { ...flows, fenestration: leak * veins } : flows;
}

export const bodyName = (one: Case): string =>
  [one.stage, one.body.ageYears, ...Object.entries(one.set).map(([key, value]) => `${key}_${value}`)].join(
    "-",
  );

/** Cells across the narrower pulmonary artery at a cell's width (mm). */
export const acrossOf = (one: Case, dx: number): number => {
  const { left, right } = pathwaySizes(requestOf(one));
  return Math.min(left, right) / dx;
};

export interface Job {
  readonly body: string;
  readonly name: string;
  readonly keys: Readonly<Record<string, number>>;
  /** steps times cells, relative to other cases: the order in which they run */
  readonly cost: number;
}

export function jobOf(one: Case): Job {
  const sizes = pathwaySizes(requestOf(one));
  const flows: Record<string, number> = flowsOf(one);
  const speed = (flow: number, diameter: number) => flow / ((Math.PI / 4) * diameter ** 2);
  const openings = Math.max(
    ...(["ivc", "svc", "left", "right"] as const).map((name) => 2 * speed(flows[name]!, sizes[name])),
    // the stream through a hole is narrower than the hole
    1.7 * (flows.fenestration ? speed(flows.fenestration, sizes.fenestration) : 0),
  );
  // a narrowing's stream is nearly even, a little faster than its mean
  const throats =
    1.3 *
    Math.max(
      speed(flows.ivc!, sizes.trunk * (1 - sizes.narrowing)),
      speed(flows.left!, sizes.left * (1 - sizes.leftStenosis)),
      speed(flows.right!, sizes.right * (1 - sizes.rightStenosis)),
    );
  const dx = Number((Math.min(sizes.left, sizes.right) / one.across).toFixed(4));
  const peak = Number(Math.min(PEAK, (THROAT * openings) / throats).toFixed(4));
  const tubes = (["ivc", "svc", "left", "right"] as const).map(
    (name) => 0.8 * sizes[name] ** 2 * (sizes[`${name}Length`] + 2 * sizes[name]),
  );
  const trunk =
    one.stage === "atriopulmonary" ? 0.6 * sizes.trunk ** 3 : 0.8 * sizes.trunk ** 2 * sizes.trunkLength;
  const volume = tubes.reduce((sum, each) => sum + each, trunk);
  const veins = flows.ivc! + flows.svc!;
  return {
    body: bodyName(one),
    name: one.name,
    keys: {
      ...flows,
      dx,
      peak,
      nu: bloodViscosity(one.body.haemoglobin) / BLOOD_DENSITY,
      rho: BLOOD_DENSITY,
      ...(one.inflow === "flat" ? { flat: 1 } : {}),
      ...(one.first ? { first: one.first === "lower" ? 1 : -1, ...FROM_START } : {}),
      ...(one.pulse ? { pulse: one.pulse.part, period: one.pulse.period, least: PULSED, most: PULSED } : {}),
    },
    cost: ((volume / dx ** 3) * (volume / veins) * openings) / (peak * dx) / 1e10,
  };
}
