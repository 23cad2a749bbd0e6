/** Where the drawn window onto the blood ends: a vein's at its opening; a pulmonary artery's short of it, so that one is seen to go on as a closed vessel. */
import { lastOf } from "../../sim/checked/present.ts";
import { line, spotAt } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, Opening, Point } from "../../sim/geometry/geometry.ts";
import { CLOSED, LIP } from "./fade.ts";

export const isArtery = (name: string): name is "left" | "right" => name === "left" || name === "right";

export function windowEnd<Cut extends Opening>(cut: Cut, { arteries }: Pick<ChestFrame, "arteries">): Cut {
  const way = isArtery(cut.name) && arteries?.[cut.name];
  if (!way) return cut;
  const whole = line(way);
  const { at, along } = spotAt(whole, 1 - (CLOSED * cut.width) / lastOf(whole.run));
  return { ...cut, centre: at, normal: along };
}

/** Where an artery's front begins again, from one side to the other; `more`: parts of the width beyond it and beside it, mm. */
export function lipOf({ centre, normal, width }: Opening, beside = 0, further = 0): Point[] {
  return Array.from({ length: 25 }, (_, i): Point => {
    const turn = (Math.PI * i) / 24;
    const along = (further - LIP * width) * Math.sin(turn);
    const across = (width / 2 + beside) * Math.cos(turn);
    return [
      centre[0] + normal[0] * along - normal[1] * across,
      centre[1] + normal[1] * along + normal[0] * across,
    ];
  });
}
