/** What has left the plane, by origin. */
import { expect, it } from "vitest";
import { countDeparture, departingNow, forget, noDepartures } from "../../src/chain/departures.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { setParameter, setView } from "../../src/state/edit.ts";
import { START } from "../../src/state/scene-state.ts";
import { begin } from "./begin.ts";

const { openings } = pathwayGeometry(START.request)!;
const left = openings.findIndex(({ name }) => name === "left");

it("the mixture of what left by an opening is that of the last moments", () => {
  const gone = noDepartures(openings.length);
  const leave = (seconds: number, origins: readonly number[]) => {
    for (let time = 0; time < seconds; time += 0.1) {
      forget(gone, 0.1);
      for (const origin of origins) countDeparture(gone, left, origin);
    }
  };
  leave(1, [0, 1]);
  expect(departingNow(gone, openings)).toBeNull();
  leave(1, [0, 1]);
  const mixed = departingNow(gone, openings)!;
  expect(mixed.left).toEqual([0.5, 0.5, 0]);
  expect(mixed.right).toBeUndefined();
  leave(10, [1, 1, 1, 2]);
  const [upper, liver, legs] = departingNow(gone, openings)!.left!;
  expect(upper).toBeLessThan(0.01);
  expect(liver! / legs!).toBeCloseTo(3, 1);
});

it("a pane tells what leaves its field once blood has gone through it, and the same while it is paused", async () => {
  const { chain, time, field } = begin(START);
  await time.pass(0.1);
  const flow = async (from: number, to: number) => {
    for (let at = from; at < to; at += 0.02) {
      field.flow(field.ports[0]!, at);
      await time.pass(0.02);
      chain.frame();
    }
  };
  await flow(0.02, 0.5);
  expect(chain.frame().panes[0]!.departing).toBeNull();
  await flow(0.5, 5);
  const { departing } = chain.frame().panes[0]!;
  // The flow goes upwards, from the lower vein out at the upper one.
  const [upper, liver, legs] = departing!.svc!;
  expect(upper! + liver! + legs!).toBeCloseTo(1, 6);
  expect(liver! + legs!).toBeGreaterThan(0.6);
  chain.scene.value = setView({ paused: true })(START);
  const held = chain.frame().panes[0]!.departing;
  await flow(5, 5.2);
  expect(chain.frame().panes[0]!.departing).toBe(held);
});

it("a fenestration that opens while blood moves is one more opening by which it leaves", async () => {
  const { chain, time, field } = begin(START);
  await time.pass(0.1);
  const flow = async (from: number, to: number) => {
    for (let at = from; at < to; at += 0.02) {
      field.flow(field.ports[0]!, at, 1.5, false, 0.1);
      await time.pass(0.02);
      chain.frame();
    }
  };
  await flow(0.02, 1);
  chain.scene.value = setParameter("fenestrationDiameter", 8)(START);
  await time.pass(1);
  await flow(1, 5);
  expect(chain.frame().panes[0]!.departing).toHaveProperty("fenestration");
});
