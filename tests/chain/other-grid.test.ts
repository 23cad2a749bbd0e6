import { describe, expect, it } from "vitest";
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
import { NO_FIELD, received } from "../../src/chain/latest-field.ts";
import { paneTracers } from "../../src/chain/pane-tracers.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import type { FieldShape } from "../../src/sim/flow-field/flow-field.ts";
import { buildField } from "../../src/sim/flow-field/index.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { seededRandom } from "../../src/sim/random.ts";
import type { Tracers } from "../../src/sim/tracers/tracers.ts";
import { START } from "../../src/state/scene-state.ts";

const { request } = START;
const circulation = solve(request);
const geometry = pathwayGeometry(request)!;
const blood = { geometry, circulation };
const fps = 30;

/** Parts of all tracers in four bands of the plane's height, from below. */
function bands(tracers: Tracers, { originY, ny, dx }: FieldShape): number[] {
  const parts = [0, 0, 0, 0];
  for (let k = 0; k < tracers.count; k++) {
    const band = Math.floor((4 * (tracers.position[2 * k + 1]! - originY)) / (ny * dx));
    parts[Math.min(3, Math.max(0, band))]! += 1 / tracers.count;
  }
  return parts;
}

describe("a field that goes on on another grid for the same order", () => {
  it("moves the tracers through the new grid's flow", () => {
    const session = buildField(geometry, fluidOf(request), { cellsAcross: 9, depth: "round" });
    session.setBoundary(boundaryConditions(circulation, circulation, false));
    session.advanceSeconds(0.6);
    const fine = { shape: session.shape(), field: session.read() };
    session.reshape(geometry, { cellsAcross: 6 });
    session.setBoundary(boundaryConditions(circulation, circulation, false));
    session.advanceSeconds(0.2);
    const coarse = { shape: session.shape(), field: session.read() };
    session.release();
    expect(coarse.field.u.length).toBeLessThan(fine.field.u.length);

    const order = (latest: typeof NO_FIELD, { shape, field }: typeof fine) =>
      received(received(latest, { kind: "built", shapeId: 1, shape }), {
        kind: "field",
        field: { ...field, shapeId: 1 },
        capable: 1,
        cellsAcross: 6,
      });
    const follow = (tracers: ReturnType<typeof paneTracers>, latest: typeof NO_FIELD, seconds: number) => {
      let shown: ReturnType<typeof tracers.follow> = null;
      for (let n = 0; n < seconds * fps; n++)
        shown = tracers.follow(latest, blood, { time: n / fps, step: 1 / fps, motion: "moving" });
      return shown!.tracers!;
    };
    const [carried, begun] = [paneTracers(2000, seededRandom(7)), paneTracers(2000, seededRandom(7))];
    const onFine = order(NO_FIELD, fine);
    follow(carried, onFine, 1);
    const own = bands(follow(carried, order(onFine, coarse), 4), coarse.shape);
    const fresh = bands(follow(begun, order(NO_FIELD, coarse), 4), coarse.shape);
    expect(fresh.reduce((sum, part) => sum + part)).toBeCloseTo(1);
    own.forEach((part, band) => {
      expect(Math.abs(part - fresh[band]!)).toBeLessThan(0.05);
    });
  });
});

describe("moving blood", () => {
  it("begins with a sixth of its tracers, and the rest join within two seconds", () => {
    const session = buildField(geometry, fluidOf(request), { cellsAcross: 6, depth: "round" });
    session.setBoundary(boundaryConditions(circulation, circulation, false));
    session.advanceSeconds(0.2);
    const latest = received(received(NO_FIELD, { kind: "built", shapeId: 1, shape: session.shape() }), {
      kind: "field",
      field: { ...session.read(), shapeId: 1 },
      capable: 1,
      cellsAcross: 6,
    });
    session.release();
    const tracers = paneTracers(1200, seededRandom(7));
    const at = (n: number) =>
      tracers.follow(latest, blood, { time: n / fps, step: n > 0 ? 1 / fps : 0, motion: "moving" })!.tracers!
        .count;
    expect(at(0)).toBe(200);
    const counts = Array.from({ length: 70 }, (_, n) => at(n + 1));
    expect(counts[34]).toBeLessThan(900);
    expect(counts.at(-1)).toBeGreaterThan(1150);
  });
});
