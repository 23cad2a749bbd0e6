/** The right lung's veins on their way behind graft or tunnel to the atrium, seen through it. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { lineDistance } from "../../sim/geometry/distance.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { paintGhostVein } from "../anatomy/paint-ghost.ts";
import type { Ink } from "../anatomy/painted-sheet.ts";
import { roundOf } from "../anatomy/tones.ts";
import { spotsOf } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { CHEST_AT } from "./chest-plan.ts";
import { saturationAlong } from "./circuit-blood.ts";
import type { Laid } from "./dots.ts";
import { dimOf, type Emphasis } from "./emphasis.ts";

const HIDING: readonly string[] = ["conduit", "tunnel"];
const HIDDEN: readonly string[] = ["rightPulmonaryVein", "rightLowerPulmonaryVein"];
/** Part of a vein's own colour that is seen. */
const SEEN = 0.36;

/** @param ink counts up */
export function paintBehindPathway(
  ink: Ink,
  laid: readonly Laid[],
  circulation: Circulation,
  theme: Theme,
  emphasis: Emphasis,
): void {
  const before = laid.find(({ vessel }) => HIDING.includes(vessel.name));
  if (!before) return;
  const fromPathway = lineDistance(spotsOf(before.line));
  for (const { vessel, line } of laid) {
    // What is pointed at lies over the pathway.
    if (!HIDDEN.includes(vessel.name) || emphasis.lit.has(vessel.name)) continue;
    const hidden = spotsOf(line)
      .filter((spot) => fromPathway(...spot) < before.vessel.width / 2 + 1)
      .map(([x, y]): Point => [x, -y]);
    if (hidden.length < 2) continue;
    const { name, width } = vessel;
    const { edge, body, light, wall } = roundOf(saturationAlong(circulation, vessel, 0), theme);
    const back = (color: string) => mix(color, theme.colour.stage, dimOf(emphasis, before.vessel.name));
    paintGhostVein(
      ink,
      { name, line: hidden, from: width, to: width, holds: "pulmonaryVein" },
      { edge: back(edge), body: back(body), light: back(light), wall: back(wall) },
      { left: SEEN, size: CHEST_AT.scale },
    );
  }
}
