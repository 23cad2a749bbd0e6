/** How far the plane's lines lie from three dimensions. */
import type { SetCase } from "../three-d/fit-set.ts";
import { mean } from "../three-d/run-line.ts";
import type { PlaneLine } from "./run-case.ts";

/** A vein's part to the left lung, for both veins. */
export interface LeftParts {
  readonly ivc: number;
  readonly svc: number;
}

export interface Miss {
  /** natural logarithm of the plane's power over that in three dimensions */
  readonly power: number;
  /** the greater miss of both veins' parts to the left lung, and the same of the upper vein alone */
  readonly share: number;
  readonly upper: number;
}

export function missOf({ stored }: SetCase, { power, parcels }: PlaneLine, parts: LeftParts = parcels): Miss {
  const upper = Math.abs(parts.svc - stored.shares.svc.left);
  return {
    // a plane that gains power, or none that could be read, misses by more than any other
    power: power > 0 ? Math.log(power / stored.power.value) : Number.NEGATIVE_INFINITY,
    share: Math.max(upper, Math.abs(parts.ivc - stored.shares.ivc.left)),
    upper,
  };
}

/** Least for the best closure: typical miss of power, and of shares in units of a quarter of the blood. */
export const scoreOf = (misses: readonly Miss[]): number =>
  mean(misses.map(({ power }) => Math.min(2, Math.abs(power)))) + mean(misses.map(({ share }) => 4 * share));
