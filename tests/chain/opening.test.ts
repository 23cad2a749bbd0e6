/** What happens before the first answer: where its search begins, and when its field begins. */
import { expect, test } from "vitest";
import { openingPoint } from "../../scripts/opening-point.ts";
import { openingStart } from "../../src/chain/opening-start.ts";
import type { ToField } from "../../src/chain/worker-messages.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";
import { begin } from "./begin.ts";
import { coarse } from "./fakes.ts";

const { request } = START;

test("the point found when the kit was built leads to the answer that a search from nothing finds, sooner", () => {
  const start = openingStart(request)!;
  expect(start).toEqual(openingPoint());
  const [searched, confirmed] = [solve(request), solve(request, { start })];
  expect(confirmed.run.converged).toBe(true);
  expect(confirmed.run.beats).toBeLessThan(searched.run.beats / 3);
  for (const name of ["ivc", "svc"] as const)
    expect(confirmed.flows[name] / searched.flows[name]).toBeCloseTo(1, 4);
  expect(confirmed.pathway.pressureDrop / searched.pathway.pressureDrop).toBeCloseTo(1, 4);
  expect(confirmed.saturations.arterial / searched.saturations.arterial).toBeCloseTo(1, 4);
});

test("another request is searched from nothing", () => {
  expect(openingStart({ ...request, stage: "lateral-tunnel" })).toBeUndefined();
  expect(openingStart({ ...request, set: { ...request.set, abdominalPressure: 5 } })).toBeUndefined();
});

const kinds = (sent: readonly unknown[] = []) => (sent as ToField[]).map(({ kind }) => kind);

test("a field alone is built while the solver works, and is told what flows in once that is known", async () => {
  const { chain, solver, field } = begin();
  expect(solver.ports[0]!.sent).toHaveLength(1);
  expect(kinds(field.ports[0]?.sent)).toEqual(["build", "run"]);
  await expect.poll(() => chain.circulations.value[0]).not.toBeNull();
  expect(kinds(field.ports[0]?.sent)).toContain("boundary");
  expect(kinds(field.ports[0]?.sent).filter((kind) => kind === "build")).toHaveLength(1);
});

test("fields beside each other leave the processor to the solver until all is answered", () => {
  const beside = [{ stage: "lateral-tunnel" as const, set: {} }];
  const { field } = begin({ ...START, beside });
  expect(field.ports).toHaveLength(0);
});

test("a field that is being refined has as long as one that is being built before it counts as lost", async () => {
  const { chain, time, field } = begin();
  await expect.poll(() => chain.circulations.value[0]).not.toBeNull();
  const port = field.ports[0]!;
  const build = (port.sent as ToField[]).find((message) => message.kind === "build");
  if (build?.kind !== "build") throw new Error("nothing was built");
  const { shapeId, geometry } = build;
  const shape = coarse(geometry);
  port.say({ kind: "built", shapeId, shape, coarse: true });
  field.flow(port, 0.05);
  for (let n = 0; n < 15; n++) await time.pass(0.2);
  expect(field.ports).toHaveLength(1);
  port.say({ kind: "built", shapeId, shape });
  for (let n = 0; n < 15; n++) await time.pass(0.2);
  expect(field.ports.length).toBeGreaterThan(1);
});
