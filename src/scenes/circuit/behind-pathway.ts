/** The right lung's veins on their way behind graft or tunnel to the atrium: seen through it between dashed edges. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { roundOf } from "../anatomy/tones.ts";
import type { Brush } from "../drawing/brush.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationAlong } from "./circuit-blood.ts";
import type { Laid } from "./dots.ts";

const HIDING: readonly string[] = ["conduit", "tunnel"];
const HIDDEN: readonly string[] = ["rightPulmonaryVein", "rightLowerPulmonaryVein"];
/** How much of a vein is seen, and of its edges. */
const [SEEN, EDGE] = [0.34, 0.85];
/** Samples of a dash and from one to the next; they lie 4 plane units apart. */
const [DASH, APART] = [2, 3];

export function drawBehindPathway(
  ink: Brush,
  laid: readonly Laid[],
  circulation: Circulation,
  theme: Theme,
): void {
  const before = laid.find(({ vessel }) => HIDING.includes(vessel.name));
  if (!before) return;
  const isHidden = (x: number, y: number): boolean =>
    before.line.x.some(
      (px, i) => Math.hypot(px - x, entryAt(before.line.y, i) - y) < before.vessel.width / 2 + 1,
    );
  for (const { vessel, line } of laid) {
    if (!HIDDEN.includes(vessel.name)) continue;
    const hidden = [...line.x.keys()].filter((i) => isHidden(entryAt(line.x, i), entryAt(line.y, i)));
    const [from, to] = [hidden[0] ?? 0, hidden.length > 0 ? lastOf(hidden) : 0];
    if (to - from < DASH) continue;
    const { wall, body } = roundOf(saturationAlong(circulation, vessel, 0), theme);
    /** a stretch of the vein, so far beside its middle */
    const trace = (first: number, last: number, aside: number) => {
      for (let i = first; i <= last; i++) {
        const [a, b] = [Math.max(0, i - 1), Math.min(line.x.length - 1, i + 1)];
        const [dx, dy] = [entryAt(line.x, b) - entryAt(line.x, a), entryAt(line.y, b) - entryAt(line.y, a)];
        const off = aside / (Math.hypot(dx, dy) || 1);
        const [x, y] = [entryAt(line.x, i) - off * dy, entryAt(line.y, i) + off * dx];
        if (i === first) ink.moveTo(x, y);
        else ink.lineTo(x, y);
      }
    };
    trace(from, to, 0);
    ink.stroke({ color: body, width: vessel.width, alpha: SEEN, cap: "butt" });
    for (const side of [-1, 1])
      for (let i = from; i < to; i += APART) {
        trace(i, Math.min(to, i + DASH), (side * vessel.width) / 2);
        ink.stroke({ color: wall, width: 2, alpha: EDGE, cap: "round" });
      }
  }
}
