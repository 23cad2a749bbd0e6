/** Which blood volume is in force, and how much to give or take after a cycle that missed the mark. */

import { present } from "../../checked/present.ts";
import type { FlowSplit } from "../../hydraulics/loss-law/features.ts";
import { defaultSetting, findParameter, numberSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import { fromLitresPerMinute, fromMillilitre, fromMmHg } from "../../units.ts";
import type { Network } from "../network/circuit-network.ts";
import { type ByCompartment, type State, VOLUMES } from "../network/compartments.ts";
import type { MeanFlows } from "./oxygen-of.ts";

/** Means over one cycle that the volume rule and the reflex act on. */
export interface CycleMeans extends MeanFlows {
  /** Pa */
  readonly atrium: number;
  readonly aorta: number;
  /** m3/s, without collaterals */
  readonly systemic: number;
  /** m3/s in the pathway's four branches */
  readonly branches: FlowSplit;
}

/** A volume rule at work. */
export interface VolumeControl {
  /** m3 to begin a cold search from; the volume for good where nothing is given */
  readonly volume: number;
  readonly fixed: boolean;
  /** m3 to give (negative: to take) after a cycle with these means */
  readonly give: (means: CycleMeans) => number;
  /** whether this much is all that one cycle may give or take, though more was wanted */
  readonly cut: (given: number) => boolean;
}

/** Holds a volume (m3). */
export const fixedVolume = (volume: number): VolumeControl => ({
  volume,
  fixed: true,
  give: () => 0,
  cut: () => false,
});

/** Part of the blood volume that one cycle may give or take at most, so that a far guess is not overshot. */
const MAX_GIVEN = 0.08;

/** What a request holds, in a sentence: no number means anything without it. */
export function heldBy(request: CirculationRequest): string {
  const setting = (name: string) => String(Number(numberSetting(request, name).toFixed(2)));
  switch (request.volumeRule) {
    case "fixed-volume":
      return `blood volume held at ${setting("bloodVolume")} mL`;
    case "hold-output":
      return `volume given at rest until output stands at ${setting("heldOutputIndex")} L/min/m2`;
    default:
      return `volume given at rest until atrial pressure stands at ${setting("heldAtrialPressure")} mmHg`;
  }
}

/** Sensitivities below only speed the search; the answer does not depend on them. */
export function volumeControl(request: CirculationRequest, network: Network): VolumeControl {
  const setting = (name: string) => numberSetting(request, name);
  if (request.volumeRule === "fixed-volume") return fixedVolume(fromMillilitre(setting("bloodVolume")));
  const usual = defaultSetting(present(findParameter("bloodVolume")), request.stage, request.body) as number;
  const volume = fromMillilitre(usual);
  const compliance = totalCompliance(network);
  const most = MAX_GIVEN * volume;
  const bounded = (wanted: number) => Math.max(-most, Math.min(most, wanted));
  const cut = (given: number) => Math.abs(given) === most;
  if (request.volumeRule === "hold-atrial-pressure") {
    const held = fromMmHg(setting("heldAtrialPressure"));
    return { volume, fixed: false, cut, give: ({ atrium }) => bounded(1.5 * compliance * (held - atrium)) };
  }
  const held = fromLitresPerMinute(setting("heldOutputIndex") * request.body.bsa);
  return {
    volume,
    fixed: false,
    cut,
    give: ({ systemic }) => bounded(compliance * fromMmHg(8) * (1 - systemic / held)),
  };
}

/** Why this volume (m3) can't circulate, or undefined: too little to fill slack vessels, or far more than they hold. */
export function volumeReason(volume: number, network: Network): string | undefined {
  if (volume < MIN_FILLED * slackOf(network))
    return "the blood volume is too small to fill this body's vessels";
  if (meanFilling(volume, network) > HIGHEST_FILLING)
    return "the blood volume is far more than this body's vessels hold";
  return undefined;
}

/** Pa: what all vessels would share if nothing flowed. */
export const meanFilling = (volume: number, network: Network): number =>
  (volume - slackOf(network)) / totalCompliance(network);

/** Of the unstressed volume; Pa of mean filling pressure (40 mmHg). */
const MIN_FILLED = 0.75;
const HIGHEST_FILLING = fromMmHg(40);

const sum = (values: ByCompartment): number => values.reduce((total, each) => total + each, 0);
const slackOf = ({ unstressed }: Network): number => sum(unstressed);
const totalCompliance = ({ compliance }: Network): number => sum(compliance);

/** Spreads a volume (m3) over the vessels by their compliance. */
export function give(state: State, network: Network, volume: number): void {
  const share = volume / totalCompliance(network);
  network.compliance.forEach((compliance, i) => {
    state[i] = (state[i] ?? 0) + share * compliance;
  });
}

/** m3 */
export const totalVolume = (state: State): number =>
  state.subarray(0, VOLUMES).reduce((total, volume) => total + volume, 0);
