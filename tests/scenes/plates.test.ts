// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import { t } from "../../src/i18n/index.ts";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { drawnPlane } from "../../src/scenes/layers/drawn-plane.ts";
import { hairline } from "../../src/scenes/layers/keep-off.ts";
import type { Label } from "../../src/scenes/layers/labels.ts";
import { occupied } from "../../src/scenes/layers/occupied.ts";
import { listed, placed, pointed } from "../../src/scenes/pathway/named.ts";
import {
  extent,
  keyPlace,
  layout,
  onPlane,
  onScreen,
  type Projection,
  project,
} from "../../src/scenes/pathway/pathway-layout.ts";
import type { Box } from "../../src/scenes/scene.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { sizes as typeSizes } from "../../src/scenes/theme/type.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { outlineDistance, planeDistance } from "../../src/sim/geometry/distance.ts";
import type { PathwayGeometry } from "../../src/sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { type Body, CASES, STAGES, type Stage } from "../../src/sim/parameters/request.ts";
import { measureLetters } from "./wide-letters.ts";

measureLetters();

const WITH_PLANE = STAGES.filter((stage) => stage !== "two-ventricle");
/** with the hole's diameter, mm */
const BODIES: readonly (readonly [Body, number])[] = [
  [CASES.caseA, 0],
  [CASES.caseA, 4],
  [CASES.caseB, 0],
  [{ ageYears: 0.5, bsa: 0.35, haemoglobin: 14 }, 4],
];
/** Canvas, what controls leave free of it, and the smallest type: bench and hall at their sizes. */
const SCREENS: readonly (readonly [string, Box, number])[] = [
  ["hall 1920x1080", { x: 0, y: 0, width: 1920, height: 860 }, 24],
  ["bench 1920x1080", { x: 0, y: 64, width: 1636, height: 930 }, 13],
  ["kiosk 1080x1920", { x: 0, y: 80, width: 1080, height: 1100 }, 24],
  ["bench 1280x800", { x: 0, y: 64, width: 1016, height: 660 }, 13],
  ["hall 1280x800", { x: 0, y: 64, width: 1280, height: 580 }, 24],
  ["old projector 1024x768", { x: 0, y: 64, width: 1024, height: 540 }, 24],
  ["bench 1024x768", { x: 0, y: 64, width: 780, height: 620 }, 13],
  ["phone 390x844", { x: 0, y: 110, width: 390, height: 480 }, 13],
];
/** CSS px between looks under a plate */
const LOOK = 6;
/** mm of wall around the blood */
const WALL = 2;

const circulation = {
  pressures: new Proxy({}, { get: () => 12.6 }),
  flows: { fenestration: 0.42 },
  saturations: { arterial: 92 },
  pathway: { ledger: [], gradeLine: [] },
} as unknown as Circulation;

/** A plane, the plates' input, and the truth from the geometry itself. */
function planeOf(stage: Stage, body: Body, fenestrationDiameter: number) {
  const geometry = pathwayGeometry({
    kind: "circulation",
    stage,
    body,
    volumeRule: "hold-atrial-pressure",
    set: fenestrationDiameter > 0 ? { fenestrationDiameter } : {},
  })!;
  return {
    geometry,
    reported: occupied(geometry, drawnPlane(geometry)),
    blood: planeDistance(geometry, 0),
    parts: anatomyOf(geometry.chest)
      .parts.filter(({ ground }) => !ground)
      .map(({ name, outline }) => ({ name, distance: outlineDistance(outline) })),
  };
}
type TestPlane = ReturnType<typeof planeOf>;

/** Whether a point lies where blood is seen to run into the atrium, through the hole and straight on (mm). */
const inJet = ({ openings }: PathwayGeometry, x: number, y: number): boolean =>
  openings
    .filter(({ name }) => name === "fenestration")
    .some(({ centre, normal: [nx, ny], width }) => {
      const [dx, dy] = [x - centre[0], y - centre[1]];
      const along = dx * nx + dy * ny;
      return along > 0 && along < 20 && Math.abs(dy * nx - dx * ny) < width / 2;
    });

const known = new Map<string, TestPlane>();
const planeFor = (...of: Parameters<typeof planeOf>): TestPlane => {
  const key = JSON.stringify(of);
  if (!known.has(key)) known.set(key, planeOf(...of));
  return known.get(key)!;
};

/** Names of the parts under a plate. */
function under(label: Label, { geometry, blood, parts }: TestPlane, projection: Projection): string[] {
  const found = new Set<string>();
  const [across, down] = [Math.ceil(label.width / LOOK), Math.ceil(label.height / LOOK)];
  for (let i = 0; i <= across; i++)
    for (let j = 0; j <= down; j++) {
      const [x, y] = onPlane(
        projection,
        label.x + label.width * (i / across - 0.5),
        label.y + label.height * (j / down - 0.5),
      );
      if (blood(x, y) < WALL) found.add("blood");
      if (inJet(geometry, x, y)) found.add("jet");
      if (blood(x, y) < WALL) continue;
      // Of what lies behind another part nothing is covered.
      const front = parts.findLast(({ distance }) => distance(x, y) < 0)?.name;
      if (front && front !== label.name) found.add(front);
    }
  return [...found];
}

const theme = darkTheme(t);

describe.each(SCREENS)("plates on a %s", (_, clear, floor) => {
  const sizes = typeSizes(clear.height, floor);
  const labelsIn = ({ geometry, reported }: TestPlane, count: number, focus: string | null) => {
    const at = keyPlace(clear, count, sizes);
    const key = { x: at.x, y: at.y, width: at.inline ? at.width : 12 * sizes.axis, height: sizes.axis * 6 };
    const { planes, narrow } = layout(clear, count, true, key, sizes);
    const box = planes[0]!;
    const projection = project(box, extent(geometry));
    const toScreen = (point: readonly [number, number]) => onScreen(projection, point);
    const crowded = count > 1 || narrow;
    const plane = { geometry, circulation, toScreen, crowded };
    const look = { sizes, theme };
    const wanted = pointed(focus, plane, look) ?? listed(plane, look);
    const room = { box, taken: [key], crowded: count > 1 && narrow };
    return { labels: placed(wanted, reported, projection, room), projection };
  };

  it.each(WITH_PLANE)("%s: none covers blood, its wall or a part that is not its own", (stage) => {
    for (const [body, fenestration] of BODIES)
      for (const count of [1, 2, 3]) {
        const plane = planeFor(stage, body, fenestration);
        const { labels, projection } = labelsIn(plane, count, null);
        for (const label of labels)
          expect(under(label, plane, projection), `${label.name} of ${count}, ${body.bsa} m2`).toEqual([]);
        if (count === 1) expect(labels.length, `${body.bsa} m2`).toBeGreaterThanOrEqual(2);
      }
  });

  it.each(WITH_PLANE)("%s: in a small pane beside another no hairline runs far", (stage) => {
    const { labels } = labelsIn(planeFor(stage, CASES.caseA, 4), 2, null);
    if (!layout(clear, 2, true, { ...clear, height: 0 }, sizes).narrow) return;
    expect(labels.length).toBeGreaterThan(0);
    if (labels.length === 1) return;
    for (const label of labels) {
      const [[ax, ay], [bx, by]] = hairline(label);
      expect(Math.hypot(bx - ax, by - ay), label.name).toBeLessThan(2 * label.height);
    }
  });

  it.each(WITH_PLANE)("%s: neither does the plate of anything that is pointed at", (stage) => {
    const plane = planeFor(stage, CASES.caseA, 4);
    const { geometry } = plane;
    const names = [
      ...geometry.path.map(({ element }) => element),
      ...geometry.places.map(({ name }) => name),
    ];
    for (const name of new Set(names)) {
      const { labels, projection } = labelsIn(plane, 1, name);
      for (const label of labels) expect(under(label, plane, projection), name).toEqual([]);
    }
  });
});
