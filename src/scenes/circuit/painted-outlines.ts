/** Outlines of what the one anatomy paints, in the whole circulation's plane. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { chestFrame, onPlane } from "./chest-plan.ts";

export function paintedOutlines(
  names: readonly string[],
): readonly { readonly name: string; readonly points: readonly Spot[] }[] {
  const anatomy = anatomyOf(chestFrame("extracardiac"));
  return anatomy.parts
    .filter(({ name }) => names.includes(name))
    .map(({ name, outline }) => {
      const points = outline.filter((_, i) => i % 4 === 0).map(onPlane);
      return { name, points: [...points, entryAt(points, 0)] };
    });
}

/** The diaphragm's line in the plane. */
export function diaphragmLine(): readonly Spot[] {
  const { diaphragm } = anatomyOf(chestFrame("extracardiac")).abdomen;
  return [...diaphragm.filter((_, i) => i % 5 === 0), lastOf(diaphragm)].map(onPlane);
}
