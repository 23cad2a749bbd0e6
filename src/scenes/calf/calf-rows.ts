/** What is charted beside the leg. */
import { lowerValveFlow } from "../../sim/circulation/foot-veins.ts";
import type { Row } from "../drawing/strips.ts";
import { legTraces } from "./blood-column.ts";

export const ROWS: readonly Row[] = [
  {
    title: "further.calf.muscle",
    trace: ({ traces: { pressures } }) => pressures.calf,
    unit: "mmHg",
    colour: (palette) => palette.pressure,
    rank: 1,
  },
  {
    title: "further.calf.out",
    trace: ({ traces }) => legTraces(traces)?.out,
    unit: "L/min",
    colour: (palette) => palette.origin[2],
    rank: 0,
  },
  {
    title: "further.calf.lower",
    trace: ({ traces, request }) => {
      const legs = legTraces(traces);
      return legs && lowerValveFlow(traces, legs.in, request.body.bsa);
    },
    unit: "L/min",
    colour: (palette) => palette.origin[1],
    rank: 2,
  },
];
