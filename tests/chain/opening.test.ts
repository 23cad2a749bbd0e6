/** What happens before the first answer: where its search begins, and when its field begins. */
import { expect, test } from "vitest";
import { openingPoint } from "../../scripts/opening-point.ts";
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { firstBlood } from "../../src/chain/first-blood.ts";
import { openingForeseen, openingStart } from "../../src/chain/opening-start.ts";
import { firstSupply } from "../../src/chain/supply.ts";
import type { ToField } from "../../src/chain/worker-messages.ts";
import { saturationsByOrigin } from "../../src/scenes/layers/tint.ts";
import { bloodColour, DARK } from "../../src/scenes/theme/colour.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { type SceneState, START } from "../../src/state/scene-state.ts";
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
  const { boundary: stored, supply } = openingForeseen(request)!;
  const own = boundaryConditions(answer, answer, false);
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
  const first = firstSupply({ circulation: answer });
  expect(supply.hepaticShare).toBeCloseTo(first.hepaticShare, 5);
  for (const vein of ["ivc", "svc"])
    expect(Math.abs(supply.inflow[vein]! / first.inflow[vein]! - 1), vein).toBeLessThan(0.02);
  expect(openingForeseen({ ...request, stage: "lateral-tunnel" })).toBeUndefined();
});

test("blood keeps its colour when the answer comes", () => {
  const { saturations } = solve(request);
  const foreseen = openingForeseen(request)!;
  for (const [name, value] of Object.entries(saturations))
    expect(foreseen.saturations[name as keyof typeof saturations]).toBeCloseTo(value, 3);
  const colours = [foreseen, { saturations }].map((known) =>
    saturationsByOrigin(known).map((saturation) => bloodColour(DARK, saturation)),
  );
  expect(colours[0]).toEqual(colours[1]);
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

/** Before the solver, which answers later, has said anything. */
function flowAtOnce({ ports, flow }: ReturnType<typeof begin>["field"]): void {
  const port = ports[0]!;
  const build = (port.sent as ToField[]).find((message) => message.kind === "build");
  if (build?.kind !== "build") throw new Error("nothing was built");
  port.say({ kind: "built", shapeId: build.shapeId, shape: coarse(build.geometry) });
  flow(port, 0.05);
}

test("what is foreseen goes along at once, and blood is seen to move by it; no answer is shown before it has come", async () => {
  const { chain, field } = begin(START, { foresee: openingForeseen });
  const port = field.ports[0]!;
  expect(kinds(port.sent)).toEqual(["build", "run", "boundary"]);
  flowAtOnce(field);
  const [early] = chain.frame().panes;
  expect(early!.field).not.toBeNull();
  expect(early!.tracers!.count).toBeGreaterThan(0);
  expect(early!.circulation).toBeNull();
  const places = early!.tracers!.position.slice(0, 20);
  await expect.poll(() => chain.circulations.value[0]).not.toBeNull();
  expect(kinds(port.sent).filter((kind) => kind === "boundary")).toHaveLength(2);
  field.flow(port, 0.1);
  const [answered] = chain.frame().panes;
  expect(answered!.circulation).not.toBeNull();
  expect(answered!.foreseen).toBeNull();
  // The same marks go on: none is placed anew.
  const moved = answered!.tracers!.position.slice(0, 20).map((at, i) => Math.abs(at - places[i]!));
  expect(Math.max(...moved)).toBeLessThan(5);
});

test("where nothing is to move, or nothing is foreseen, nothing flows before the answer", () => {
  const lateral = { ...START, request: { ...request, stage: "lateral-tunnel" as const } };
  const cases = [
    begin(lateral, { foresee: openingForeseen }),
    begin(START, { foresee: openingForeseen, reducedMotion: () => true }),
    begin(START),
  ];
  for (const { chain, field } of cases) {
    flowAtOnce(field);
    expect(chain.frame().panes[0]!.tracers).toBeNull();
    chain.release();
  }
});

test("the solver waits for blood that is foreseen to move, and for nothing else", async () => {
  const seen = (state: SceneState, still = false) => firstBlood(state, openingForeseen, still);
  const { chain, field } = begin(START, { foresee: openingForeseen });
  const first = seen(START);
  let open = false;
  void first.seen!.then(() => {
    open = true;
  });
  first.note(chain.frame());
  await Promise.resolve();
  expect(open).toBe(false);
  flowAtOnce(field);
  for (let n = 0; n < 2; n++) first.note(chain.frame());
  await Promise.resolve();
  expect(open).toBe(true);
  const edited = seen(START);
  const changed = { ...START, request: { ...request, set: { ...request.set, abdominalPressure: 5 } } };
  edited.note({ ...chain.frame(), state: changed, panes: [] });
  await edited.seen;
  expect(seen(START, true).seen).toBeUndefined();
  expect(seen({ ...START, view: { ...START.view, paused: true } }).seen).toBeUndefined();
  expect(seen({ ...START, scene: "circuit" }).seen).toBeUndefined();
  expect(seen({ ...START, beside: [{ stage: "lateral-tunnel", set: {} }] }).seen).toBeUndefined();
  expect(seen(changed).seen).toBeUndefined();
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
