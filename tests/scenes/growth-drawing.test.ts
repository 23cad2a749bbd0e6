// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { planSweep, type SweepPoint } from "../../src/chain/running-sweep.ts";
import { LANGUAGES, setLanguage, t } from "../../src/i18n/index.ts";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import type { Ink } from "../../src/scenes/anatomy/painted-sheet.ts";
import { middleOf, risingIn, trunkOf, trunkSize } from "../../src/scenes/growth/chest-place.ts";
import { PIECE, paintSection, sectionLayout } from "../../src/scenes/growth/cross-section.ts";
import { torsoOf } from "../../src/scenes/growth/growing-trunk.ts";
import { readGrowth } from "../../src/scenes/growth/growth-reading.ts";
import { wallsOf } from "../../src/scenes/growth/pathway-walls.ts";
import { pointWords, ringWords, widthWords } from "../../src/scenes/growth/rings.ts";
import { columnsOf, rowHeight, shownOf } from "../../src/scenes/growth/row.ts";
import { speedIn, waysIn } from "../../src/scenes/growth/vessel-blood.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { shapeDistance } from "../../src/sim/geometry/distance.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import type { CirculationRequest, Stage } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

/** The colours, also those of gradients, in which discs are filled. */
function coloursOf(paint: (ink: Ink) => void): ReadonlySet<string> {
  const colours = new Set<string>();
  const ink = new Proxy({} as Ink, {
    get: (_, name) =>
      name === "createRadialGradient"
        ? () => ({ addColorStop: (_: number, colour: string) => colours.add(colour) })
        : () => ({ addColorStop: () => {} }),
    set(_, name, value) {
      if (name === "fillStyle" && typeof value === "string") colours.add(value);
      return true;
    },
  });
  paint(ink);
  return colours;
}
const THEME = darkTheme((key) => key);
const requestOf = (change: Partial<CirculationRequest>): CirculationRequest => ({
  ...START.request,
  ...change,
});
const SECTION = { x: 0, y: 0, perMillimetre: 2, type: 12 };
const pointsOf = (stage: Stage) =>
  planSweep({ ...START, scene: "growth", request: requestOf({ stage }) })!.curves[0]!.points;

describe("what leads the blood in the growing bodies", () => {
  const frameOf = (request: CirculationRequest) => pathwayGeometry(request)!.chest;

  test("is as wide and as long as it is set, in the chest and cut across", () => {
    const trunkIn = (set: CirculationRequest["set"]) => {
      const { line, widths } = trunkOf(frameOf(requestOf({ set })));
      return { long: line.at(-1)![1] - line[0]![1], wide: Math.max(...widths) };
    };
    expect(trunkIn({ conduitLength: 80 }).long - trunkIn({ conduitLength: 40 }).long).toBeCloseTo(40, 0);
    expect(trunkIn({ conduitDiameter: 24 }).wide).toBeCloseTo(24, 6);
    const chamber = trunkOf(frameOf(requestOf({ stage: "atriopulmonary" })));
    expect(Math.max(...chamber.widths)).toBeCloseTo(45, 6);
  });

  test("lies within the trunk, as heart and lungs do, at every age and stage, and its blood rises there", () => {
    for (const stage of ["extracardiac", "lateral-tunnel", "atriopulmonary"] as const)
      for (const { at, request } of pointsOf(stage)) {
        const frame = frameOf(request);
        const { line, widths } = trunkOf(frame);
        const { heart, lungs } = anatomyOf(frame);
        const within = shapeDistance({ polygon: { points: torsoOf(frame).outline } });
        const organs = [...lungs.map(({ outline }) => outline), heart.atrium, heart.ventricle].flat();
        for (const spot of organs) expect(within(...spot), `${stage} ${at}`).toBeLessThan(0);
        line.forEach(([x, y], i) => {
          expect(within(x, y), `${stage} ${at}`).toBeLessThan(-widths[i]! / 2);
        });
        const rising = risingIn(request, { x: 0, y: 0, perMillimetre: 1 });
        for (let k = 0; k < 8; k++) expect(rising((k + 1) / 8).y).toBeLessThan(rising(k / 8).y);
      }
  });

  test("lies in a chest that grows as the root of the body's surface, under shoulders that are as broad as measured", () => {
    const points = pointsOf("extracardiac");
    const [first, last] = [points[0]!, points.at(-1)!];
    const [young, grown] = [first, last].map(({ request }) => {
      const { room } = torsoOf(frameOf(request));
      const chest = torsoOf(frameOf(request)).outline.map(([x]) => x);
      expect(trunkSize(request)[0]).toBeCloseTo(room[2] - room[0], 9);
      return Math.max(...chest) - Math.min(...chest);
    }) as [number, number];
    expect(grown / young).toBeCloseTo(Math.sqrt(last.at / first.at), 2);
    // Over the muscle: 275 mm at five years (from memory), 430 grown (British men 465 and women 395).
    expect(trunkSize(first.request)[0]).toBeCloseTo(275, -1);
    expect(trunkSize(last.request)[0]).toBeCloseTo(430, -1);
    // Breadth without arms at 5 years: chests are some 185 mm broad then (handbooks of body measures, from memory).
    expect(young).toBeGreaterThan(175);
    expect(young).toBeLessThan(215);
    const [, bottom, , top] = torsoOf(frameOf(first.request)).room;
    expect(middleOf(frameOf(first.request))[1]).toBeCloseTo((bottom + top) / 2, 6);
  });

  test("is cloth around a conduit, half of it around a tunnel, and atrium around a chamber", () => {
    const [right, left] = wallsOf("lateral-tunnel", THEME);
    expect(wallsOf("extracardiac", THEME)).toEqual([left, left]);
    expect(wallsOf("atriopulmonary", THEME)).toEqual([right, right]);
    expect(right).not.toEqual(left);
  });

  test("is set beside the body's own vein in words, wider or narrower", () => {
    const say = (key: string, values = {}) => `${key} ${Object.values(values).join(" ")}`;
    const wordsOf = (conduitDiameter: number) =>
      widthWords({ at: 1, request: requestOf({ set: { conduitDiameter } }), circulation: null }, say).map(
        (each) => each.replace(/\s/g, " "),
      );
    expect(wordsOf(18)).toEqual([
      "further.growth.tube tube 18.0 mm",
      "further.growth.vein 13.5 mm",
      "further.growth.gap yes 4.5 mm",
    ]);
    expect(wordsOf(12)[2]).toBe("further.growth.gap no 1.5 mm");
  });

  test("is named as what it is, with its growth, in every language", async () => {
    for (const language of LANGUAGES) {
      await setLanguage(language);
      for (const words of [pointWords, ringWords]) {
        const chamber = words(pointsOf("atriopulmonary"), t);
        expect(chamber).toMatch(/chamber|Kammer|cámara|chambre/);
        expect(chamber).not.toMatch(/tub|Röhre/i);
        const tube = words(pointsOf("extracardiac"), t);
        expect(tube).toMatch(/tub|Röhre/);
        expect(tube).not.toMatch(/t[uú]n+el/i);
      }
      const points = (["extracardiac", "lateral-tunnel", "atriopulmonary"] as const).map((stage) =>
        pointWords(pointsOf(stage), t),
      );
      expect(points[0]).toMatch(/ not\b| nicht\b| no\b| non\b/);
      expect(points[1]).toMatch(/ less\b| weniger\b| menos\b| moins\b/);
      expect(points[2]).toMatch(/ with\b| mit\b| con\b| avec\b/);
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
    const inOf = (circulation: SweepPoint["circulation"]) =>
      coloursOf((ink) => paintSection(ink, { at: 1, request, circulation }, SECTION, THEME));
    expect(inOf(null)).toContain(THEME.colour.lumen);
    const solved = { saturations: { ivc: 68 } } as Circulation;
    expect(inOf(solved)).not.toContain(THEME.colour.lumen);
    const before = inOf(null);
    expect([...inOf(solved)].filter((colour) => !before.has(colour))).not.toEqual([]);
  });

  test("stands to scale: lumen, and the body's own vein within it", () => {
    const { request } = START;
    const layoutOf = (set: CirculationRequest["set"]) =>
      sectionLayout({ at: 1, request: requestOf({ ...request, set }), circulation: null }, SECTION);
    expect(layoutOf({ conduitDiameter: 24 }).half / layoutOf({ conduitDiameter: 16 }).half).toBeCloseTo(
      1.5,
      6,
    );
    expect(layoutOf({ conduitDiameter: 24 }).vein).toBeCloseTo(layoutOf({ conduitDiameter: 16 }).vein, 6);
  });

  test("keeps to its box: trunks above, bodies and cut tubes below, none in the next column", () => {
    for (const stage of ["extracardiac", "lateral-tunnel", "atriopulmonary"] as const)
      for (const [width, height] of [
        [380, 230],
        [1180, 520],
        [1040, 900],
      ] as const) {
        const points = pointsOf(stage);
        const shown = shownOf(points, width, 190);
        const columns = columnsOf(shown, { x: 0, y: 0, width, height }, 13);
        let beside = 0;
        columns.forEach(({ point, chest, figure, section, left, wide: column }) => {
          const [wide, tall] = trunkSize(point.request).map((each) => each * chest.perMillimetre) as [
            number,
            number,
          ];
          expect(chest.x - wide / 2).toBeGreaterThanOrEqual(beside);
          beside = chest.x + wide / 2;
          expect(beside).toBeLessThanOrEqual(width);
          expect(chest.y - tall / 2).toBeGreaterThan(-0.5);
          expect(figure.ground).toBeLessThan(height);
          const { half, wall } = sectionLayout(point, section);
          expect(section.y - half - wall).toBeGreaterThan(chest.y + tall / 2);
          expect(section.y + half + wall).toBeLessThan(figure.ground + 0.5);
          expect(figure.x + 0.19 * figure.height).toBeLessThan(section.x - half - wall);
          expect(figure.x - 0.19 * figure.height).toBeGreaterThan(left - 0.5);
          expect(section.x + (half + wall) * (1 + 2 * PIECE[0])).toBeLessThanOrEqual(left + column);
        });
        expect(new Set(columns.map(({ chest }) => chest.perMillimetre)).size).toBe(1);
        expect(new Set(columns.map(({ section }) => section.perMillimetre)).size).toBe(1);
      }
  });

  test("is shown at the first age and the last, however narrow the room", () => {
    const points = pointsOf("extracardiac");
    for (const width of [200, 390, 800, 1200, 3000]) {
      const shown = shownOf(points, width, 130);
      expect([shown[0], shown.at(-1)]).toEqual([points[0], points.at(-1)]);
      expect(new Set(shown).size).toBe(shown.length);
      const box = { x: 0, y: 0, width, height: 700 };
      expect(rowHeight(box, points, 12, 130)).toBeLessThanOrEqual(0.7 * 700);
    }
    expect(shownOf(pointsOf("glenn"), 1200, 60)).toHaveLength(points.length);
  });

  test("moves its blood as fast as the flow through its section, faster where the body needs more", () => {
    expect(speedIn(2.4, 18)).toBeCloseTo(2 * speedIn(1.2, 18), 9);
    expect(speedIn(1.2, 20)).toBeCloseTo(speedIn(1.2, 10) / 4, 9);
    // 1.2 L/min through a circle of 18 mm
    expect(speedIn(1.2, 18)).toBeCloseTo(78.6, 1);
  });

  test("moves blood the way it goes: up the lower vein, down the upper one, out to both lungs, into the aorta", () => {
    for (const stage of ["extracardiac", "lateral-tunnel", "atriopulmonary"] as const) {
      const ways = waysIn(requestOf({ stage }));
      expect(new Set(ways.map(({ vessel }) => vessel)).size).toBe(5);
      for (const { vessel, line } of ways) {
        const [[x, y], [toX, toY]] = [line.points[0]!, line.points.at(-1)!];
        if (vessel === "ivc" || vessel === "aorta") expect(toY).toBeGreaterThan(y);
        if (vessel === "svc") expect(toY).toBeLessThan(y);
        if (vessel === "left") expect(toX).toBeGreaterThan(x);
        if (vessel === "right") expect(toX).toBeLessThan(x);
      }
    }
  });
});

describe("a conduit of fabric in a body that grows", () => {
  const points = pointsOf("extracardiac");
  const graftOf = (request: CirculationRequest) => {
    const { graft, ivc } = pathwayGeometry(request)!.chest;
    return {
      begin: graft!.line[0]![1],
      long: graft!.line.at(-1)![1] - graft!.line[0]![1],
      opening: ivc.centre[1],
    };
  };

  test("keeps the length with which it was sewn in, and the own vein beneath it grows", () => {
    const [young, grown] = [points[0]!, points.at(-1)!].map(({ request }) => graftOf(request));
    expect(grown!.long).toBeCloseTo(young!.long, 0);
    expect(grown!.begin - grown!.opening).toBeGreaterThan(1.8 * (young!.begin - young!.opening));
  });

  test("is as long as any new one at the first age, and the chest is that of its age", () => {
    for (const [i, { request }] of points.entries()) {
      const { conduitLength: _, ...set } = request.set;
      const fresh = pathwayGeometry({ ...request, set })!.chest;
      const { chest } = pathwayGeometry(request)!;
      expect(chest.level).toBeCloseTo(fresh.level, 9);
      expect(chest.heartScale).toBeCloseTo(fresh.heartScale, 9);
      if (i === 0) expect(graftOf(request)).toEqual(graftOf({ ...request, set }));
    }
  });
});
