import { expect, test } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { previewOf } from "../../src/chain/preview.ts";
import { sceneNeeds } from "../../src/chain/scene-needs.ts";
import type { Circulation } from "../../src/sim/circulation/answer.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import type { CirculationRequest } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const circulation = solve(START.request);
const pane = { circulation, geometry: null, before: { circulation, geometry: null } };
const frame = {
  state: { ...START, beside: [{ stage: "lateral-tunnel" }] },
  panes: [pane, pane],
  time: 1,
  sweep: null,
} as unknown as Frame;
const needs = sceneNeeds(async () => circulation);
const echo = async (request: CirculationRequest) =>
  ({ ...circulation, request, run: { ...circulation.run, converged: true } }) as Circulation;

test("a scene that sweeps is previewed with the ends and middle of its curves, one question at a time", async () => {
  let [open, most] = [0, 0];
  const { sweep, state } = await previewOf(frame, "exercise", needs, async (request) => {
    most = Math.max(most, ++open);
    await Promise.resolve();
    open--;
    return echo(request);
  });
  expect(state.scene).toBe("exercise");
  expect(sweep!.progress).toBe(1);
  for (const { points } of sweep!.curves) expect(points.map(({ at }) => at)).toEqual([1, 5, 8]);
  for (const { points } of sweep!.curves)
    for (const point of points) expect(point.circulation!.request).toBe(point.request);
  // A pane's own question never waits behind all of them.
  expect(most).toBe(1);
});

test("points that cannot be solved are left out, as in the scene itself", async () => {
  const { sweep } = await previewOf(frame, "exercise", needs, () => Promise.reject(new Error("no answer")));
  expect(sweep!.progress).toBe(1);
  expect(sweep!.curves.flatMap(({ points }) => points.filter((point) => point.circulation))).toEqual([]);
});

test("only the first pane is previewed, with its shape and without what was before", async () => {
  const { panes, sweep } = await previewOf(frame, "pathway", needs, echo);
  expect(panes).toHaveLength(1);
  expect(panes[0]!.geometry!.name).toBe("extracardiac");
  expect(panes[0]!.before).toBeUndefined();
  expect(sweep).toBeNull();
});
