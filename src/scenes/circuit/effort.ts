/** Where a body's blood goes, as it is drawn: vessels of legs and belly as wide as their flow asks, and muscle that flushes with its own. */
import type { Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { curve, traceCurve } from "../drawing/curve-drawing.ts";
import { flowTrace, meanOf } from "../drawing/trace-clock.ts";
import { ease } from "../theme/motion.ts";
import type { Theme } from "../theme/theme.ts";
import type { Laid } from "./dots.ts";
import { MUSCLES } from "./outlines.ts";

/** L/min and m2 of body in which a stream's vessels have the widths of the tables: two ventricles at rest, as the model has them. */
const USUAL: Readonly<Record<string, number>> = {
  legs: 0.71,
  splanchnic: 1.45,
  "splanchnic+legs": 2.16,
  ivc: 2.16,
};
/** Murray's law gives the cube root of the flow; a gentler one keeps heavy effort's vessels within their limb. */
const GROWS = 1 / 4;
const [MIN_FACTOR, MAX_FACTOR] = [0.6, 1.7];
/** s in which widths follow, and how red muscle becomes at the greatest. */
const FOLLOWS = 1.2;
const FLUSH = 0.34;

export interface Effort {
  /** Goes towards a circulation's flows; whether anything changed. */
  follow(circulation: Circulation, elapsed: number): boolean;
  /** The vessels as wide as their streams stand. */
  widened(laid: readonly Laid[]): readonly Laid[];
  /** Red over muscles by what flows through the legs. */
  drawFlush(ink: Graphics, theme: Theme): void;
}

export function effort(): Effort {
  const now = new Map<string, number>();
  return {
    follow({ traces, request }, elapsed) {
      let changed = false;
      for (const [stream, usual] of Object.entries(USUAL)) {
        const flow = flowTrace(traces.flows, stream);
        const index = flow ? Math.max(0, meanOf(traces, flow)) / request.body.bsa : usual;
        const target = Math.min(MAX_FACTOR, Math.max(MIN_FACTOR, (index / usual) ** GROWS));
        const before = now.get(stream);
        const next = ease(before ?? target, target, elapsed, FOLLOWS);
        now.set(stream, next);
        changed ||= next !== before;
      }
      return changed;
    },
    widened: (laid) =>
      laid.map((each) => {
        const { vessel } = each;
        // What is sewn or painted keeps its size, and the vein that opens into it.
        const kept = vessel.painted || (vessel.flow === "ivc" && !vessel.under);
        const factor = kept ? 1 : (now.get(vessel.flow) ?? 1);
        if (factor === 1) return each;
        // A net is no longer than the vessels between which it lies.
        const width = vessel.between ? vessel.width : factor * vessel.width;
        return { ...each, vessel: { ...vessel, width, widened: factor } };
      }),
    drawFlush(ink, { colour }) {
      ink.clear();
      const alpha = FLUSH * Math.max(0, ((now.get("legs") ?? 1) - 1) / (MAX_FACTOR - 1));
      if (alpha === 0) return;
      for (const { points, width } of MUSCLES) {
        traceCurve(ink, curve(points, 6));
        if (width) ink.stroke({ color: colour.rich, width: 0.9 * width, alpha });
        else ink.fill({ color: colour.rich, alpha });
      }
    },
  };
}
