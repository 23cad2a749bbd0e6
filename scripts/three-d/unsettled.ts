/** How far a case's crossing share is left open by where its run began. */
import { crossable } from "../../src/sim/hydraulics/loss-law/crossing.ts";
import { nearParting } from "../../src/sim/hydraulics/loss-law/features.ts";
import type { SetCase } from "./fit-set.ts";

/** How near a case lies to the very place of parting, 0 to 1. */
export const nearOf = ({ sizes, streams }: SetCase): number => nearParting(sizes, streams);

/** How far apart the crossing share comes out when a case is run from other starts, at the very place of parting. */
export function unsettledOf(cases: readonly SetCase[]): number {
  const repeated = cases.filter(({ stored }) => stored.shares.ivc.starts !== undefined);
  if (repeated.length === 0)
    throw new Error("no case was run from other starts (shares.ivc.starts): how far shares stray is unknown");
  const squares = (value: (each: SetCase) => number) =>
    repeated.reduce((sum, each) => sum + value(each) ** 2, 0);
  return Math.sqrt(
    squares(({ stored, streams }) => stored.shares.ivc.starts! / crossable(streams)) / squares(nearOf),
  );
}
