// @vitest-environment happy-dom
import { expect, test } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { joined } from "../../src/scenes/anatomy/joined.ts";
import { drawingOf, fetchMaker } from "../../src/scenes/scene-table.ts";
import type { Stage } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

/** `shown`: the stage of the answer that still stands; null = none yet */
const frame = (asked: Stage, shown: Stage | null, beside: readonly Stage[] = []): Frame =>
  ({
    state: {
      ...START,
      request: { ...START.request, stage: asked },
      beside: beside.map((stage) => ({ stage, set: {} })),
    },
    panes: [shown, ...beside].map((stage) => ({ circulation: stage && { request: { stage } } })),
  }) as unknown as Frame;

test("a pathway is drawn without the heart's drawing, blood that is pumped to the lungs with it", () => {
  expect(drawingOf(frame("extracardiac", null))).toBe("pathway");
  expect(drawingOf(frame("two-ventricle", null))).toBe("pumped");
  expect(drawingOf(frame("extracardiac", "extracardiac", ["two-ventricle"]))).toBe("pumped");
});

test("the heart stays drawn until the pathway that was asked for is solved", () => {
  expect(drawingOf(frame("extracardiac", "two-ventricle"))).toBe("pumped");
});

test("every other scene has one drawing", () => {
  const { state, ...more } = frame("two-ventricle", "two-ventricle");
  expect(drawingOf({ ...more, state: { ...state, scene: "circuit" } })).toBe("circuit");
});

test("what other stages are painted with is fetched before the first of them shows, and then serves all pathways", async () => {
  expect(joined()).toBeNull();
  expect(drawingOf(frame("glenn", null))).toBe("joined");
  expect(drawingOf(frame("extracardiac", "extracardiac", ["atriopulmonary"]))).toBe("joined");
  await fetchMaker("joined");
  expect(joined()).not.toBeNull();
  expect(drawingOf(frame("extracardiac", "extracardiac"))).toBe("joined");
});
