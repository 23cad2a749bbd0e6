/** Fits the loss law to the set, judges it on held-out cases, and writes both down. */
import { writeFileSync } from "node:fs";
import { INTERPOLATED } from "../../src/sim/hydraulics/loss-law/features.ts";
import type { Fitted, LawSet } from "../../src/sim/hydraulics/loss-law/law-set.ts";
import { rangesOf } from "../../src/sim/hydraulics/loss-law/range.ts";
import { PATHWAY_STAGES } from "../../src/sim/parameters/request.ts";
import { fitLaw, type Law, QUANTITIES, type Quantity, speakerOf } from "./fit-law.ts";
import { isFitted, readSet, type SetCase } from "./fit-set.ts";
import { byFamilies, byFolds, type Judged, judge } from "./held-out.ts";

/** Part of the held-out cases that a band is to hold, with a little to spare. */
const HELD = 0.92;
const DIGITS = 6;
/** Of the lists by case, which the page loads: far below what a case is known to. */
const third = (value: number): number => Math.round(value * 1e3) / 1e3;

export interface HeldOut {
  /** a twentieth of the cases left out at a time, and an eighth */
  readonly folds: readonly Judged[];
  readonly eighths: readonly Judged[];
  readonly families: Readonly<Record<string, readonly Judged[]>>;
  /** cases that are no part of the fit: even inflow, pulsation */
  readonly checks: readonly Judged[];
}

const quantile = (values: readonly number[], part: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(part * values.length))]!;

export function fitToSet(): void {
  const cases = readSet();
  const fitted = cases.filter(isFitted);
  const law = fitLaw(fitted);
  const says = speakerOf(law);
  const held: HeldOut = {
    folds: byFolds(fitted, law, 20),
    eighths: byFolds(fitted, law, 8),
    families: byFamilies(fitted, law),
    checks: cases.filter((each) => !isFitted(each)).map((each) => judge(each, says(each), law)),
  };
  write("../../src/sim/hydraulics/loss-law/loss-law.json", lawSet(law, fitted, held));
  write("../../docs/validation/loss-law-held-out.json", held);
}

/** One case a line, so that a changed case shows as such. */
function write(path: string, value: object): void {
  const rounded = JSON.stringify(value, (_key, each) =>
    typeof each === "number" ? Number(each.toPrecision(DIGITS)) : each,
  );
  writeFileSync(new URL(path, import.meta.url), `${rounded.replaceAll(/(\],|\},)(?=[[{"])/g, "$1\n")}\n`);
}

const miss = (judged: Judged, name: Quantity): number =>
  Math.abs(name === "share" ? judged.position : judged[name]);

function lawSet(law: Law, cases: readonly SetCase[], { folds, families }: HeldOut): LawSet {
  const part = (name: Quantity): Fitted => ({
    spread: law.spreads[name],
    reach: quantile(
      folds.map((each) => miss(each, name) / each.deviation[name]),
      HELD,
    ),
    values: law.samples[name].values.map(third),
    errors: law.samples[name].errors.map(third),
  });
  const outside = (name: Quantity) =>
    quantile(
      Object.values(families)
        .flat()
        .map((each) => Math.abs(each.base[name])),
      0.9,
    );
  const [power, drop, share] = QUANTITIES.map(part) as [Fitted, Fitted, Fitted];
  return {
    constants: law.constants,
    crossing: law.crossing,
    unsettled: law.unsettled,
    features: Array.from({ length: INTERPOLATED }, (_, k) => law.points.map((point) => third(point[k]!))),
    power,
    drop,
    share,
    outside: { power: outside("power"), drop: outside("drop"), share: outside("share") },
    ranges: Object.fromEntries(
      PATHWAY_STAGES.map((stage) => [
        stage,
        rangesOf(law.points.filter((_, i) => cases[i]!.request.stage === stage)),
      ]),
    ) as LawSet["ranges"],
  };
}
