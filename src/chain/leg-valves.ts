/** The leg veins' two valves: leaflets swung by the computed flow, on the running clock. */

import { BLOOD_DENSITY, bloodViscosity } from "../sim/body/blood.ts";
import { entryAt } from "../sim/checked/present.ts";
import type { Circulation, Traces } from "../sim/circulation/answer.ts";
import { lowerValveFlow } from "../sim/circulation/foot-veins.ts";
import { closedAngle, type LeafletState, openness, swing, type ValveSize } from "../sim/clots/leaflet.ts";
import { fromLitresPerMinute, fromMillimetre } from "../sim/units.ts";

/** 0 shut .. 1 as wide as the pocket lets it: the valve above the calf, through which blood leaves, and the one below it. */
interface Openness {
  readonly out: number;
  readonly in: number;
}

export interface LegValves extends Openness {
  /** L/min through the one below, at the traces' times */
  readonly below: Float64Array;
  /** at the moment (s of the cycle) at which the muscle presses hardest */
  readonly hardest: Openness & { readonly time: number };
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

interface Leaflets {
  readonly out: LeafletState;
  readonly in: LeafletState;
}

/** How one circulation's leaflets swing. */
function swingingIn({ traces, request }: Circulation, legs: Float64Array, below: Float64Array) {
  const halfWidth = fromMillimetre((VEIN_DIAMETER / 2) * Math.sqrt(request.body.bsa / 1.7));
  const valve: ValveSize = { halfWidth, length: OVERLAP * halfWidth };
  const blood = { density: BLOOD_DENSITY, viscosity: bloodViscosity(request.body.haemoglobin) };
  const perFlow = 1 / (LEGS * Math.PI * halfWidth ** 2);
  const advance = (states: Leaflets, from: number, to: number): Leaflets => {
    let [at, now] = [from, states];
    while (to - at > 1e-9) {
      const step = Math.min(PIECE, to - at);
      const velocity = (flow: Float64Array) =>
        fromLitresPerMinute(flowAt(traces, flow, at + step / 2)) * perFlow;
      now = {
        out: swing(valve, now.out, velocity(legs), step, blood),
        in: swing(valve, now.in, velocity(below), step, blood),
      };
      at += step;
    }
    return now;
  };
  const shut: Leaflets = { out: SHUT(valve), in: SHUT(valve) };
  const openIn = (states: Leaflets): Openness => ({
    out: openness(valve, states.out),
    in: openness(valve, states.in),
  });
  const calf = traces.pressures.calf ?? new Float64Array(1);
  const time = entryAt(traces.time, calf.indexOf(Math.max(...calf)));
  // A whole repeat from shut: by its end the leaflets have forgotten where they began.
  return { shut, advance, openIn, hardest: { time, ...openIn(advance(shut, time - traces.period, time)) } };
}

/** Follows one pane's circulation; null while it has no leg flows. */
export function legValves() {
  let known: Circulation | null = null;
  let at = 0;
  let states: Leaflets | null = null;
  let swinging: ReturnType<typeof swingingIn> | null = null;
  let below: Float64Array = new Float64Array();

  return {
    follow(circulation: Circulation | null, time: number): LegValves | null {
      const { legs, legBed } = circulation?.traces.flows ?? {};
      if (!circulation || !legs || !legBed) return null;
      const { traces, request } = circulation;
      if (known !== circulation || !swinging || !states) {
        below = lowerValveFlow(traces, legBed, request.body.bsa);
        swinging = swingingIn(circulation, legs, below);
        states = null;
      }
      if (!states || time < at || time - at > LONGEST_JUMP) {
        states ??= swinging.shut;
        known = circulation;
        at = time - traces.period;
      }
      states = swinging.advance(states, at, time);
      at = time;
      const { hardest } = swinging;
      return { ...swinging.openIn(states), below, hardest };
    },
  };
}
