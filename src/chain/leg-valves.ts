/** The leg veins' two valves: leaflets swung by the computed flow, on the running clock. */

import { BLOOD_DENSITY, bloodViscosity } from "../sim/body/blood.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import { lowerValveFlow } from "../sim/circulation/experiments/foot-veins.ts";
import { closedAngle, type LeafletState, openness, swing, type ValveSize } from "../sim/clots/leaflet.ts";
import { fromLitresPerMinute, fromMillimetre } from "../sim/units.ts";
import { traceAt } from "./field-boundary.ts";

/** 0 shut .. 1 as wide as the pocket lets it: the valve above the calf, through which blood leaves, and the one below it. */
interface Openness<Value> {
  readonly out: Value;
  readonly in: Value;
}

export interface LegValves extends Openness<number> {
  /** L/min through the one below, at the traces' times */
  readonly below: Float64Array;
}

/** mm: popliteal vein of an adult of 1.7 m2 (9 mm, chosen for teaching; docs/constants-from-memory.md), with body surface to the half; both legs share the flow. */
const VEIN_DIAMETER = 9;
const LEGS = 2;
/** A leaflet's length over half the vein's width (common practice, no source: they overlap a little when shut). */
const OVERLAP = 1.35;
/** s: the flow counts as steady over one piece at most. */
const PIECE = 0.01;

/** How a valve's leaflets swing in a flow (L/min in both legs), at the traces' times. */
function swinging({ traces, request }: Circulation, flow: Float64Array): Float64Array {
  const { time, period } = traces;
  const halfWidth = fromMillimetre((VEIN_DIAMETER / 2) * Math.sqrt(request.body.bsa / 1.7));
  const valve: ValveSize = { halfWidth, length: OVERLAP * halfWidth };
  const blood = { density: BLOOD_DENSITY, viscosity: bloodViscosity(request.body.haemoglobin) };
  const perFlow = 1 / (LEGS * Math.PI * halfWidth ** 2);
  let [at, leaflet]: [number, LeafletState] = [-period, { angle: closedAngle(valve), turning: 0 }];
  const until = (to: number): number => {
    while (to - at > 1e-9) {
      const step = Math.min(PIECE, to - at);
      const velocity = fromLitresPerMinute(traceAt(traces, flow, at + step / 2)) * perFlow;
      leaflet = swing(valve, leaflet, velocity, step, blood);
      at += step;
    }
    return openness(valve, leaflet);
  };
  // After a whole repeat from shut the leaflets have forgotten where they began.
  return Float64Array.from(time, until);
}

/** Follows one pane's circulation; null while it has no leg flows. */
export function legValves() {
  let known: Circulation | null = null;
  let read: { readonly below: Float64Array; readonly cycle: Openness<Float64Array> } | null = null;

  return {
    follow(circulation: Circulation | null, time: number): LegValves | null {
      const { legs, legBed } = circulation?.traces.flows ?? {};
      if (!circulation || !legs || !legBed) return null;
      const { traces, request } = circulation;
      if (known !== circulation || !read) {
        known = circulation;
        const below = lowerValveFlow(traces, legBed, request.body.bsa);
        read = { below, cycle: { out: swinging(circulation, legs), in: swinging(circulation, below) } };
      }
      const { below, cycle } = read;
      return { out: traceAt(traces, cycle.out, time), in: traceAt(traces, cycle.in, time), below };
    },
  };
}
