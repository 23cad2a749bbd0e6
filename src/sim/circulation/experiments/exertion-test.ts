/** An effort that rises step by step until the body can no longer meet it, as on a bicycle in the exercise laboratory. */
import type { CirculationRequest } from "../../parameters/request.ts";
import type { Circulation } from "../answer/answer.ts";
import { solve } from "../solve.ts";

/** One step that was met. */
export interface ExertionStep {
  /** number of METs, 1 at rest */
  readonly metabolicEquivalents: number;
  /** 1/min */
  readonly heartRate: number;
  /** mL */
  readonly strokeVolume: number;
  /** L/min/m2 */
  readonly cardiacIndex: number;
  /** mmHg */
  readonly pathway: number;
  readonly wedge: number;
  readonly aortaMean: number;
  /** % */
  readonly arterialSaturation: number;
  readonly mixedVenousSaturation: number;
  /** mL/min/kg, really used */
  readonly oxygenUse: number;
}

/** The whole test. */
export interface ExertionTest {
  readonly steps: readonly ExertionStep[];
  /** The greatest effort that was met. */
  readonly peak: ExertionStep;
  /** Whether a greater one was tried and not met. */
  readonly limited: boolean;
  /** mmHg for each L/min of lung flow, rest to peak: pulmonary arteries, and pulmonary veins */
  readonly pressureSlope: number;
  readonly wedgeSlope: number;
}

/** METs between steps, and the greatest that is tried. */
const STEP = 0.5;
const GREATEST = 10;
/** Part of the oxygen asked for whose lack ends the effort, as on the page. */
const UNMET = 0.1;

/** @param request at rest; its own effort is left aside. Undefined where rest itself has no answer. */
export function exertionTest(request: CirculationRequest): ExertionTest | undefined {
  const met: { readonly at: number; readonly circulation: Circulation }[] = [];
  let start: readonly number[] | undefined;
  let limited = false;
  for (let at = 1; at <= GREATEST; at += STEP) {
    const circulation = solve(
      { ...request, set: { ...request.set, metabolicEquivalents: at } },
      start ? { start } : {},
    );
    if (!circulation.run.converged || unmet(circulation)) {
      limited = true;
      break;
    }
    met.push({ at, circulation });
    start = circulation.state;
  }
  const [rest, peak] = [met[0], met.at(-1)];
  if (!rest || !peak) return undefined;
  const flow = ({ circulation }: typeof rest) => circulation.extras.lungFlow ?? 0;
  const slope = (pressure: (of: Circulation) => number): number =>
    flow(peak) > flow(rest)
      ? (pressure(peak.circulation) - pressure(rest.circulation)) / (flow(peak) - flow(rest))
      : 0;
  return {
    steps: met.map(({ at, circulation }) => stepOf(at, circulation)),
    peak: stepOf(peak.at, peak.circulation),
    limited,
    pressureSlope: slope(({ pressures }) => pressures.pathway),
    wedgeSlope: slope(({ pressures }) => pressures.pulmonaryVein),
  };
}

function unmet({ extras }: Circulation): boolean {
  const { oxygenMissing = 0, oxygenUse = 0 } = extras;
  return oxygenMissing > UNMET * (oxygenUse + oxygenMissing);
}

const stepOf = (
  metabolicEquivalents: number,
  { pressures, saturations, extras }: Circulation,
): ExertionStep => ({
  metabolicEquivalents,
  heartRate: extras.heartRate ?? 0,
  strokeVolume: extras.strokeVolume ?? 0,
  cardiacIndex: extras.cardiacIndex ?? 0,
  pathway: pressures.pathway,
  wedge: pressures.pulmonaryVein,
  aortaMean: pressures.aortaMean,
  arterialSaturation: saturations.arterial,
  mixedVenousSaturation: extras.mixedVenousSaturation ?? 0,
  oxygenUse: extras.oxygenUsePerKilogram ?? 0,
});
