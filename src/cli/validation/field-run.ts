/** One plane through kind "field" of `compute`, and how much two answers differ. */

import { entryAt } from "../../sim/checked/present.ts";
import { FIELD_KIND } from "../../sim/compute/field-kind.ts";
import type { ValidationPlane } from "./field-planes.ts";

export interface PlaneAnswer {
  readonly openings: readonly { name: string; flow: number; pressure: number; totalPressure: number }[];
  readonly loss: { readonly power: number; readonly dissipation: number; readonly auditPercent: number };
  readonly shares: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly recirculatingArea: number;
  readonly run: {
    readonly cells: number;
    readonly steps: number;
    readonly steady: boolean;
    readonly wallSeconds: number;
  };
}

export async function solvePlane(
  { geometry }: ValidationPlane,
  depth: "uniform" | "round",
  cellsAcross: number,
): Promise<PlaneAnswer> {
  const checked = FIELD_KIND.check({ kind: "field", ...geometry, depth, cellsAcross, maxSeconds: 150 });
  if ("faults" in checked) throw new Error(JSON.stringify(checked.faults));
  const outcome = await FIELD_KIND.run(checked.request);
  if ("reason" in outcome) throw new Error(outcome.reason);
  return outcome.answer as PlaneAnswer;
}

export interface Gap {
  /** fraction of the fine answer's loss */
  readonly loss: number;
  /** greatest change of a pressure difference to the last opening, over the greatest such difference */
  readonly pressure: number;
  /** greatest change of an opening's flow, over all that flows in */
  readonly flow: number;
  /** greatest change of a share */
  readonly share: number;
}

/** How much `coarse` differs from `fine`. */
export function gapBetween(coarse: PlaneAnswer, fine: PlaneAnswer): Gap {
  const inflow = fine.openings.reduce((sum, { flow }) => sum + Math.max(0, flow), 0);
  const differences = ({ openings }: PlaneAnswer) =>
    openings.flatMap(({ pressure, totalPressure }, n) =>
      openings
        .slice(0, n)
        .flatMap((other) => [pressure - other.pressure, totalPressure - other.totalPressure]),
    );
  const exact = differences(fine);
  const found = differences(coarse);
  const head = Math.max(...exact.map(Math.abs));
  const shares = Object.entries(fine.shares).flatMap(([from, to]) =>
    Object.entries(to).map(([name, part]) => Math.abs(part - (coarse.shares[from]?.[name] ?? 0))),
  );
  return {
    loss: Math.abs(coarse.loss.power / fine.loss.power - 1),
    pressure: Math.max(...found.map((value, n) => Math.abs(value - entryAt(exact, n)))) / head,
    flow:
      Math.max(...fine.openings.map(({ flow }, n) => Math.abs(entryAt(coarse.openings, n).flow - flow))) /
      inflow,
    share: Math.max(0, ...shares),
  };
}
