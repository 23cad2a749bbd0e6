import type { Graphics } from "pixi.js";
import { describe, expect, it, test } from "vitest";
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
import type { Pane } from "../../src/chain/frame.ts";
import type { Lettering, Note } from "../../src/scenes/drawing/lettering.ts";
import { drawLegend } from "../../src/scenes/layers/legend.ts";
import { mapStep, SCALES } from "../../src/scenes/layers/scales.ts";
import { mapRemarks, mapShown } from "../../src/scenes/pathway/map-remarks.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { sizes } from "../../src/scenes/theme/type.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { buildField } from "../../src/sim/flow-field/index.ts";
import type { FieldMeans } from "../../src/sim/flow-field/means.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import type { CirculationRequest, Stage } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

/** mmHg by which two plates differ before a flow in two dimensions must tell them apart, too. */
const REPORTED_APART = 0.25;
/** mm before an opening that count as its vessel */
const BEFORE = 6;

const PLATES = {
  svc: "svc",
  ivc: "ivc",
  left: "pulmonaryArteryLeft",
  right: "pulmonaryArteryRight",
} as const;
type Place = keyof typeof PLATES;

/** The plates' mean pressures, and where on the map's scale the vessels at the openings lie. */
function mapped(stage: Stage, set: CirculationRequest["set"]) {
  const request = { ...START.request, stage, set };
  const circulation = solve(request);
  const geometry = pathwayGeometry(request)!;
  const field = buildField(geometry, fluidOf(request), { cellsAcross: 6, depth: "round" });
  const drive = boundaryConditions(circulation, circulation, false);
  field.setBoundary(drive);
  const windows = Math.ceil(1.7 / drive.period);
  field.advanceSeconds((windows + 0.05) * drive.period);
  const { pressure } = field.takeMeans()!;
  const { nx, dx, originX, originY, distance } = field.shape();
  const step = (name: Place): number => {
    const { centre, normal, width } = geometry.openings.find((opening) => opening.name === name)!;
    const cells = [...pressure.keys()].filter((k) => {
      const x = originX + (k % nx) * dx - centre[0];
      const y = originY + Math.floor(k / nx) * dx - centre[1];
      const before = -(x * normal[0] + y * normal[1]);
      const across = Math.abs(y * normal[0] - x * normal[1]);
      return distance[k]! < -dx && before > 0 && before < BEFORE && across < width / 2;
    });
    return mapStep("pressure", cells.reduce((sum, k) => sum + pressure[k]!, 0) / cells.length);
  };
  const names = Object.keys(PLATES) as Place[];
  return names.map((name) => ({ name, plate: circulation.pressures[PLATES[name]], step: step(name) }));
}

test.each([
  ["atriopulmonary", {}],
  ["lateral-tunnel", { breathing: "held" }],
  ["extracardiac", { breathing: "held" }],
  ["extracardiac", { breathing: "held", pathwayNarrowing: 65 }],
] as const)(
  "%s %o: the vessels' colours on the pressure map are in the order of the plates' mean pressures",
  (stage, set) => {
    const places = mapped(stage, set);
    let compared = 0;
    for (const a of places) {
      for (const b of places) {
        if (a.plate - b.plate < REPORTED_APART) continue;
        compared++;
        expect(a.step, `${a.name} over ${b.name}`).toBeGreaterThan(b.step);
      }
    }
    expect(compared).toBeGreaterThanOrEqual("pathwayNarrowing" in set ? 5 : 4);
    for (const { step } of places) expect(step).toBeLessThan(255);
  },
  180_000,
);

describe("a map's key", () => {
  const theme = darkTheme((key, values) => (values ? `${key} ${Object.values(values)}` : key));
  const pane = (settled: boolean, period = 2.4): Pane =>
    ({
      circulation: { traces: { period, heartPeriod: 0.6 } },
      field: { readings: { settled } },
      means: {} as FieldMeans,
    }) as unknown as Pane;

  it("says whenever a flow is shown that it is a plane's, over what a map is a mean, and whether it settles still", () => {
    const plane = "scene.inPlane";
    expect(mapRemarks([{ ...pane(true), field: null }], "none", theme)).toEqual([]);
    expect(mapRemarks([pane(true)], "none", theme)).toEqual([plane]);
    expect(mapRemarks([pane(true)], "pressure", theme)).toEqual([plane, "scene.map.mean breath"]);
    expect(mapRemarks([pane(true, 0.6)], "speed", theme)).toEqual([plane, "scene.map.mean beat"]);
    expect(mapRemarks([pane(true), pane(false)], "loss", theme)[2]).toBe("scene.map.settling");
  });

  it("is shown as soon as there are means", () => {
    expect(mapShown(pane(false), "loss")).toBe(true);
    expect(mapShown({ ...pane(true), means: null }, "speed")).toBe(false);
  });

  it("puts no number on the map of heat, which is not the pathway's loss", () => {
    const ends = (overlay: "speed" | "loss") => {
      const written: string[] = [];
      const words = {
        write({ lines }: Note) {
          written.push(...lines.map((line) => line.words));
          return { x: 0, y: 0, width: 10, height: 10 };
        },
      };
      const facts = {
        colouring: "origin",
        overlay,
        saturations: [0, 0, 0],
        origins: [true, true, true],
        heart: null,
        pumped: null,
        still: false,
        dyed: false,
        remarks: [],
      } as const;
      const at = { x: 0, y: 0, width: 400, inline: false };
      const ink: unknown = new Proxy({}, { get: () => () => ink });
      const sheet = {
        ink: ink as Graphics,
        words: words as unknown as Lettering,
        sizes: sizes(800, 13),
        theme,
      };
      drawLegend(sheet, facts, at);
      return written.join(" ");
    };
    expect(ends("speed")).toMatch(/\d/);
    expect(ends("loss")).not.toMatch(/\d/);
  });

  it("has one scale whatever is drawn: its ends are the map's ends", () => {
    for (const name of ["speed", "pressure", "loss", "age"] as const) {
      const { least, most } = SCALES[name];
      expect([least - 1e9, least, most, most + 1e9].map((value) => mapStep(name, value))).toEqual([
        0, 0, 255, 255,
      ]);
    }
  });
});
