/** Dots in the leg vein, carried by the flow in below the muscle and the flow out above it; in between the one passes into the other. */

import { entryAt } from "../../sim/checked/present.ts";
import type { Traces } from "../../sim/circulation/answer.ts";
import { GOLDEN } from "../drawing/curve-drawing.ts";
import { passage } from "../drawing/trace-clock.ts";
import { CALF, PLANE } from "./vein.ts";

const COUNT = 110;
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
  const inflow = legs && passage(traces, legs.in);
  return {
    count: COUNT,
    y,
    across,
    move(from, to) {
      if (!inflow || !outflow || from === to) return;
      const left = outflow.passed(to) - outflow.passed(from);
      const entered = inflow.passed(to) - inflow.passed(from);
      for (let i = 0; i < COUNT; i++) {
        const share = Math.min(1, Math.max(0, (CALF.bottom - entryAt(y, i)) / (CALF.bottom - CALF.top)));
        const passed = entered + (left - entered) * share;
        const next = entryAt(y, i) - (passed * REACH) / bodySize;
        y[i] = ((next % PLANE.height) + PLANE.height) % PLANE.height;
      }
    },
  };
}

export interface LegTraces {
  /** L/min through the last valve, and from the capillaries into the veins */
  readonly out: Float64Array;
  readonly in: Float64Array;
}

/** Null while the traces lack the legs. */
export function legTraces({ flows }: Traces): LegTraces | null {
  const { legs, legBed } = flows;
  return legs && legBed ? { out: legs, in: legBed } : null;
}
