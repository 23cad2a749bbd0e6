/** The law judged by cases that it was not fitted to: one part at a time, and whole families. */

import { crossable, partsAt } from "../../src/sim/hydraulics/loss-law/crossing.ts";
import { featuresOf } from "../../src/sim/hydraulics/loss-law/features.ts";
import { beyond, rangesOf } from "../../src/sim/hydraulics/loss-law/range.ts";
import { fitLaw, type Law, leftParts, type Said, speakerOf } from "./fit-law.ts";
import type { SetCase } from "./fit-set.ts";

/** What is left out together, whatever else a case of it varies. */
const FAMILIES: Readonly<Record<string, (each: SetCase) => boolean>> = {
  "all narrowings": ({ sizes, request }) =>
    sizes.leftStenosis > 0 ||
    sizes.rightStenosis > 0 ||
    (sizes.narrowing > 0 && request.stage !== "atriopulmonary"),
  "all adults (over 1.5 m2)": ({ stored }) => stored.body.bsa > 1.5,
  "offset family": ({ stored }) => ["offset", "headon"].includes(stored.family),
  "diameter family": ({ stored }) => stored.family === "trunk",
  "flare family": ({ stored }) => stored.family === "flare",
  "outlet split family": ({ stored }) => stored.family === "left",
  "inlet split family": ({ stored }) => stored.family === "lower",
  "index family": ({ stored }) => stored.family === "index",
  fenestrations: ({ stored }) => stored.family === "fenestration",
  "spread over everything": ({ stored }) => stored.family === "spread",
};

export interface Judged {
  readonly name: string;
  /** whether the law itself calls it outside the cases that it was fitted to */
  readonly outside: boolean;
  /** logarithms of law over 3D: with the fit, and the relations alone */
  readonly power: number;
  readonly drop: number;
  readonly base: { readonly power: number; readonly drop: number; readonly share: number };
  /** law less 3D, the greater of both veins' parts to the left */
  readonly share: number;
  /** the lower vein's part alone */
  readonly position: number;
  /** deviations that the law itself gave them */
  readonly deviation: { readonly power: number; readonly drop: number; readonly share: number };
  /** the case's own uncertainty, as a part; for the share as it is */
  readonly own: { readonly power: number; readonly drop: number; readonly share: number };
}

export function judge(each: SetCase, said: Said, law: Law): Judged {
  const { stored } = each;
  const base = {
    power: Math.log(said.base.power / each.power),
    drop: Math.log(said.base.drop / each.drop),
  };
  const true3D = leftParts(each);
  const usual = partsAt(said.base.share, each.streams).ivc - true3D.ivc;
  const lower = said.left.ivc - true3D.ivc;
  const upper = said.left.svc - true3D.svc;
  return {
    name: stored.name,
    outside: isOutside(each, law),
    power: base.power + said.power.mean,
    drop: base.drop + said.drop.mean,
    base: { ...base, share: usual },
    share: Math.abs(lower) > Math.abs(upper) ? lower : upper,
    position: lower,
    deviation: {
      power: said.power.deviation,
      drop: said.drop.deviation,
      share: said.share.deviation * crossable(each.streams),
    },
    own: {
      power: stored.power.uncertainty / stored.power.value,
      drop: stored.drop.uncertainty / stored.drop.value,
      share: Math.max(stored.shares.ivc.uncertainty, stored.shares.svc.uncertainty),
    },
  };
}

function isOutside({ sizes, streams, fluid, request }: SetCase, law: Law): boolean {
  const same = law.points.filter((_, at) => law.stages[at] === request.stage);
  return beyond(rangesOf(same), featuresOf(sizes, streams, fluid)).length > 0;
}

const without = (
  cases: readonly SetCase[],
  left: (each: SetCase, at: number) => boolean,
  whole: Law,
): Judged[] => {
  const law = fitLaw(
    cases.filter((each, at) => !left(each, at)),
    whole,
  );
  const says = speakerOf(law);
  return cases.filter(left).map((each) => judge(each, says(each), law));
};

/** Each case judged once, in the set's order. A stride through the set puts a family's neighbours into different parts. */
export function byFolds(cases: readonly SetCase[], whole: Law, folds: number): Judged[] {
  const judged = Array.from({ length: folds }, (_, fold) =>
    without(cases, (_each, at) => at % folds === fold, whole),
  ).flat();
  return cases.map(({ stored }) => judged.find(({ name }) => name === stored.name)!);
}

export const byFamilies = (cases: readonly SetCase[], whole: Law): Readonly<Record<string, Judged[]>> =>
  Object.fromEntries(
    Object.entries(FAMILIES).map(([family, belongs]) => [family, without(cases, belongs, whole)]),
  );
