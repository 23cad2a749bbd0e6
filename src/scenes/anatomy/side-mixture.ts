/** Of what the blood in a vessel beyond the pathway is mixed, by origin. */

import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { hasPlane } from "../../sim/parameters/request.ts";
import { ORIGINS } from "../../sim/tracers/tracers.ts";
import { meanOf } from "../drawing/trace-clock.ts";
import type { Course } from "./side-course.ts";

/** Parts by origin; a lung's blood as the model mixes it. */
export function mixtureOf(carries: Course["carries"], circulation: Circulation): readonly number[] {
  if (typeof carries === "number") return ORIGINS.map((_, origin) => (origin === carries ? 1 : 0));
  if (carries === "rich" || carries === "arterial") return [1, 0, 0];
  const { shares, flows, traces, request } = circulation;
  const liver = traces.flows.hepaticVein ? meanOf(traces, traces.flows.hepaticVein) : flows.ivc / 2;
  const hepatic = Math.min(1, liver / Math.max(1e-6, flows.ivc));
  if (carries === "lower") return [0, hepatic, 1 - hepatic];
  // Before a Fontan the lower vein opens into the heart.
  if (!shares && hasPlane(request.stage)) return [1, 0, 0];
  // A ventricle mixes both veins' blood for both lungs.
  const [upper, lower] = shares
    ? [flows.svc * shares.svc[carries], flows.ivc * shares.ivc[carries]]
    : [flows.svc, flows.ivc];
  const of = 1 / Math.max(1e-6, upper + lower);
  return [upper * of, lower * hepatic * of, lower * (1 - hepatic) * of];
}

/** The origin at `place` (0..1) in a mixture. */
export function originAt(mixture: readonly number[], place: number): number {
  let [origin, below] = [0, entryAt(mixture, 0)];
  while (place >= below && origin < mixture.length - 1) below += entryAt(mixture, ++origin);
  return origin;
}
