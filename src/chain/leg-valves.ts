/** The leg veins' two valves: leaflets swung by the computed flow, on the running clock. */

import { BLOOD_DENSITY, bloodViscosity } from "../sim/body/blood.ts";
import { entryAt } from "../sim/checked/present.ts";
import type { Circulation, Traces } from "../sim/circulation/answer.ts";
import { lowerValveFlow } from "../sim/circulation/foot-veins.ts";
import { closedAngle, type LeafletState, openness, swing, type ValveSize } from "../sim/clots/leaflet.ts";
import { fromLitresPerMinute, fromMillimetre } from "../sim/units.ts";

/** 0 shut .. 1 as wide as the pocket lets it: the valve above the calf, through which blood leaves, and the one below it. */
export interface LegValves {
  readonly out: number;
  readonly in: number;
  /** L/min through the one below, at the traces' times */
  readonly below: Float64Array;
}

/** mm: popliteal vein of an adult of 1.7 m2 (9 mm, chosen for teaching; docs/constants-from-memory.md), with body surface to the half; both legs share the flow. */
const VEIN_DIAMETER = 9;
const LEGS = 2;
/** A leaflet's length over half the vein's width (common practice, no source: they overlap a little when shut). */
const OVERLAP = 1.35;
/** s: the flow counts as steady over one piece; after longer jumps of the clock it restarts. */
const PIECE = 0.01;
const LONGEST_JUMP = 0.5;

const SHUT = (valve: ValveSize): LeafletState => ({ angle: closedAngle(valve), turning: 0 });

function flowAt({ time, period }: Traces, flow: Float64Array, seconds: number): number {
  const phase = (((seconds % period) + period) % period) / period;
  const at = phase * (time.length - 1);
  const i = Math.min(time.length - 2, Math.floor(at));
  return entryAt(flow, i) + (entryAt(flow, i + 1) - entryAt(flow, i)) * (at - i);
}

/** Follows one pane's circulation; null while it has no leg flows. */
export function legValves() {
  let known: Circulation | null = null;
  let at = 0;
  let states: { out: LeafletState; in: LeafletState } | null = null;

  return {
    follow(circulation: Circulation | null, time: number): LegValves | null {
      const { legs, legBed } = circulation?.traces.flows ?? {};
      if (!circulation || !legs || !legBed) return null;
      const { traces, request } = circulation;
      const halfWidth = fromMillimetre((VEIN_DIAMETER / 2) * Math.sqrt(request.body.bsa / 1.7));
      const valve: ValveSize = { halfWidth, length: OVERLAP * halfWidth };
      const blood = { density: BLOOD_DENSITY, viscosity: bloodViscosity(request.body.haemoglobin) };
      const below = lowerValveFlow(traces, legBed, request.body.bsa);
      const perFlow = 1 / (LEGS * Math.PI * halfWidth ** 2);
      if (known !== circulation || !states || time < at || time - at > LONGEST_JUMP) {
        // A whole repeat from shut: by its end the leaflets have forgotten where they began.
        if (known !== circulation || !states) states = { out: SHUT(valve), in: SHUT(valve) };
        known = circulation;
        at = time - traces.period;
      }
      while (time - at > 1e-9) {
        const step = Math.min(PIECE, time - at);
        const velocity = (flow: Float64Array) =>
          fromLitresPerMinute(flowAt(traces, flow, at + step / 2)) * perFlow;
        states = {
          out: swing(valve, states.out, velocity(legs), step, blood),
          in: swing(valve, states.in, velocity(below), step, blood),
        };
        at += step;
      }
      return { out: openness(valve, states.out), in: openness(valve, states.in), below };
    },
  };
}
