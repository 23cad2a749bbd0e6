/** Uncertainty due to the grid, from cases run on two or three grids. */
import type { PathwayStage } from "../../src/sim/parameters/request.ts";
import type { Case } from "./case.ts";
import { acrossOf } from "./jobs.ts";
import { type RunLine, scatterOf, sharesOf } from "./run-line.ts";

/** The error falls with the third power of the cells across; seen in the straight pipe, and between the pairs. */
const ORDER = 3;
/** A pair says something about the grid only when both vary less than this. */
const CALM = 0.015;

interface Run {
  readonly one: Case;
  readonly line: RunLine;
}

export interface GridErrors {
  /** parts of the value, at so many cells across */
  readonly power: (across: number) => number;
  readonly drop: (across: number) => number;
  /** fraction, on any grid: how much the shares of blood differ between repeated runs, in a chamber and where tubes cross */
  readonly share: (stage: PathwayStage) => number;
  readonly summary: object;
}

const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / Math.max(1, values.length));

export function gridErrors(runs: readonly Run[]): GridErrors {
  const byName = new Map(runs.map((run) => [run.one.name, run]));
  const finest = new Map<string, Run>();
  const plain = (name: string) => name.replace(/-grid-\d+$/, "");
  for (const run of runs) {
    const base = plain(run.one.name);
    const held = finest.get(base);
    if (!held || run.line.dx < held.line.dx) finest.set(base, run);
  }
  const pairs = [...byName.values()].flatMap((coarse) => {
    const fine = finest.get(plain(coarse.one.name))!;
    return fine === coarse ? [] : [{ coarse, fine }];
  });
  const factor = (key: "power" | "drop") => {
    const found = pairs
      .filter(({ coarse, fine }) => Math.max(scatterOf(coarse.line, key), scatterOf(fine.line, key)) < CALM)
      .map(({ coarse, fine }) => {
        const [low, high] = [coarse, fine].map(({ one, line }) => acrossOf(one, line.dx) ** -ORDER) as [
          number,
          number,
        ];
        return (coarse.line[key] / fine.line[key] - 1) / (low - high);
      });
    return { count: found.length, value: rootMeanSquare(found) };
  };
  const power = factor("power");
  const drop = factor("drop");
  const apart = (chambered: boolean): number => {
    const of = pairs.filter(({ fine }) => (fine.one.stage === "atriopulmonary") === chambered);
    const gaps = of.flatMap(({ coarse, fine }) =>
      (["ivc", "svc"] as const).map(
        (vein) => sharesOf(coarse.line, vein)!.left.value - sharesOf(fine.line, vein)!.left.value,
      ),
    );
    return rootMeanSquare(gaps) / Math.SQRT2;
  };
  const share = { chamber: apart(true), cross: apart(false) };
  const at = (one: { value: number }) => (across: number) => one.value * across ** -ORDER;
  const shown = (one: typeof power) => ({
    pairs: one.count,
    partAt34Across: Number(at(one)(34).toPrecision(3)),
  });
  return {
    power: at(power),
    drop: at(drop),
    share: (stage) => (stage === "atriopulmonary" ? share.chamber : share.cross),
    summary: {
      order: ORDER,
      power: shown(power),
      drop: shown(drop),
      share: { chamber: Number(share.chamber.toPrecision(2)), cross: Number(share.cross.toPrecision(2)) },
    },
  };
}
