/** What happens before the first answer: where its search begins, and when its field begins. */
import { expect, test } from "vitest";
import { openingPoint } from "../../scripts/opening-point.ts";
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { openingInflow, openingStart } from "../../src/chain/opening-start.ts";
import type { ToField } from "../../src/chain/worker-messages.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";
import { begin } from "./begin.ts";
import { coarse } from "./fakes.ts";

const { request } = START;

test("the point found when the kit was built leads to the answer that a search from nothing finds, sooner", () => {
  const start = openingStart(request)!;
  expect(start).toEqual(openingPoint().point);
  const [searched, confirmed] = [solve(request), solve(request, { start })];
  expect(confirmed.run.converged).toBe(true);
  expect(confirmed.run.beats).toBeLessThan(searched.run.beats / 3);
  for (const name of ["ivc", "svc"] as const)
    expect(confirmed.flows[name] / searched.flows[name]).toBeCloseTo(1, 4);
  expect(confirmed.pathway.pressureDrop / searched.pathway.pressureDrop).toBeCloseTo(1, 4);
  expect(confirmed.saturations.arterial / searched.saturations.arterial).toBeCloseTo(1, 4);
});

test("what flows in until the answer has come is what flows in after it, within a fiftieth", () => {
  const answer = solve(request);
  const [stored, own] = [openingInflow(request)!, boundaryConditions(answer, answer, false)];
  expect(stored.period).toBeCloseTo(own.period, 4);
  expect(stored.split.left).toBeCloseTo(own.split.left!, 4);
  for (const vein of ["ivc", "svc"]) {
    const wave = own.inflow[vein]!;
    const most = Math.max(...wave.map(Math.abs));
    const kept = stored.inflow[vein]!;
    expect(kept.length).toBe(wave.length / 2);
    const at = (i: number) => kept[(i / 2) % kept.length]!;
    const far = Array.from(wave, (value, i) =>
      Math.abs(value - (i % 2 === 0 ? at(i) : (at(i - 1) + at(i + 1)) / 2)),
    );
    expect(Math.max(...far)).toBeLessThan(most / 50);
  }
  expect(openingInflow({ ...request, stage: "lateral-tunnel" })).toBeUndefined();
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

test("what is known to flow in goes along at once; nothing is seen to flow before the answer", async () => {
  const { chain, field } = begin(START, { firstInflow: openingInflow });
  const port = field.ports[0]!;
  expect(kinds(port.sent)).toEqual(["build", "run", "boundary"]);
  field.flow(port, 0.05);
  expect(chain.frame().panes[0]!.field).toBeNull();
  await expect.poll(() => chain.circulations.value[0]).not.toBeNull();
  expect(kinds(port.sent).filter((kind) => kind === "boundary")).toHaveLength(2);
  field.flow(port, 0.1);
  expect(chain.frame().panes[0]!.field).not.toBeNull();
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
