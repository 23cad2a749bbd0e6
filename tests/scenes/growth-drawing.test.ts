import type { Graphics } from "pixi.js";
import { describe, expect, test } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { planSweep, type SweepPoint } from "../../src/chain/running-sweep.ts";
import { LANGUAGES, setLanguage, t } from "../../src/i18n/index.ts";
import { readGrowth } from "../../src/scenes/growth/growth-reading.ts";
import { drawHeartAndTube } from "../../src/scenes/growth/heart-drawing.ts";
import { ringWords } from "../../src/scenes/growth/rings.ts";
import { drawTubeSegment, speedIn, tubeLayout } from "../../src/scenes/growth/tube-segment.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import type { Circulation } from "../../src/sim/circulation/answer.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import type { CirculationRequest, Stage } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

type Call = readonly [name: string, ...given: unknown[]];

/** What is asked of an ink, in turn. */
function callsOf(draw: (ink: Graphics) => void): readonly Call[] {
  const calls: Call[] = [];
  const ink: Graphics = new Proxy({} as Graphics, {
    get:
      (_, name: string) =>
      (...given: unknown[]) => {
        calls.push([name, ...given]);
        return ink;
      },
  });
  draw(ink);
  return calls;
}
const THEME = darkTheme((key) => key);
const requestOf = (change: Partial<CirculationRequest>): CirculationRequest => ({
  ...START.request,
  ...change,
});
const heartOf = (request: CirculationRequest) =>
  callsOf((ink) => drawHeartAndTube(ink, request, { x: 0, ground: 200, height: 150 }, 200, THEME));
const sizesOf = (calls: readonly Call[], shape: string) =>
  calls
    .filter(([name]) => name === shape)
    .map(([, , , across, long]) => [Number(across), Number(long)] as const);

describe("what leads the blood in the growing bodies", () => {
  test("is a round chamber a little taller than wide where the right atrium does", () => {
    const calls = heartOf(requestOf({ stage: "atriopulmonary" }));
    expect(sizesOf(calls, "rect")).toEqual([]);
    const [[across, long]] = sizesOf(calls, "ellipse") as [readonly [number, number]];
    expect(long / across).toBeCloseTo(1.2, 6);
    const narrower = heartOf(requestOf({ stage: "atriopulmonary", set: { chamberDiameter: 30 } }));
    expect(sizesOf(narrower, "ellipse")[0]![0] / across).toBeCloseTo(30 / 45, 6);
  });

  test("is a tube as long as it is set", () => {
    const lengthOf = (conduitLength: number) =>
      sizesOf(heartOf(requestOf({ set: { conduitLength } })), "rect")[0]![1];
    expect(lengthOf(80) / lengthOf(40)).toBeCloseTo(2, 6);
  });

  test("is named as what it is, with its growth, in every language", async () => {
    const pointsOf = (stage: Stage) =>
      planSweep({ ...START, scene: "growth", request: requestOf({ stage }) })!.curves[0]!.points;
    for (const language of LANGUAGES) {
      await setLanguage(language);
      const chamber = ringWords(pointsOf("atriopulmonary"), t);
      expect(chamber).toMatch(/chamber|Kammer|cámara|chambre/);
      expect(chamber).not.toMatch(/tub|Röhre/i);
      // What is drawn is a piece of tube; of its rings only the dashed one stands alone.
      expect(chamber).toMatch(/^(Opening|Öffnung|Abertura|Ouverture)/);
      expect(chamber).toMatch(/45\smm .+ 6\d\smm/);
      expect(ringWords(pointsOf("lateral-tunnel"), t)).toMatch(/18\smm .+ 20\smm/);
      const tube = ringWords(pointsOf("extracardiac"), t);
      expect(tube).toMatch(/tub|Röhre/);
      expect(tube.match(/mm/g)).toHaveLength(1);
    }
    await setLanguage("en");
  });

  test("is read as growing where it does", () => {
    const readingOf = (stage: Stage) => {
      const sweep = planSweep({ ...START, scene: "growth", request: requestOf({ stage }) })!;
      const { pathway } = solve(requestOf({ stage }));
      const points = sweep.curves[0]!.points.map((point) => ({ ...point, circulation: { pathway } }));
      const { key, args } = readGrowth({
        sweep: { ...sweep, curves: [{ name: "0", points }] },
      } as unknown as Frame)!;
      return t(key, args);
    };
    expect(readingOf("atriopulmonary")).toMatch(/45\.0 millimetres wide that grows to 6\d\.\d,/);
    expect(readingOf("extracardiac")).toMatch(/18\.0 millimetres wide that does not grow,/);
  });

  test("holds no blood before its state is solved", () => {
    const { request } = START;
    const place = { x: 0, top: 0, height: 80, perMillimetre: 2, type: 12 };
    const coloursOf = (circulation: SweepPoint["circulation"]) =>
      new Set(
        callsOf((ink) => drawTubeSegment(ink, { at: 1, request, circulation }, place, THEME)).flatMap(
          ([name, style]) => (name === "fill" ? [(style as { color: string }).color] : []),
        ),
      );
    expect(coloursOf(null)).toContain(THEME.colour.lumen);
    const solved = { saturations: { ivc: 68 } } as Circulation;
    expect(coloursOf(solved)).not.toContain(THEME.colour.lumen);
    expect(coloursOf(solved).size).toBeGreaterThan(coloursOf(null).size + 3);
  });

  test("stands to scale: lumen, and the body's own vein within it", () => {
    const { request } = START;
    const layoutOf = (set: CirculationRequest["set"]) =>
      tubeLayout(
        { at: 1, request: requestOf({ ...request, set }), circulation: null },
        { x: 0, top: 0, height: 80, perMillimetre: 2, type: 12 },
      );
    expect(layoutOf({ conduitDiameter: 24 }).half / layoutOf({ conduitDiameter: 16 }).half).toBeCloseTo(
      1.5,
      6,
    );
    expect(layoutOf({ conduitDiameter: 24 }).vein).toBeCloseTo(layoutOf({ conduitDiameter: 16 }).vein, 6);
  });

  test("moves its blood as fast as the flow through its section, faster where the body needs more", () => {
    const at = (ivc: number, conduitDiameter: number) =>
      speedIn({
        at: 1,
        request: requestOf({ set: { conduitDiameter } }),
        circulation: { flows: { ivc } } as Circulation,
      });
    expect(at(2.4, 18)).toBeCloseTo(2 * at(1.2, 18), 9);
    expect(at(1.2, 20)).toBeCloseTo(at(1.2, 10) / 4, 9);
    // 1.2 L/min through a circle of 18 mm
    expect(at(1.2, 18)).toBeCloseTo(78.6, 1);
  });
});
