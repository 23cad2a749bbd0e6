import { describe, expect, it } from "vitest";
import type { ToField } from "../../src/chain/worker-messages.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { type SceneState, START } from "../../src/state/scene-state.ts";
import { begin } from "./begin.ts";

const withSet = (state: SceneState, set: SceneState["request"]["set"]): SceneState => ({
  ...state,
  request: { ...state.request, set: { ...state.request.set, ...set } },
});

describe("the chain", () => {
  it("answers the state with what the solver says of the same request", async () => {
    const { chain, time } = begin();
    expect(chain.solving.value).toBe(true);
    await time.pass(0.1);
    expect(chain.solving.value).toBe(false);
    const alone = solve(START.request);
    expect(chain.circulations.value[0]!.pathway.pressureDrop).toBe(alone.pathway.pressureDrop);
  });

  it("skips edits that a newer one has overtaken and starts near the last answer", async () => {
    const { chain, time, solver } = begin();
    await time.pass(0.1);
    const { state } = chain.circulations.value[0]!;
    solver.hold();
    for (const index of [1.8, 2, 2.2, 2.4]) {
      chain.scene.value = withSet(START, { pulmonaryResistanceIndex: index });
    }
    solver.release();
    await time.pass(0.1);
    const asked = solver.asked().slice(1);
    expect(asked.map(({ request }) => request.set.pulmonaryResistanceIndex)).toEqual([1.8, 2.4]);
    expect(asked[0]!.from).toEqual(state);
    expect(chain.circulations.value[0]!.request.set.pulmonaryResistanceIndex).toBe(2.4);
    expect(chain.solving.value).toBe(false);
  });

  it("keeps the last good answer and names the fault when a state is impossible, and heals", async () => {
    const { chain, time } = begin();
    await time.pass(0.1);
    const good = chain.circulations.value[0];
    chain.scene.value = withSet(START, { conduitDiameter: 90 });
    await time.pass(0.1);
    expect(chain.faults.value.map(({ path }) => path)).toEqual(["set.conduitDiameter"]);
    expect(chain.circulations.value[0]).toBe(good);
    chain.scene.value = START;
    expect(chain.faults.value).toEqual([]);
  });

  it("drives each pane's field with the first pane's inflow", async () => {
    const { time, field } = begin({
      ...START,
      beside: [{ stage: "atriopulmonary" }, { stage: "lateral-tunnel" }],
    });
    await time.pass(0.3);
    expect(field.ports).toHaveLength(3);
    const drives = field.ports.map(({ sent }) => {
      const message = (sent as ToField[]).findLast(({ kind }) => kind === "boundary");
      return message?.kind === "boundary" ? message.boundary : undefined;
    });
    expect(drives[1]!.inflow).toEqual(drives[0]!.inflow);
    expect(drives[2]!.inflow).toEqual(drives[0]!.inflow);
    // mL/s: the mean of the wave is the circulation's flow in L/min.
    const mean =
      drives[0]!.inflow.ivc!.reduce((sum, value) => sum + value, 0) / drives[0]!.inflow.ivc!.length;
    // The wave is sampled where the trace is: the two means differ by rounding and the closed trace's last sample.
    expect(Math.abs((mean * 60) / 1000 / solve(START.request).flows.ivc - 1)).toBeLessThan(1e-4);
  });

  it("moves tracers in the field and keeps every one inside the walls", async () => {
    const { chain, time, field } = begin();
    await time.pass(0.1);
    field.flow(field.ports[0]!, 0.02);
    await time.pass(0.02);
    const first = chain.frame().panes[0]!;
    const before = first.tracers!.position.slice();
    for (let n = 2; n < 40; n++) {
      field.flow(field.ports[0]!, 0.02 * n);
      await time.pass(0.02);
      chain.frame();
    }
    const { tracers, shape } = chain.frame().panes[0]!;
    let moved = 0;
    for (let i = 0; i < tracers!.count; i++) {
      const [x, y] = [tracers!.position[2 * i]!, tracers!.position[2 * i + 1]!];
      if (y !== before[2 * i + 1]) moved++;
      const k =
        Math.round((y - shape!.originY) / shape!.dx) * shape!.nx +
        Math.round((x - shape!.originX) / shape!.dx);
      expect(shape!.distance[k]!).toBeLessThan(shape!.dx);
    }
    // All but those that were put back to where they had begun.
    expect(moved).toBeGreaterThanOrEqual(0.99 * tracers!.count);
  });

  it("shows no more speed than the slowest field can keep up with, and says so", async () => {
    const { chain, time, field } = begin({ ...START, beside: [{ stage: "atriopulmonary" }] });
    await time.pass(0.1);
    for (let n = 1; n < 100; n++) {
      field.flow(field.ports[0]!, 0.02 * n, 2);
      field.flow(field.ports[1]!, 0.02 * n, 0.4);
      await time.pass(0.02);
      chain.frame();
    }
    await time.pass(0.3);
    // The clock asks a field for 92 % of what it says it could do, so that it keeps up.
    expect(chain.pace.value).toBeCloseTo(0.92 * 0.4, 9);
  });

  it("U1 holds everything while paused, and an edit changes the numbers but starts nothing", async () => {
    const { chain, time, field } = begin();
    await time.pass(0.1);
    field.flow(field.ports[0]!, 0.02);
    chain.frame();
    await time.pass(0.1);
    chain.scene.value = { ...START, view: { ...START.view, paused: true } };
    const held = chain.frame();
    const where = held.panes[0]!.tracers!.position.slice();
    chain.scene.value = withSet(chain.scene.value, { pulmonaryResistanceIndex: 2.4 });
    for (let n = 2; n < 20; n++) {
      field.flow(field.ports[0]!, 0.02 * n);
      await time.pass(0.05);
      chain.frame();
    }
    const later = chain.frame();
    expect(later.time).toBe(held.time);
    expect(later.still).toBe(true);
    expect(later.panes[0]!.tracers!.position).toEqual(where);
    expect(later.panes[0]!.circulation!.request.set.pulmonaryResistanceIndex).toBe(2.4);
  });

  it("stops a settled field while the picture is paused, and runs it again for a change or for motion", async () => {
    const { chain, time, field } = begin({ ...START, view: { ...START.view, paused: true } });
    await time.pass(0.1);
    const port = field.ports[0]!;
    const pace = () => {
      chain.frame();
      return (port.sent as ToField[]).findLast((message) => message.kind === "run")!.rate;
    };
    field.flow(port, 0.5);
    expect(pace()).toBe(START.view.playSpeed);
    field.flow(port, 8, 1.5, true);
    expect(pace()).toBe(0);
    chain.scene.value = withSet(chain.scene.value, { pulmonaryResistanceIndex: 2.4 });
    await time.pass(0.1);
    expect(pace()).toBe(START.view.playSpeed);
    // On its way before the new drive was heard.
    field.flow(port, 8.1, 1.5, true);
    expect(pace()).toBe(START.view.playSpeed);
    field.flow(port, 16, 1.5, true);
    expect(pace()).toBe(0);
    chain.scene.value = { ...chain.scene.value, view: { ...START.view, paused: false } };
    await time.pass(0.1);
    expect(pace()).toBe(START.view.playSpeed);
  });

  it("U3 under reduced motion shows one held field and tracers that were led through it, then nothing moves", async () => {
    const { chain, time, field } = begin(START, { reducedMotion: () => true });
    await time.pass(0.1);
    // The blood has only begun to move: nothing is led through it.
    field.flow(field.ports[0]!, 0.02);
    for (let n = 0; n < 80; n++) expect(chain.frame().panes[0]!.tracers).toBeNull();
    field.flow(field.ports[0]!, 1);
    expect(chain.frame().panes[0]!.tracers).toBeNull();
    for (let n = 0; n < 80; n++) chain.frame();
    const shown = chain.frame().panes[0]!;
    const where = shown.tracers!.position.slice();
    field.flow(field.ports[0]!, 1.03);
    const later = chain.frame().panes[0]!;
    expect(later.field).toBe(shown.field);
    expect(later.tracers!.position).toEqual(where);
  });

  it("replaces a solver or a field worker that has died or fallen silent within 2 s, and the answer still comes", async () => {
    const { chain, time, solver, field } = begin();
    await time.pass(0.1);
    field.flow(field.ports[0]!, 0.1);
    // Silence from here on: a field worker speaks at least every second.
    await time.pass(2);
    expect(field.ports.length).toBe(2);
    expect(field.ports[0]!.closed).toBe(true);
    expect(chain.degraded.value).toEqual(["fieldLost"]);
    expect((field.ports[1]!.sent[0] as ToField).kind).toBe("build");

    solver.hold();
    chain.scene.value = withSet(START, { pulmonaryResistanceIndex: 2 });
    solver.ports[0]!.onFailure("killed");
    solver.release();
    await time.pass(0.2);
    expect(solver.ports).toHaveLength(2);
    expect(chain.circulations.value[0]!.request.set.pulmonaryResistanceIndex).toBe(2);
  });

  it("never shows one pathway's flow within another's walls, and keeps the flow while the same pathway's walls move", async () => {
    const { chain, time, field } = begin();
    const stage = (name: "atriopulmonary" | "lateral-tunnel") => {
      chain.scene.value = { ...START, request: { ...START.request, stage: name } };
      return chain.frame().panes[0]!;
    };
    await time.pass(0.1);
    field.flow(field.ports[0]!, 0.1);
    expect(chain.frame().panes[0]!.field).not.toBeNull();
    chain.scene.value = withSet(START, { conduitDiameter: 15 });
    expect(chain.frame().panes[0]!.field).not.toBeNull();
    await time.pass(0.1);
    field.flow(field.ports[0]!, 0.2);
    // The second is asked for before the first is built.
    expect([stage("atriopulmonary"), stage("lateral-tunnel")].map(({ shape }) => shape)).toEqual([
      null,
      null,
    ]);
    await time.pass(0.1);
    field.flow(field.ports[0]!, 0.1);
    const { shape, geometry } = chain.frame().panes[0]!;
    expect(geometry!.name).toBe("lateral-tunnel");
    expect(shape!.originX).toBe(geometry!.bounds[0] - 2 * shape!.dx);
  });

  it("continues without a field when none can be built, and says so", async () => {
    const { chain, time, field } = begin();
    await time.pass(0.1);
    for (let n = 0; n < 3; n++) field.ports[n]!.onFailure("no memory");
    await time.pass(0.4);
    expect(chain.degraded.value).toEqual(["fieldOff"]);
    const pane = chain.frame().panes[0]!;
    expect(pane.field).toBeNull();
    expect(pane.geometry).not.toBeNull();
    expect(pane.circulation!.pathway.ledger).toEqual(solve(START.request).pathway.ledger);
  });

  it("answers equal requests beyond those of the panes only once", async () => {
    const { chain, time, solver } = begin();
    await time.pass(0.1);
    const asked = solver.asked().length;
    const request = { ...START.request, stage: "atriopulmonary" as const };
    const [a, b] = [chain.answer(request), chain.answer({ ...request })];
    await time.pass(0.1);
    expect((await a).request.stage).toBe("atriopulmonary");
    expect(await b).toBe(await a);
    expect(solver.asked().length).toBe(asked + 1);
  });

  it("says why a request beyond those of the panes got no answer, until the next edit", async () => {
    const { chain, time, solver } = begin();
    await time.pass(0.1);
    solver.hold();
    const answer = chain.answer({ ...START.request, stage: "atriopulmonary" });
    const { id } = solver.asked().at(-1)!;
    solver.ports[0]!.say({ kind: "failed", id, reason: "worn out" });
    await expect(answer).rejects.toThrow("worn out");
    expect(chain.faults.value).toMatchObject([{ path: "request", found: "worn out" }]);
    solver.release();
    chain.scene.value = withSet(START, { pulmonaryResistanceIndex: 2 });
    expect(chain.faults.value).toEqual([]);
  });
});
