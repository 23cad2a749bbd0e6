/** Which blood volume is in force, and how much to give or take after a cycle that missed the mark. */
import type { FlowSplit } from "../hydraulics/loss-law/features.ts";
import { defaultSetting, findParameter, numberSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { fromLitresPerMinute, fromMillilitre, fromMmHg } from "../units.ts";
import type { Network } from "./circuit-network.ts";
import { VOLUMES } from "./compartments.ts";

export interface CycleMeans {
  /** Pa */
  readonly atrium: number;
  readonly aorta: number;
  /** m3/s, without collaterals */
  readonly systemic: number;
  /** m3/s in the pathway's four branches */
  readonly branches: FlowSplit;
}

export interface VolumeControl {
  /** m3 to begin a cold search from; the volume for good where nothing is given */
  readonly volume: number;
  readonly fixed: boolean;
  /** m3 to give (negative: to take) after a cycle with these means */
  readonly give: (means: CycleMeans) => number;
  /** whether this much is all that one cycle may give or take, though more was wanted */
  readonly cut: (given: number) => boolean;
}

export const fixedVolume = (volume: number): VolumeControl => ({
  volume,
  fixed: true,
  give: () => 0,
  cut: () => false,
});

/** Part of the blood volume that one cycle may give or take at most, so that a far guess is not overshot. */
const MAX_GIVEN = 0.08;

/** Sensitivities below only speed the search; the answer does not depend on them. */
export function volumeControl(request: CirculationRequest, network: Network): VolumeControl {
  const setting = (name: string) => numberSetting(request, name);
  if (request.volumeRule === "fixed-volume") return fixedVolume(fromMillilitre(setting("bloodVolume")));
  const usual = defaultSetting(findParameter("bloodVolume")!, request.stage, request.body) as number;
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

/** Why this volume can't circulate, or undefined: too little to fill slack vessels, or far more than they hold. */
export function volumeReason(volume: number, network: Network): string | undefined {
  const slack = network.unstressed.reduce((sum, each) => sum + each, 0);
  if (volume < MIN_FILLED * slack) return "the blood volume is too small to fill this body's vessels";
  if (meanFilling(volume, network) > HIGHEST_FILLING)
    return "the blood volume is far more than this body's vessels hold";
  return undefined;
}

/** Pa: what all vessels would share if nothing flowed. */
export const meanFilling = (volume: number, network: Network): number =>
  (volume - network.unstressed.reduce((sum, each) => sum + each, 0)) / totalCompliance(network);

/** Of the unstressed volume; Pa of mean filling pressure (40 mmHg). */
const MIN_FILLED = 0.75;
const HIGHEST_FILLING = fromMmHg(40);

const totalCompliance = (network: Network): number => {
  let total = 0;
  for (let i = 0; i < VOLUMES; i++) total += network.compliance[i]!;
  return total;
};

/** Spreads a volume (m3) over the vessels by their compliance. */
export function give(state: Float64Array, network: Network, volume: number): void {
  const share = volume / totalCompliance(network);
  for (let i = 0; i < VOLUMES; i++) state[i] = state[i]! + share * network.compliance[i]!;
}

/** m3 */
export function totalVolume(state: ArrayLike<number>): number {
  let total = 0;
  for (let i = 0; i < VOLUMES; i++) total += state[i]!;
  return total;
}
