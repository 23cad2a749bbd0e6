import { describe, expect, it } from "vitest";
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { fieldRunner } from "../../src/chain/field-runner.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
import { NO_FIELD, received } from "../../src/chain/latest-field.ts";
import type { FromField } from "../../src/chain/worker-messages.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import type { FieldShape, FlowField } from "../../src/sim/flow-field/flow-field.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { START } from "../../src/state/scene-state.ts";

const { request } = START;
const circulation = solve(request);
const geometry = pathwayGeometry(request)!;
const build = { kind: "build", geometry, fluid: fluidOf(request), cellsAcross: 6 } as const;

/** A clock that runs by what is asked of it: each look costs a little, so that slices end. */
function begin() {
  let now = 0;
  let cost = 0.0005;
  const said: FromField[] = [];
  const runner = fieldRunner({
    clock: () => {
      now += cost;
      return now;
    },
    post: (message) => said.push(message),
    rungs: [6, 8, 10],
  });
  return {
    runner,
    /** s for each look from now on */
    look(seconds: number) {
      cost = seconds;
    },
    said,
    pass(seconds: number) {
      const end = now + seconds;
      while (now < end) now += runner.work();
    },
    fields: () => said.flatMap((message) => (message.kind === "field" ? [message.field] : [])),
    words: () => said.map(({ kind }) => kind),
  };
}

describe("a field's runner", () => {
  it("builds, flows at the pace asked for, and sends moments of rising time", () => {
    const run = begin();
    run.runner.hear({ ...build, shapeId: 1 });
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    run.runner.hear({ kind: "run", rate: 0.05 });
    run.pass(2);
    expect(run.words()[0]).toBe("built");
    const fields = run.fields();
    expect(fields.length).toBeGreaterThan(3);
    expect(fields.every(({ shapeId }) => shapeId === 1)).toBe(true);
    for (let i = 1; i < fields.length; i++) expect(fields[i]!.time).toBeGreaterThan(fields[i - 1]!.time);
    const last = fields[fields.length - 1]!;
    // 2 s at a twentieth of real speed, and what was computed at once to begin with.
    expect(last.time).toBeGreaterThan(0.08);
    expect(last.time).toBeLessThan(0.2);
    expect(Math.max(...last.v)).toBeGreaterThan(0.05);
  });

  it("built before it is known what flows in it waits, is heard from, and then flows at once", () => {
    const run = begin();
    run.runner.hear({ ...build, shapeId: 1 });
    run.runner.hear({ kind: "run", rate: 1 });
    run.pass(1);
    expect(new Set(run.words())).toEqual(new Set(["built", "alive"]));
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    run.pass(0.1);
    expect(Math.max(...run.fields()[0]!.v)).toBeGreaterThan(0.02);
  });

  it("with a lead it flows on the coarse grid first; the finer one comes with its first moment, and goes on from there", () => {
    const run = begin();
    run.runner.hear({ ...build, cellsAcross: 12, lead: { cellsAcross: 5, runUp: 0.4 }, shapeId: 1 });
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    run.runner.hear({ kind: "run", rate: 0.05 });
    run.pass(1);
    const told = run.said.flatMap((each) => (each.kind === "built" || each.kind === "field" ? [each] : []));
    const [built, coarse, fine, ...later] = told;
    if (built?.kind !== "built" || coarse?.kind !== "field" || fine?.kind !== "field")
      throw new Error(told.map(({ kind }) => kind).join());
    expect(built.coarse).toBe(true);
    const count = ({ nx, ny }: FieldShape) => nx * ny;
    expect(coarse.field.u).toHaveLength(count(built.shape));
    expect(fine.field.u).toHaveLength(count(fine.shape!));
    expect(count(fine.shape!)).toBeGreaterThan(3 * count(built.shape));
    expect(later.length).toBeGreaterThan(3);
    for (const each of later) {
      if (each.kind !== "field") throw new Error(each.kind);
      expect(each.shape).toBeUndefined();
      expect(each.field.u).toHaveLength(count(fine.shape!));
    }
    const fastest = ({ v }: FlowField) => Math.max(...v);
    expect(fine.field.time).toBeGreaterThan(coarse.field.time);
    expect(fastest(fine.field) / fastest(coarse.field)).toBeGreaterThan(0.8);
    expect(fastest(fine.field) / fastest(coarse.field)).toBeLessThan(1.25);

    // A page never has one grid's flow with another's shape, nor a moment without flow between the two.
    let page = NO_FIELD;
    for (const message of told) {
      page = received(page, message);
      if (message !== built) expect(page.field!.u).toHaveLength(count(page.shape!));
    }
  });

  it("asked for no flow it is looked at a few times a second, and is still heard from in time", () => {
    const run = begin();
    run.runner.hear({ ...build, shapeId: 1 });
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    run.pass(1);
    const before = run.said.length;
    expect(run.runner.work()).toBeGreaterThan(0.1);
    run.pass(2);
    // Lost is who says nothing for 1.4 s.
    expect(run.said.length - before).toBeGreaterThanOrEqual(3);
    run.runner.hear({ kind: "run", rate: 1 });
    expect(run.runner.work()).toBeLessThan(0.01);
  });

  it("keeps the flow when walls move, and only the last of several waiting geometries counts", () => {
    const run = begin();
    run.runner.hear({ ...build, shapeId: 1 });
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    run.runner.hear({ kind: "run", rate: 0.05 });
    run.pass(1);
    const before = run.fields().length;
    for (const [n, diameter] of [19, 20, 21].entries()) {
      const wider = pathwayGeometry({ ...request, set: { conduitDiameter: diameter } })!;
      run.runner.hear({ ...build, geometry: wider, shapeId: 2 + n });
    }
    run.pass(0.5);
    expect(run.words().filter((kind) => kind === "built")).toHaveLength(2);
    const next = run.fields()[before]!;
    expect(next.shapeId).toBe(4);
    expect(Math.max(...next.v)).toBeGreaterThan(0.05);
  });

  it("is heard from even when it holds, and uses arrays that come back", () => {
    const run = begin();
    run.runner.hear({ ...build, shapeId: 1 });
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    run.pass(1);
    const { u, v, pressure } = run.fields()[0]!;
    run.runner.hear({ kind: "return", arrays: [u, v, pressure] });
    run.said.length = 0;
    run.pass(2);
    expect(run.words().filter((kind) => kind === "alive").length).toBeGreaterThan(3);
    run.runner.hear({ kind: "run", rate: 0.05 });
    run.pass(0.5);
    expect(run.fields()[0]!.u).toBe(u);
  });

  it("goes on finer grids while the computer is fast and on coarser ones while it is slow, in place", () => {
    const run = begin();
    run.runner.hear({ ...build, soundSteps: 3, shapeId: 1 });
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    run.runner.hear({ kind: "run", rate: 0.5, seen: 0.5 });
    const moments = () => run.said.flatMap((message) => (message.kind === "field" ? [message] : []));
    const grids = () => moments().flatMap(({ shape, cellsAcross }) => (shape ? [cellsAcross] : []));
    run.look(0.00002);
    run.pass(3);
    expect(grids()).toEqual([10]);
    run.look(0.008);
    run.pass(25);
    expect(grids()).toEqual([10, 6]);
    run.look(0.00002);
    run.pass(10);
    // What was too fine is left alone; another inflow asks anew.
    expect(grids()).toEqual([10, 6, 8]);
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    run.pass(3);
    expect(grids()).toEqual([10, 6, 8, 10]);

    expect(run.words().filter((kind) => kind === "built")).toHaveLength(1);
    const fastest = ({ v }: FlowField) => Math.max(...v);
    moments().forEach(({ field, shape }, n) => {
      const before = moments()[n - 1]?.field;
      if (!before) return;
      expect(field.shapeId).toBe(1);
      expect(field.time).toBeGreaterThan(before.time);
      expect(field.time).toBeLessThan(before.time + 0.15);
      if (!shape) return;
      expect(field.u).toHaveLength(shape.nx * shape.ny);
      expect(fastest(field) / fastest(before)).toBeGreaterThan(0.8);
      expect(fastest(field) / fastest(before)).toBeLessThan(1.25);
    });
  }, 60_000);

  /** Seconds of running on, and what was said in them: shapes by their cells, moments by theirs. */
  const heard = (run: ReturnType<typeof begin>, seconds: number) => {
    const before = run.said.length;
    run.pass(seconds);
    return run.said.slice(before).flatMap((message) => {
      if (message.kind !== "built" && message.kind !== "field") return [];
      const { kind, shape } = message;
      const flow = kind === "field" ? message.field.u.length : undefined;
      return [{ kind, flow, cells: shape && shape.nx * shape.ny }];
    });
  };

  it("answers other walls on the coarsest grid, and goes from there straight to the one that it held", () => {
    const run = begin();
    run.runner.hear({ ...build, soundSteps: 3, shapeId: 1 });
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    run.runner.hear({ kind: "run", rate: 0.5, seen: 0.5 });
    run.look(0.00002);
    const first = heard(run, 3);
    const held = first.findLast(({ cells }) => cells)!.cells!;
    expect(held).toBeGreaterThan(2 * first[0]!.cells!);
    const walls = (shapeId: number, conduitDiameter: number) => ({
      ...{ ...build, soundSteps: 3 as const, shapeId },
      geometry: pathwayGeometry({ ...request, set: { conduitDiameter } })!,
    });
    run.runner.hear(walls(2, 18.5));
    // A new answer to what flows in does not begin the finer grid anew.
    const soon = heard(run, 0.1);
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    const [built, flow, ...later] = [...soon, ...heard(run, 1)];
    expect(built!.kind).toBe("built");
    expect(built!.cells).toBeLessThan(0.6 * held);
    expect(flow).toEqual({ kind: "field", cells: undefined, flow: built!.cells });
    const grids = later.flatMap(({ cells }) => cells ?? []);
    expect(grids).toHaveLength(1);
    expect(grids[0]! / held).toBeCloseTo(1, 1);

    // A hand that drags is answered each time on the coarsest; only where it rests the finer one comes.
    const hand = Array.from({ length: 8 }, (_, n) => {
      run.runner.hear(walls(3 + n, 19 + 0.5 * n));
      return heard(run, 0.08);
    });
    for (const each of hand) {
      expect(each[0]!.kind).toBe("built");
      expect(each.filter(({ cells }) => cells)).toHaveLength(1);
      expect(each.filter(({ kind }) => kind === "field").length).toBeGreaterThan(0);
    }
    expect(heard(run, 1).filter(({ cells }) => cells)).toHaveLength(1);
  });

  it("keeps its grid while it is asked for none that is seen", () => {
    const run = begin();
    run.runner.hear({ ...build, cellsAcross: 6, shapeId: 1 });
    run.runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
    run.runner.hear({ kind: "run", rate: 0.5, seen: 0 });
    run.pass(6);
    expect(run.said.some((message) => message.kind === "field" && message.shape)).toBe(false);
  });
});
