// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { t } from "../../src/i18n/index.ts";
import { layOver } from "../../src/scenes/pathway/swipe.ts";
import { titlesOf } from "../../src/scenes/pathway/swipe-titles.ts";
import { drawingOf } from "../../src/scenes/scene-table.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { sizes as typeSizes } from "../../src/scenes/theme/type.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { PARAMETERS } from "../../src/sim/parameters/parameters.ts";
import { paneRequests, type SceneState, START } from "../../src/state/scene-state.ts";

const ROOM = { width: 110, height: 60 };
const [dark, small] = [darkTheme(t), typeSizes(800, 13)];
const PAIR: SceneState = { ...START, beside: [{ stage: "lateral-tunnel" }] };
const showing = (state: SceneState): Frame =>
  ({
    state,
    panes: paneRequests(state).map((request) => ({
      circulation: solve(request),
      geometry: pathwayGeometry(request),
    })),
  }) as unknown as Frame;
const pair = showing(PAIR);
const swiped = (swipe: number | null): Frame => ({
  ...pair,
  state: { ...PAIR, view: { ...PAIR.view, swipe } },
});

describe.each([
  ["laptop", 1280, 800, 13],
  ["projector", 1920, 1080, 24],
  ["old projector", 1024, 768, 24],
  ["kiosk", 1080, 1920, 24],
  ["phone", 390, 844, 13],
])("two pathways in one body on a %s", (_, width, height, floor) => {
  const full = { x: 0, y: 0, width, height };
  const lay = (swipe: number) =>
    layOver(swiped(swipe), { full, clear: full }, null, { sizes: typeSizes(height, floor), room: ROOM });

  it("lie in the same box, and what is seen of them meets at the divider", () => {
    for (const swipe of [0, 1, 37, 50, 99, 100]) {
      const { at, over } = lay(swipe);
      const [one, other] = at.planes;
      const [left, right] = over!.sides;
      expect(one).toEqual(other);
      expect(left!.x + left!.width).toBeCloseTo(right!.x);
      expect(left!.width + right!.width).toBeCloseTo(width);
      if (swipe % 100 > 0) expect(right!.x).toBeCloseTo(over!.divider.x);
    }
    expect(lay(0).over!.sides[0]!.width).toBe(0);
    expect(lay(100).over!.sides[1]!.width).toBe(0);
    expect(lay(75).over!.divider.x).toBeGreaterThan(lay(25).over!.divider.x);
  });

  it("have their titles on either side, inside and off the body", () => {
    const { at, over } = lay(50);
    const [left, right] = at.titles;
    expect(left!.x).toBeGreaterThanOrEqual(-0.5);
    expect(right!.x + right!.width).toBeLessThanOrEqual(width + 0.5);
    expect(left!.x + left!.width).toBeLessThanOrEqual(right!.x);
    for (const title of at.titles) {
      const above = title.y + title.height <= at.planes[0]!.y + 0.5;
      const beside = title.x + title.width <= over!.divider.from || title.x >= over!.divider.to;
      expect(above || beside).toBe(true);
    }
  });
});

it("each title says the pressure drop that the answer has, the second how far it differs", () => {
  const [first, second] = pair.panes.map(({ circulation }) => circulation!.pathway.pressureDrop);
  const [one, other] = titlesOf(pair.panes, small, dark).map((lines) => lines.map(({ words }) => words));
  expect(one).toEqual(["Extracardiac", "Pressure drop", expect.stringContaining(first!.toFixed(2))]);
  expect(other![0]).toBe("Lateral tunnel");
  const by = Number(second!.toFixed(2)) - Number(first!.toFixed(2));
  expect(other!.at(-1)).toContain(`${second!.toFixed(2)}`);
  expect(other!.at(-1)).toMatch(new RegExp(`\\+${by.toFixed(2)}$`));
});

it("two of the same pathway are told apart by what differs", () => {
  const same = showing({ ...START, beside: [{ set: { fenestrationDiameter: 4 } }] });
  const [one, other] = titlesOf(same.panes, small, dark).map((lines) => lines[1]!.words);
  expect(one).toMatch(/\b0/);
  expect(other).toMatch(/\b4/);
  // A setting that does nothing in this pathway tells nothing apart.
  const idle = PARAMETERS.find(
    ({ kind, stages }) => kind === "number" && stages?.includes("extracardiac") === false,
  )!;
  const [first, second] = same.panes.map(({ circulation }) => circulation!);
  const set = { ...first!.request.set, [idle.name]: 99 };
  const panes = [{ ...first!, request: { ...first!.request, set } }, second!].map((circulation, i) => ({
    ...same.panes[i]!,
    circulation,
  }));
  expect(titlesOf(panes, small, dark).map((lines) => lines[1]!.words)).toEqual([one, other]);
});

it("they lie one over the other when that is asked for and both are in a plane", () => {
  expect(drawingOf(pair)).toBe("joined");
  expect(drawingOf(swiped(40))).toBe("swiped");
  const three: SceneState = { ...PAIR, beside: [...PAIR.beside, { stage: "atriopulmonary" }] };
  expect(drawingOf(showing({ ...three, view: { ...three.view, swipe: 40 } }))).toBe("joined");
  const waiting = { ...swiped(40), panes: pair.panes.map((pane) => ({ ...pane, geometry: null })) };
  expect(drawingOf(waiting)).toBe("joined");
});
