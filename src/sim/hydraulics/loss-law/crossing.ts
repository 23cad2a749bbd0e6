/** Where each vein's blood goes: how far the streams cross, between what the flows allow. */
import type { Streams } from "./features.ts";
import { awayFrom, excessAt, type Parting, sideAt } from "./parting.ts";

/** Fractions of a vein's blood that go to the left lung, 0 to 1. */
export interface LeftParts {
  readonly ivc: number;
  readonly svc: number;
}

const within = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/** Least and greatest part of the lower stream that can go left, both lungs and both veins having their flow. */
function allowed({ lower, left }: Streams): readonly [number, number] {
  return [Math.max(0, (left - (1 - lower)) / lower), Math.min(1, left / lower)];
}

/** Fraction (0 to 1) of the lower stream that may go either way. */
export const crossable = (streams: Streams): number => {
  const [least, most] = allowed(streams);
  return most - least;
};

/** @param position 0 to 1; at 0 as much of the lower stream as can goes right, at 1 as much as can goes left */
export function partsAt(position: number, streams: Streams): LeftParts {
  const [least, most] = allowed(streams);
  const ivc = least + within(0, position, 1) * (most - least);
  return { ivc, svc: within(0, (streams.left - streams.lower * ivc) / (1 - streams.lower), 1) };
}

/** The position, 0 to 1, that gives the lower stream more to the left than the upper one by this difference. */
export function positionOf({ ivc, svc }: LeftParts, streams: Streams): number {
  const [least, most] = allowed(streams);
  // ivc - svc grows along the allowed stretch as ivc does, by 1 / (1 - lower)
  const balanced = streams.left + (1 - streams.lower) * (ivc - svc);
  return (balanced - least) / (most - least);
}

/** The few fitted numbers, dimensionless, of the rule by which streams pass each other or mix. */
export interface Crossing extends Parting {
  /** part of what can cross that does, streams far apart */
  readonly most: number;
  /** by how much that grows per part of the flow that the lower stream brings beyond what the lung on its side takes */
  readonly excess: number;
  /** strength of a narrowing's jet (see `jetStrength`) that mixes the streams where it meets the upper one head-on */
  readonly jet: number;
  /** clearance from the place of parting at which a jet's mixing is down to 37 % */
  readonly jetReach: number;
}

/** A little more than all, so that a fit is not held at the end. */
const ALL = 1.05;

/**
 * Each stream takes the lung that it lies towards, the fuller the more it brings; head-on, more so with a jet, they mix.
 * @param clearance number of mean radii between the axes
 * @param jet see `jetStrength`
 * @returns position, 0 to 1, see {@link partsAt}
 */
export function usualPosition(
  clearance: number,
  jet: number,
  streams: Pick<Streams, "lower" | "left">,
  rule: Crossing,
): number {
  const away = awayFrom(clearance, jet, rule);
  const side = sideAt(away, rule);
  const excess = excessAt(side, streams);
  const kept = Math.exp(-((jet / rule.jet) ** 2) * Math.exp(-((away / rule.jetReach) ** 2)));
  return 0.5 + 0.5 * kept * side * Math.min(ALL, rule.most + rule.excess * excess);
}
