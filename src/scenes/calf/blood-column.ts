/** Dots in the leg vein, carried by the flow in below the muscle and the flow out above it; in between the one passes into the other. */
import type { Traces } from "../../sim/circulation/answer.ts";
import { passage, valueAt } from "../drawing/passage.ts";
import { CALF, PLANE } from "./vein.ts";

const COUNT = 150;
const GOLDEN = 0.618033988749895;
/** Plane units for each mL, times m2 of body: a child's and an adult's leg look alike. */
const REACH = 9;

export interface BloodColumn {
  readonly count: number;
  /** height of each dot, plane units */
  readonly y: Float64Array;
  /** -1..1 across the vein */
  readonly across: Float64Array;
  /** Moves all dots from one moment of the running clock to another. */
  move(from: number, to: number): void;
}

export function bloodColumn(traces: Traces, bodySize: number): BloodColumn {
  const y = Float64Array.from({ length: COUNT }, (_, i) => ((i + 0.5) / COUNT) * PLANE.height);
  const across = Float64Array.from({ length: COUNT }, (_, i) => 2 * (((i + 1) * GOLDEN) % 1) - 1);
  const legs = legTraces(traces);
  const outflow = legs && passage(traces, legs.out);
  return {
    count: COUNT,
    y,
    across,
    move(from, to) {
      if (!legs || !outflow || from === to) return;
      const left = outflow.passed(to) - outflow.passed(from);
      // What the veins hold more than before has come in below.
      const entered = left + valueAt(traces, legs.held, to) - valueAt(traces, legs.held, from);
      for (let i = 0; i < COUNT; i++) {
        const share = Math.min(1, Math.max(0, (CALF.bottom - y[i]!) / (CALF.bottom - CALF.top)));
        const passed = entered + (left - entered) * share;
        const next = y[i]! - (passed * REACH) / bodySize;
        y[i] = ((next % PLANE.height) + PLANE.height) % PLANE.height;
      }
    },
  };
}

export interface LegTraces {
  /** L/min through the last valve, and from the capillaries into the veins */
  readonly out: Float64Array;
  readonly in: Float64Array;
  /** mL in the leg veins */
  readonly held: Float64Array;
}

/** The leg veins' traces; the flow in is the flow out and what the veins gain, from the computed volume. Null while they are missing. */
export function legTraces({ flows, volumes, time }: Traces): LegTraces | null {
  const out = flows.legs;
  const held = volumes.legVeins;
  if (!out || !held) return null;
  const last = time.length - 1;
  const gain = (i: number): number => {
    const [a, b] = [i === 0 ? last - 1 : i - 1, i === last ? 1 : i + 1];
    return (((held[b]! - held[a]!) / (2 * time[1]!)) * 60) / 1000;
  };
  return { out, held, in: out.map((value, i) => value + gain(i)) };
}
