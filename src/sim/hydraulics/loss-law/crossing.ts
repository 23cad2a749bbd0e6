/** Where each vein's blood goes: how far the streams cross, between what the flows allow. */
import type { Streams } from "./features.ts";

/** Parts of a vein's blood that go to the left lung. */
export interface LeftParts {
  readonly ivc: number;
  readonly svc: number;
}

const within = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/** Least and greatest part of the lower stream that can go left, both lungs and both veins having their flow. */
function allowed({ lower, left }: Streams): readonly [number, number] {
  return [Math.max(0, (left - (1 - lower)) / lower), Math.min(1, left / lower)];
}

/** @param position 0: as much of the lower stream as can goes right; 1: as much as can goes left */
export function partsAt(position: number, streams: Streams): LeftParts {
  const [least, most] = allowed(streams);
  const ivc = least + within(0, position, 1) * (most - least);
  return { ivc, svc: within(0, (streams.left - streams.lower * ivc) / (1 - streams.lower), 1) };
}

/** The position that gives the lower stream more to the left than the upper one by this difference. */
export function positionOf({ ivc, svc }: LeftParts, streams: Streams): number {
  const [least, most] = allowed(streams);
  // ivc - svc grows along the allowed stretch as ivc does, by 1 / (1 - lower)
  const balanced = streams.left + (1 - streams.lower) * (ivc - svc);
  return (balanced - least) / (most - least);
}

/** Streams that pass each other each take the lung they lie towards; in a chamber they mix first. */
export function usualPosition(
  clearance: number,
  chamber: boolean,
  { tubes, chamber: slope }: { readonly tubes: number; readonly chamber: number },
): number {
  return 1 / (1 + Math.exp(-clearance * (chamber ? slope : tubes)));
}
