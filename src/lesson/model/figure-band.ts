/** What the model leaves open about a live number: the band of the pathway's drop, loss and shares, and the spread of the wash-out. */

import { entryAt, present } from "../../sim/checked/present.ts";
import { type Expression, evaluate, namesIn } from "./expression.ts";
import { lookupIn, type Situation } from "./figure-paths.ts";

type Band = readonly [low: number, high: number];

const BANDED =
  /^(\w+\.)?(?:pathway\.(pressureDrop|powerLoss)|shares\.(ivc|svc)\.(left|right)|field\.(washOut)Seconds)$/;

/**
 * In the figure's own unit. Null for a bare number, for numbers without a band, and where several outputs are put together: what
 * one law leaves open largely falls out of a ratio.
 */
export function figureBand(
  { of, format }: { readonly of: Expression; readonly format: { readonly bare: boolean } },
  situation: Situation,
): Band | null {
  const names = namesIn(of);
  if (format.bare || names.length !== 1) return null;
  const ends = bandOf(entryAt(names, 0), situation)?.map((end) => evaluate(of, () => end));
  const known = ends?.filter((end) => end !== null).sort((a, b) => a - b);
  return known?.length === 2 ? [entryAt(known, 0), entryAt(known, 1)] : null;
}

function bandOf(path: string, situation: Situation): readonly number[] | null {
  const match = BANDED.exec(path);
  if (!match) return null;
  const [, state = "", loss, vein, lung, washOut] = match;
  const lookup = lookupIn(situation);
  const stem = loss
    ? `${state}pathway.band.${loss}`
    : washOut
      ? `${state}field.washOutBand`
      : `${state}shares.${vein}.band`;
  const [low, high] = [lookup(`${stem}.0`), lookup(`${stem}.1`)];
  if (low === null || high === null) return null;
  if (lung !== "right") return [low, high];
  // The band is the left lung's; what it leaves is the right one's.
  const both = present(lookup(`${state}shares.${vein}.left`)) + present(lookup(path));
  return [both - high, both - low];
}
