// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import type { Pane } from "../../src/chain/frame.ts";
import { originShares, probeAt } from "../../src/scenes/pathway/probe-reading.ts";
import { present } from "../../src/sim/checked/present.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import type { FieldShape, FlowField } from "../../src/sim/flow-field/flow-field.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import type { Tracers } from "../../src/sim/tracers/tracers.ts";
import { START } from "../../src/state/scene-state.ts";

const geometry = present(pathwayGeometry(START.request));
const circulation = solve(START.request);
const { area } = present(geometry.path.find(({ element }) => element === "conduit"));
const [x, y] = present(area).centre;

/** A square of blood around the conduit's middle with a ramp of speed across it. */
const [nx, ny, dx] = [21, 21, 1];
const shape = {
  nx,
  ny,
  dx,
  originX: x - 10,
  originY: y - 10,
  distance: Float32Array.from({ length: nx * ny }, (_, k) => Math.abs((k % nx) - 10) - 8),
} as unknown as FieldShape;
const field = {
  u: new Float32Array(nx * ny),
  v: Float32Array.from({ length: nx * ny }, (_, k) => 0.01 * (k % nx)),
} as unknown as FlowField;
const tracers = {
  count: 4,
  position: Float32Array.from([x, y + 1, x + 1, y, x, y - 2, x + 6, y]),
  origin: Uint8Array.from([0, 1, 1, 2]),
} as unknown as Tracers;
const pane = { field, shape, geometry, circulation, tracers } as unknown as Pane;

describe("the probe", () => {
  it("reads speed from the plane, origins from the tracers near by, pressure from the circulation", () => {
    const found = present(probeAt(pane, [x, y]));
    expect(found.speed).toBeCloseTo(0.1, 6);
    expect(probeAt(pane, [x + 0.5, y])?.speed).toBeCloseTo(0.105, 6);
    expect(found.counts).toEqual([1, 2, 0]);
    expect(found.element).toBe("conduit");
    // The very number of the grade line, whatever the plane's own pressure would be.
    const line = circulation.pathway.gradeLine.find(({ at }) => at === "conduit");
    expect(found.pressure).toBe(line?.totalPressure);
  });

  it("finds nothing in a wall, nor where no plane is computed", () => {
    expect(probeAt(pane, [x + 9, y])).toBeNull();
    expect(probeAt(pane, [x + 500, y])).toBeNull();
    expect(probeAt({ ...pane, field: null }, [x, y])).toBeNull();
  });

  it("tells no share from a handful of tracers, and forgets where it has been", () => {
    const meter = originShares();
    expect(meter.add([3, 3, 0])).toBeNull();
    expect(meter.add([10, 10, 0])).toEqual([
      { origin: "upper", share: 50 },
      { origin: "liver", share: 50 },
    ]);
    meter.forget();
    expect(meter.add([0, 0, 20])).toEqual([{ origin: "legs", share: 100 }]);
  });
});
