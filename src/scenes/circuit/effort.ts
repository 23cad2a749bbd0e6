/** Where a body's blood goes, as it is drawn: vessels of legs and belly as wide as their flow asks, and muscle that flushes with its own. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { KIDNEY_SHARE } from "../../sim/parameters/organ-flow.ts";
import { flowTrace, meanOf } from "../drawing/trace-clock.ts";
import { ease } from "../theme/motion.ts";
import type { Laid } from "./dots.ts";
import { BELOW_LIVER } from "./vessel.ts";

const [LEGS, BELLY] = [0.71, 1.45];
/** L/min and m2 of body in which a stream's vessels have the widths of the tables: two ventricles at rest, as the model has them. */
const USUAL: Readonly<Record<string, number>> = {
  legs: LEGS,
  splanchnic: BELLY,
  "splanchnic+legs": LEGS + BELLY,
  [BELOW_LIVER]: LEGS + KIDNEY_SHARE * BELLY,
};
/** Murray's law: a vessel is as wide as the cube root of its flow asks, within what its limb holds. */
const GROWS = 1 / 3;
const [MIN_FACTOR, MAX_FACTOR] = [0.5, 1.9];
/** s in which widths follow. */
const FOLLOWS = 1.2;
/** Change of a factor that is worth drawing again. */
const SEEN = 0.015;

export interface Effort {
  /** Goes towards a circulation's flows; whether anything changed. */
  follow(circulation: Circulation, elapsed: number): boolean;
  /** The vessels as wide as their streams stand. */
  widened(laid: readonly Laid[]): readonly Laid[];
  /** How red muscle is by what flows through the legs: 0 as at rest .. 1. */
  flush(): number;
}

export function effort(): Effort {
  const now = new Map<string, number>();
  const drawn = new Map<string, number>();
  return {
    follow({ traces, request }, elapsed) {
      let changed = false;
      for (const [stream, usual] of Object.entries(USUAL)) {
        const flow = flowTrace(traces.flows, stream);
        const index = flow ? Math.max(0, meanOf(traces, flow)) / request.body.bsa : usual;
        const target = Math.min(MAX_FACTOR, Math.max(MIN_FACTOR, (index / usual) ** GROWS));
        const next = ease(now.get(stream) ?? target, target, elapsed, FOLLOWS);
        now.set(stream, next);
        const seen = Math.abs(next - (drawn.get(stream) ?? 0));
        changed ||= seen > SEEN || (seen > 0 && next === target);
      }
      if (changed) for (const [stream, factor] of now) drawn.set(stream, factor);
      return changed;
    },
    widened: (laid) =>
      laid.map((each) => {
        const { vessel } = each;
        // What is painted or sewn keeps its size.
        const factor = vessel.painted ? 1 : (drawn.get(vessel.flow) ?? 1);
        if (factor === 1) return each;
        // A net is no longer than the vessels between which it lies.
        const width = vessel.between ? vessel.width : factor * vessel.width;
        return { ...each, vessel: { ...vessel, width, widened: factor } };
      }),
    flush: () => Math.max(0, ((drawn.get("legs") ?? 1) - 1) / (MAX_FACTOR - 1)),
  };
}
