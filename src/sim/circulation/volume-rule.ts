/** Which blood volume is in force, and how much to give or take after a repeat that missed the mark. */
import { numberSetting } from "../parameters.ts";
import type { CirculationRequest } from "../request.ts";
import { fromLitresPerMinute, fromMillilitre, fromMmHg } from "../units.ts";
import { VOLUMES } from "./compartments.ts";
import type { Network } from "./network.ts";

export interface RepeatMeans {
  /** Pa */
  readonly atrium: number;
  readonly aorta: number;
  /** m3/s, without collaterals */
  readonly systemic: number;
}

export interface VolumeControl {
  /** m3 to begin from, and for good where nothing is given */
  readonly volume: number;
  /** m3 to give (negative: to take) after a repeat with these means */
  readonly give: (means: RepeatMeans) => number;
}

export const fixedVolume = (volume: number): VolumeControl => ({ volume, give: () => 0 });

/** Sensitivities below only speed the search; the answer does not depend on them. */
export function volumeControl(request: CirculationRequest, network: Network): VolumeControl {
  const volume = fromMillilitre(numberSetting(request, "bloodVolume"));
  const compliance = totalCompliance(network);
  switch (request.volumeRule) {
    case "hold-atrial-pressure": {
      const held = fromMmHg(numberSetting(request, "heldAtrialPressure"));
      return { volume, give: ({ atrium }) => 1.5 * compliance * (held - atrium) };
    }
    case "hold-output": {
      const held = fromLitresPerMinute(numberSetting(request, "heldOutputIndex") * request.body.bsa);
      return { volume, give: ({ systemic }) => compliance * fromMmHg(8) * (1 - systemic / held) };
    }
    default:
      return fixedVolume(volume);
  }
}

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
