import { expect, test } from "vitest";
import { legValves } from "../../src/chain/leg-valves.ts";
import { standsOf } from "../../src/scenes/calf/vein.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

test.each(STAGES)("%s: a valve that is said to let blood pass has blood passing it", (stage) => {
  const circulation = solve({ ...START.request, stage, set: { calfPumpPressure: 60 } });
  const { cycle, below } = legValves().follow(circulation, 0)!;
  for (const [open, flow] of [
    [cycle.out, circulation.traces.flows.legs!],
    [cycle.in, below],
  ] as const) {
    const stands = [...open].map((each, i) => standsOf(each, flow[i]!));
    expect(new Set(stands)).toEqual(new Set(["open", "closing", "shut"]));
    stands.forEach((each, i) => {
      if (each === "open") expect(flow[i]).toBeGreaterThan(0);
      if (each === "closing") expect(open[i]).toBeGreaterThan(0);
    });
  }
});
