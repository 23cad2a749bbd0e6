import { describe, expect, it } from "vitest";
import type { Tracers } from "../../src/sim/tracers/tracers.ts";
import { START } from "../../src/state/scene-state.ts";
import { begin } from "./begin.ts";

describe("dye", () => {
  it("releases a dye pulse when the state asks for it: marks what enters and records what is left", async () => {
    const { chain, time, field } = begin();
    await time.pass(0.1);
    field.flow(field.ports[0]!, 0.02);
    chain.frame();
    expect(chain.frame().panes[0]!.washOut).toBeNull();
    chain.scene.value = { ...START, view: { ...START.view, dye: 1 } };
    for (let n = 2; n < 100; n++) {
      field.flow(field.ports[0]!, 0.02 * n);
      await time.pass(0.02);
      chain.frame();
    }
    const { washOut, tracers } = chain.frame().panes[0]!;
    const { time: at, left } = washOut!;
    const steps = at.slice(1).map((seconds, i) => seconds - at[i]!);
    // A point each 0.05 s of blood time, or at the next drawing (0.01 s later at half speed); 98 drawings.
    expect(Math.min(...steps)).toBeGreaterThan(0.05 - 1e-9);
    expect(Math.max(...steps)).toBeLessThan(0.06 + 1e-9);
    expect(at.at(-1)).toBeCloseTo(98 * 0.02 * START.view.playSpeed, 9);
    // All of it is inside until the first has crossed the pathway; from then on it only falls.
    expect(left[0]).toBe(1);
    for (let i = 1; i < left.length; i++) expect(left[i]!).toBeLessThanOrEqual(left[i - 1]!);
    expect(left.at(-1)!).toBeLessThan(1);
    expect(left.at(-1)!).toBeGreaterThan(0);
    const marked = tracers!.dyed.reduce((sum, mark) => sum + mark, 0);
    // What is left of what was marked: a whole number of tracers entered.
    expect((marked / left.at(-1)!) % 1).toBeCloseTo(0, 6);
  });

  it("releases the pulse of a state that it begins with, and no old one in a pane that joins later", async () => {
    const { chain, time, field } = begin({ ...START, view: { ...START.view, dye: 1 } });
    await time.pass(0.1);
    for (let n = 1; n < 40; n++) {
      field.flow(field.ports[0]!, 0.02 * n);
      await time.pass(0.02);
      chain.frame();
    }
    const { washOut, tracers } = chain.frame().panes[0]!;
    expect(washOut).not.toBeNull();
    const marked = tracers!.dyed.reduce((sum, mark) => sum + mark, 0);
    expect(marked).toBeGreaterThan(0);
    expect(marked).toBeLessThan(tracers!.count);
    chain.scene.value = { ...chain.scene.value, beside: [{ stage: "lateral-tunnel" }] };
    await time.pass(0.1);
    for (const port of field.ports) field.flow(port, 0.02);
    expect(chain.frame().panes.map((pane) => pane.washOut)).toEqual([null, null]);
  });
});

describe("dye in a picture that stands still", () => {
  const flowOn = async (
    { chain, time, field }: ReturnType<typeof begin>,
    from: number,
    settled: boolean,
    frames: number,
    each: (pane: ReturnType<typeof chain.frame>["panes"][number]) => void = () => {},
  ) => {
    for (let n = 0; n < frames; n++) {
      field.flow(field.ports[0]!, from + 0.02 * n, 1.5, settled);
      await time.pass(0.02);
      each(chain.frame().panes[0]!);
    }
    return chain.frame().panes[0]!;
  };

  it("is seen within the pathway and has no curve; once blood moves the pulse is released anew and measured", async () => {
    let reduced = true;
    const begun = begin({ ...START, view: { ...START.view, dye: 1 } }, { reducedMotion: () => reduced });
    await begun.time.pass(0.1);
    const marked = (tracers: Tracers | null) => tracers!.dyed.reduce((sum, mark) => sum + mark, 0);
    const still = await flowOn(begun, 2, true, 90);
    expect(still.washOut!.time).toEqual([0]);
    expect(marked(still.tracers)).toBeGreaterThan(0);
    // Released once more, on a picture that already stands.
    begun.chain.scene.value = { ...START, view: { ...START.view, dye: 2 } };
    const again = await flowOn(begun, 4, true, 40, ({ tracers }) => expect(tracers).not.toBeNull());
    expect(again.washOut!.time).toEqual([0]);
    expect(marked(again.tracers)).toBeGreaterThan(0);
    reduced = false;
    const moving = await flowOn(begun, 6, true, 5);
    expect(moving.washOut!.time.length).toBeGreaterThan(1);
    expect(moving.washOut!.time.at(-1)).toBeLessThan(0.2);
  });
});

describe("clots", () => {
  it("are let in when the state wishes them, rise with the blood, and leave the picture when it no longer does", async () => {
    const { chain, time, field } = begin({ ...START, view: { ...START.view, clots: [2, 3] } });
    await time.pass(0.1);
    // What moves them is fetched with the first wish.
    await import("../../src/sim/clots/index.ts");
    for (let n = 1; n < 60; n++) {
      field.flow(field.ports[0]!, 0.02 * n);
      await time.pass(0.02);
      chain.frame();
    }
    const { clots } = chain.frame().panes[0]!;
    expect(clots.map(({ diameter }) => diameter).sort()).toEqual([2, 3]);
    const low = chain.frame().panes[0]!.geometry!.openings.find(({ name }) => name === "ivc")!.centre[1];
    // Above the opening, and no higher than 0.2 m/s could have carried it in the blood time that has passed.
    const highest = low + 1000 * 0.2 * 60 * 0.02 * START.view.playSpeed;
    for (const { y, diameter } of clots) {
      expect(y).toBeGreaterThan(low + diameter / 2);
      expect(y).toBeLessThan(highest);
    }
    chain.scene.value = START;
    expect(chain.frame().panes[0]!.clots).toEqual([]);
  });
});
