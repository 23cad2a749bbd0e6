/** What no answer may break, whatever was asked for. */
import { present } from "../../../src/sim/checked/present.ts";
import type { Circulation } from "../../../src/sim/circulation/answer/answer.ts";
import { traceMean } from "../../../src/sim/circulation/answer/trace-mean.ts";
import { highestRate } from "../../../src/sim/circulation/regulation/exercise.ts";
import { atRest } from "../../../src/sim/circulation/solve.ts";
import { contentAtSaturation } from "../../../src/sim/oxygen/content.ts";
import { numberSetting } from "../../../src/sim/parameters/parameters.ts";
import { notFinite } from "./any-request.ts";

/** % of the energy that went in; part of the oxygen that arteries carry; part of the blood. */
const OPEN = { energy: 1, oxygen: 0.005, volume: 1e-6 };

/** Each law that an answer breaks, in a few words; empty where all hold. An answer without convergence must be finite and have a reason. */
export function lawsBroken(circulation: Circulation): readonly string[] {
  const { request: _, ...answer } = circulation;
  const broken = notFinite(answer).map((path) => `not finite: ${path}`);
  const { converged, reason } = circulation.run;
  if (!converged) return (reason ?? "").length > 20 ? broken : [...broken, "no reason"];
  return [
    ...broken,
    ...(Math.abs(circulation.energy.residualPercent) > OPEN.energy ? ["energy"] : []),
    ...(oxygenOpen(circulation) > OPEN.oxygen ? ["oxygen (Fick)"] : []),
    ...(volumeOff(circulation) > OPEN.volume ? ["blood volume"] : []),
    ...unlivable(circulation),
  ];
}

/** What was used against flow times what arteries carry more than veins, over what arteries carry. */
export function oxygenOpen({ request, saturations, flows, extras }: Circulation): number {
  const { haemoglobin } = request.body;
  const carried = (saturation: number) =>
    10 * flows.systemic * contentAtSaturation(saturation / 100, haemoglobin);
  const difference = carried(saturations.arterial) - carried(extras.mixedVenousSaturation!);
  return Math.abs(difference - extras.oxygenUse!) / carried(saturations.arterial);
}

/** How far the blood in all vessels together is off what was asked to be held. */
function volumeOff({ request, extras }: Circulation): number {
  if (request.volumeRule !== "fixed-volume") return 0;
  return Math.abs(extras.bloodVolume! / numberSetting(request, "bloodVolume") - 1);
}

/** What no living body shows. */
function unlivable({
  request,
  pressures,
  flows,
  saturations,
  extras,
  traces,
}: Circulation): readonly string[] {
  const found: string[] = [];
  const within = (name: string, value: number, low: number, high: number) => {
    if (!(value >= low && value <= high)) found.push(`${name} ${value.toPrecision(3)}`);
  };
  within("arterial mean", pressures.aortaMean, 30, 300);
  within("arterial saturation", saturations.arterial, 20, 100);
  for (const name of ["svc", "ivc", "pulmonaryVein"] as const) within(name, saturations[name], 0, 100);
  within("mixed venous", extras.mixedVenousSaturation!, 0, 100);
  within(
    "oxygen used",
    extras.oxygenUse! / request.body.bsa / numberSetting(request, "oxygenUseIndex"),
    0.75,
    30,
  );
  for (const bed of ["upper", "splanchnic", "legBed"] as const)
    within(`flow of ${bed}`, traceMean(present(traces.flows[bed])), 0, 100);
  const fastest = Math.max(highestRate(request.body), numberSetting(request, "heartRate"));
  within("heart rate", extras.heartRate!, 20, 1.001 * fastest);
  within("output index", flows.systemic / request.body.bsa, 0.3, 20);
  within("ejection", extras.ejectionFraction!, 0, 100);
  if (atRest(request) === request) within("atrium", pressures.atrium, -10, 60);
  return found;
}
