import { expect, test } from "vitest";
import { planeDistance } from "../../../src/sim/geometry/distance.ts";
import type { PathwayGeometry } from "../../../src/sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../../src/sim/geometry/pathways/index.ts";
import { wallOutlines } from "../../../src/sim/geometry/walls.ts";
import { gradeLine, pathwayLaw } from "../../../src/sim/hydraulics/index.ts";
import { defaultSetting, findParameter, PARAMETERS } from "../../../src/sim/parameters/parameters.ts";
import {
  CASES,
  type CirculationRequest,
  PATHWAY_STAGES,
  type Stage,
} from "../../../src/sim/parameters/request.ts";

type Set = CirculationRequest["set"];
const ask = (stage: Stage, set: Set = {}, body: CirculationRequest["body"] = CASES.caseA) =>
  ({ kind: "circulation", stage, body, volumeRule: "hold-output", set }) as const;
const plane = (stage: Stage, set: Set = {}, body?: CirculationRequest["body"]) =>
  pathwayGeometry(ask(stage, set, body))!;

const STAGES = [...PATHWAY_STAGES, "glenn"] as const;
const BODIES = Object.values(CASES);
const MINE = PARAMETERS.filter(({ group }) => group === "pathway" || group === "fenestration");

/** Defaults, and each parameter at both ends with a hole open. */
function* settings(): Generator<Set> {
  yield {};
  for (const parameter of MINE) {
    if (parameter.kind !== "number") continue;
    yield { fenestrationDiameter: 4, [parameter.name]: parameter.min };
    yield { fenestrationDiameter: 4, [parameter.name]: parameter.max };
  }
}

test.each(STAGES)(
  "%s: blood is one connected region that reaches every opening, whatever the sizes",
  (stage) => {
    for (const set of settings()) {
      const geometry = plane(stage, set);
      const walls = wallOutlines(geometry, 0.8);
      // One outline: no island of blood apart, no stray hole.
      expect(walls.length, JSON.stringify(set)).toBe(1);
      const reached = new globalThis.Set(walls[0]!.openings.filter((name) => name !== null));
      for (const { name, width } of geometry.openings) {
        if (width > 1.6) expect(reached.has(name), `${name} ${JSON.stringify(set)}`).toBe(true);
      }
    }
  },
);

test.each(STAGES)("%s: each opening is a straight cut across its lumen, blood on its inner side", (stage) => {
  for (const body of BODIES) {
    const geometry = plane(stage, { fenestrationDiameter: 5 }, body);
    const distance = planeDistance(geometry, 0.5);
    for (const { name, centre, normal, width } of geometry.openings) {
      expect(Math.hypot(...normal)).toBeCloseTo(1, 9);
      const inside = distance(centre[0] - 0.5 * normal[0], centre[1] - 0.5 * normal[1]);
      expect(inside, name).toBeLessThan(-0.3 * width);
      for (const side of [-1, 1]) {
        const x = centre[0] - 0.3 * normal[0] - side * (width / 2) * normal[1];
        const y = centre[1] - 0.3 * normal[1] + side * (width / 2) * normal[0];
        expect(Math.abs(distance(x, y)), `${stage} ${name}`).toBeLessThan(0.35);
      }
    }
  }
});

test("openings carry the names that the rest of the chain knows, the fenestration only when open", () => {
  const names = (geometry: PathwayGeometry) => geometry.openings.map(({ name }) => name);
  for (const stage of PATHWAY_STAGES) {
    expect(names(plane(stage))).toEqual(["ivc", "svc", "left", "right"]);
    expect(names(plane(stage, { fenestrationDiameter: 3 }))).toContain("fenestration");
  }
  expect(names(plane("glenn", { fenestrationDiameter: 3 }))).toEqual(["svc", "left", "right"]);
  expect(pathwayGeometry(ask("two-ventricle"))).toBeNull();
});

test.each(STAGES)("%s: the picture's stations are the grade line's", (stage) => {
  for (const set of [{}, { pathwayNarrowing: 40, leftBranchStenosis: 30 }] as Set[]) {
    const { path } = plane(stage, set);
    const pressures = {
      hepaticVein: 13,
      ivc: 12.8,
      pulmonaryArteryLeft: 12,
      pulmonaryArteryRight: 12,
      pulmonaryVein: 7.5,
      atrium: 7,
    };
    const points = gradeLine(
      pathwayLaw(ask(stage, set)),
      { ivc: 2e-5, svc: 2e-5, left: 2e-5, right: 2e-5 },
      pressures,
    );
    const end = { element: "atrium", from: 1 };
    for (const [i, { element, from }] of [...path, end].entries()) {
      expect(points[i]!.at).toBe(element);
      expect(points[i]!.station).toBeCloseTo(from, 9);
    }
    expect(path.at(-1)!.to).toBeCloseTo(1, 12);
    for (const { element, area } of path) if (area) expect(area.radius, element).toBeGreaterThan(0);
  }
});

test.each(STAGES)("%s: labels are outside the lumen", (stage) => {
  for (const body of BODIES) {
    const geometry = plane(stage, { fenestrationDiameter: 4 }, body);
    const distance = planeDistance(geometry, 0);
    for (const { name, label } of geometry.places) expect(distance(...label), `${name}`).toBeGreaterThan(1.5);
  }
});

const WALL_HANDLES = [
  "conduitDiameter",
  "tunnelDiameter",
  "pathwayNarrowing",
  "leftBranchStenosis",
  "rightBranchStenosis",
  "fenestrationDiameter",
];

test.each(STAGES)("%s: a handle on a wall moves with the wall that it sets", (stage) => {
  const before: Set = {
    fenestrationDiameter: 4,
    leftBranchStenosis: 20,
    rightBranchStenosis: 20,
    pathwayNarrowing: 20,
  };
  for (const { edits, at, along, perMillimetre } of plane(stage, before).handles) {
    const parameter = findParameter(edits)!;
    expect(parameter.stages?.includes(stage), edits).toBe(true);
    expect(Math.hypot(...along)).toBeCloseTo(1, 9);
    if (!WALL_HANDLES.includes(edits)) continue;
    const value = (before[edits] ?? defaultSetting(parameter, stage, CASES.caseA)) as number;
    const moved = plane(stage, { ...before, [edits]: value + perMillimetre }).handles.find(
      (handle) => handle.edits === edits,
    )!;
    const travelled = (moved.at[0] - at[0]) * along[0] + (moved.at[1] - at[1]) * along[1];
    expect(travelled, edits).toBeGreaterThan(0.8);
    expect(travelled, edits).toBeLessThan(1.2);
  }
});

test("a narrowing narrows the drawn lumen to the width that the ledger uses", () => {
  const geometry = plane("extracardiac", { pathwayNarrowing: 50, cavalOffset: 0 });
  const distance = planeDistance(geometry, 0);
  const { at, along } = geometry.handles.find(({ edits }) => edits === "pathwayNarrowing")!;
  const middle = [at[0] + 4.5 * along[0], at[1] + 4.5 * along[1]] as const;
  // Half of 18 mm: radius 4.5 at the throat.
  expect(-distance(...middle)).toBeGreaterThan(4);
  expect(-distance(...middle)).toBeLessThan(4.7);
});

test("the conduit keeps its width in an adult while the veins grow", () => {
  const widest = (body: CirculationRequest["body"], name: string) =>
    plane("extracardiac", {}, body).openings.find((opening) => opening.name === name)!.width;
  expect(widest(CASES.caseB, "ivc")).toBeGreaterThan(1.2 * widest(CASES.caseA, "ivc"));
});

test.each(PATHWAY_STAGES)("%s: a child's plane is 100 to 140 mm tall and within its bounds", (stage) => {
  const geometry = plane(stage);
  const [left, bottom, right, top] = geometry.bounds;
  expect(top - bottom).toBeGreaterThan(100);
  expect(top - bottom).toBeLessThan(140);
  for (const { points } of wallOutlines(geometry, 0.8)) {
    for (const [x, y] of points) {
      expect(x).toBeGreaterThan(left - 0.5);
      expect(x).toBeLessThan(right + 0.5);
      expect(y).toBeGreaterThan(bottom - 0.5);
      expect(y).toBeLessThan(top + 0.5);
    }
  }
});
