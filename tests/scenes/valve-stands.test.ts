import { expect, test } from "vitest";
import { legValves } from "../../src/chain/leg-valves.ts";
import { standsOf } from "../../src/scenes/calf/vein.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

test.each(STAGES)("%s: a valve that is said to let blood pass has blood passing it", (stage) => {
  const circulation = solve({ ...START.request, stage, set: { calfPumpPressure: 60 } });
  const valves = legValves();
  const cycle = [...circulation.traces.time].map((time) => valves.follow(circulation, time)!);
  for (const [open, flow] of [
    [cycle.map(({ out }) => out), circulation.traces.flows.legs!],
    [cycle.map((each) => each.in), cycle[0]!.below],
  ] as const) {
    const stands = open.map((each, i) => standsOf(each, flow[i]!));
    for (const each of ["open", "closing", "shut"] as const) expect(stands).toContain(each);
    stands.forEach((each, i) => {
      if (each === "open" || each === "opening") expect(flow[i]).toBeGreaterThan(0);
      if (each === "shut") expect(flow[i]).toBeCloseTo(0, 1);
      if (each === "closing") expect(open[i]).toBeGreaterThan(0);
    });
  }
});
