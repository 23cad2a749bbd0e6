/** Closed outlines (mm) of what can be pointed at in a heart with two ventricles. */
import { band } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { anatomyOf } from "../../anatomy/chest-anatomy.ts";
import type { BloodTube } from "../../anatomy/great-vessels.ts";
import { chestFrame } from "../chest-plan.ts";
import { LEFT_ATRIUM, LEFT_CAVITY, RIGHT_ATRIUM, RIGHT_CAVITY } from "./heart-plan.ts";
import { greatVessels } from "./heart-vessels.ts";

const CHAMBERS: Readonly<Record<string, readonly Point[]>> = {
  rightAtrium: RIGHT_ATRIUM,
  rightVentricle: RIGHT_CAVITY,
  atrium: LEFT_ATRIUM,
  ventricle: LEFT_CAVITY,
};

/** By the names of `parts.ts`. */
function tubes(close: boolean): readonly (readonly [name: string, tube: BloodTube])[] {
  const { upperVein, lowerVein, trunk, leftArtery, rightArtery, aorta, descending, returning } = greatVessels(
    anatomyOf(chestFrame("two-ventricle", close)),
  );
  return [
    ["svc", upperVein],
    ["ivc", lowerVein],
    ["lungTrunk", trunk],
    ["leftPulmonaryArtery", leftArtery],
    ["rightPulmonaryArtery", rightArtery],
    ["arch", aorta],
    ["descending", descending],
    ...returning.map((tube) => [tube.name.replace("Upper", ""), tube] as const),
  ];
}

const known = new Map<boolean, ReadonlyMap<string, readonly Point[]>>();

/** By the names of all parts that can be lit. @param close heart and lungs fill the picture */
export function litParts(close = false): ReadonlyMap<string, readonly Point[]> {
  const before = known.get(close);
  if (before) return before;
  const made = new Map([
    ...Object.entries(CHAMBERS),
    ...tubes(close).map(([name, { line, from, to }]) => [name, band(line, from + 2, to + 2)] as const),
  ]);
  known.set(close, made);
  return made;
}

export const outlinesOf = (lit: ReadonlySet<string>, close: boolean): readonly (readonly Point[])[] =>
  [...litParts(close)].filter(([name]) => lit.has(name)).map(([, outline]) => outline);
