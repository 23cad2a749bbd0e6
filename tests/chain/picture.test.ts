/** Frames for pictures apart from the screen. */
import { expect, it } from "vitest";
import type { ToField } from "../../src/chain/worker-messages.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { setParameter, setView } from "../../src/state/edit.ts";
import { START } from "../../src/state/scene-state.ts";
import { begin } from "./begin.ts";

it("a picture of a scene that is paused has its tracers led through the field as it is now, at once", async () => {
  const { chain, time, field } = begin(setView({ paused: true })(START));
  await time.pass(0.1);
  field.flow(field.ports[0]!, 0.02);
  await time.pass(0.02);
  const held = chain.frame().panes[0]!.tracers!.position.slice();
  expect(chain.frame().panes[0]!.tracers!.position).toEqual(held);
  const picture = chain.picture();
  expect(picture.still).toBe(true);
  expect(picture.panes[0]!.tracers!.position).not.toEqual(held);
});

it("the fields rest while a picture is drawn, and run on with the next frame", async () => {
  const { chain, time, field } = begin(setView({ paused: true, playSpeed: 2 })(START));
  await time.pass(0.1);
  chain.frame();
  const rates = () =>
    (field.ports[0]!.sent as ToField[]).flatMap((message) => (message.kind === "run" ? [message.rate] : []));
  const before = rates().length;
  chain.picture();
  chain.frame();
  expect(rates().slice(before)).toEqual([0, 2]);
});

it.each([true, false])(
  "a picture leaves the screen's own blood, dye and moment alone (paused: %s)",
  async (paused) => {
    const { chain, time, field } = begin(setView({ paused, dye: 1 })(START));
    await time.pass(0.1);
    field.flow(field.ports[0]!, 0.02);
    await time.pass(0.02);
    chain.frame();
    field.flow(field.ports[0]!, 0.04);
    const seen = () => {
      const { tracers, throughHole, washOut, field: moment } = chain.frame().panes[0]!;
      const { position, trail, dyed, age } = tracers!;
      const hole = throughHole?.tracers.position;
      return structuredClone({ position, trail, dyed, age, hole, washOut, moment });
    };
    const before = seen();
    const picture = chain.picture();
    expect(picture.panes[0]!.tracers!.position).not.toEqual(before.position);
    expect(seen()).toEqual(before);
    expect(chain.picture().panes[0]!.tracers).not.toBe(chain.frame().panes[0]!.tracers);
  },
);

it("a flow counts from its last change: another view of the same state finds it in shape", async () => {
  const { chain, time, field } = begin(setView({ paused: true })(START));
  await time.pass(0.1);
  field.flow(field.ports[0]!, 2);
  await time.pass(0.02);
  const unchanged = () => chain.moments()[0]!.unchanged;
  expect(unchanged()).toBeCloseTo(2);
  chain.scene.value = setView({ labels: false })(chain.scene.value);
  await time.pass(0.1);
  expect(unchanged()).toBeCloseTo(2);
  // Another width: the flow goes on from what it was.
  chain.scene.value = setParameter("conduitDiameter", 12)(chain.scene.value);
  await time.pass(0.3);
  field.flow(field.ports[0]!, 2.5);
  await time.pass(0.02);
  expect(unchanged()).toBeCloseTo(0.5);
});

it("a still frame of another state is answered beside the scene, which stays", async () => {
  const { chain, time } = begin();
  await time.pass(0.1);
  const other = { ...setParameter("conduitDiameter", 10)(START), beside: [{ stage: "glenn" as const }] };
  const asked = chain.still(other);
  await time.pass(0.3);
  const { state, panes } = await asked;
  expect(state).toBe(other);
  expect(panes.map(({ circulation }) => circulation!.request.stage)).toEqual(["extracardiac", "glenn"]);
  expect(panes[0]!.circulation!.pathway.pressureDrop).toBeCloseTo(
    solve(other.request).pathway.pressureDrop,
    9,
  );
  expect(panes[0]!.geometry).not.toBeNull();
  expect(chain.scene.value).toBe(START);
});
