// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { planSweep } from "../../src/chain/running-sweep.ts";
import { LANGUAGES, setLanguage, t } from "../../src/i18n/index.ts";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import type { Spot } from "../../src/scenes/drawing/curve-drawing.ts";
import { carry } from "../../src/scenes/growth/grown-figure.ts";
import { readGrowth } from "../../src/scenes/growth/growth-reading.ts";
import { lensOf, risingIn, trunkOf } from "../../src/scenes/growth/lens-place.ts";
import { windowOf } from "../../src/scenes/growth/paint-person.ts";
import { pointWords, ringWords, widthWords } from "../../src/scenes/growth/rings.ts";
import { columnsOf, rowHeight, shownOf, WIDE } from "../../src/scenes/growth/row.ts";
import { speedIn, waysIn } from "../../src/scenes/growth/vessel-blood.ts";
import { wedgeOf } from "../../src/scenes/growth/zoom.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import type { CirculationRequest, Stage } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const requestOf = (change: Partial<CirculationRequest>): CirculationRequest => ({
  ...START.request,
  ...change,
});
const pointsOf = (stage: Stage) =>
  planSweep({ ...START, scene: "growth", request: requestOf({ stage }) })!.curves[0]!.points;

describe("what leads the blood in the growing bodies", () => {
  const frameOf = (request: CirculationRequest) => pathwayGeometry(request)!.chest;

  test("is as wide and as long as it is set, in the chest", () => {
    const trunkIn = (set: CirculationRequest["set"]) => {
      const { line, widths } = trunkOf(frameOf(requestOf({ set })));
      return { long: line.at(-1)![1] - line[0]![1], wide: Math.max(...widths) };
    };
    expect(trunkIn({ conduitLength: 80 }).long - trunkIn({ conduitLength: 40 }).long).toBeCloseTo(40, 0);
    expect(trunkIn({ conduitDiameter: 24 }).wide).toBeCloseTo(24, 6);
    const chamber = trunkOf(frameOf(requestOf({ stage: "atriopulmonary" })));
    expect(Math.max(...chamber.widths)).toBeCloseTo(45, 6);
  });

  test("is seen whole in its lens, with the heart around its middle, at every age and stage, and its blood rises there", () => {
    for (const stage of ["extracardiac", "lateral-tunnel", "atriopulmonary"] as const)
      for (const { at, request } of pointsOf(stage)) {
        const frame = frameOf(request);
        const { line, widths } = trunkOf(frame);
        const { middle, reach } = lensOf(frame);
        const off = ([x, y]: readonly [number, number]) => Math.hypot(x - middle[0], y - middle[1]) / reach;
        const { heart } = anatomyOf(frame);
        const spots = [heart.atrium, heart.ventricle].flat();
        expect(spots.filter((spot) => off(spot) < 1).length, `${stage} ${at}`).toBeGreaterThan(
          0.9 * spots.length,
        );
        line.forEach((spot, i) => {
          expect(off(spot), `${stage} ${at}`).toBeLessThan(1 - widths[i]! / 2 / reach);
        });
        const rising = risingIn(request, { x: 0, y: 0, perMillimetre: 1 });
        for (let k = 0; k < 8; k++) expect(rising((k + 1) / 8).y).toBeLessThan(rising(k / 8).y);
      }
  });

  test("lies in a lens that shows more of a larger chest, as the root of the body's surface", () => {
    const [first, last] = [pointsOf("extracardiac")[0]!, pointsOf("extracardiac").at(-1)!];
    const [young, grown] = [first, last].map(({ request }) => lensOf(frameOf(request)).reach) as [
      number,
      number,
    ];
    expect(grown / young).toBeCloseTo(Math.sqrt(last.at / first.at), 2);
  });

  test("is shown from a window that lies in the chest, at the size that it has there", () => {
    for (const { request } of pointsOf("extracardiac")) {
      const { at, radius } = windowOf(request.body.ageYears);
      const carried = carry(request.body.ageYears);
      const [armpit] = carried([788, 340]);
      expect(at[0] + radius).toBeLessThan(1000 * armpit);
      expect(at[0] - radius).toBeGreaterThan(-1000 * armpit);
      expect(at[1] + radius).toBeLessThan(1000 * carried([500, 120])[1]);
      // A chest of a fifth to a quarter of the height's breadth, lungs about twice the heart's: no more than a sixth of the height.
      expect(2 * radius).toBeLessThan(170);
      expect(2 * radius).toBeGreaterThan(120);
    }
  });

  test("is led to by a wedge that touches window and lens", () => {
    const [from, to] = [
      { at: [10, 20], radius: 12 },
      { at: [180, 90], radius: 70 },
    ] as const;
    const [a, b, c, d] = wedgeOf(from, to) as [Spot, Spot, Spot, Spot];
    for (const [begin, end] of [
      [a, b],
      [d, c],
    ] as const) {
      const long = Math.hypot(end[0] - begin[0], end[1] - begin[1]);
      const [ux, uy] = [(end[0] - begin[0]) / long, (end[1] - begin[1]) / long];
      for (const { at, radius } of [from, to])
        expect(Math.abs(ux * (at[1] - begin[1]) - uy * (at[0] - begin[0]))).toBeCloseTo(radius, 6);
    }
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

  test("keeps to its box: person, lens and words side by side or under one another, none in the next column", () => {
    for (const stage of ["extracardiac", "lateral-tunnel", "atriopulmonary"] as const)
      for (const [width, height] of [
        [360, 230],
        [1180, 520],
        [700, 260],
        [610, 1100],
        [1040, 900],
      ] as const) {
        const points = pointsOf(stage);
        const shown = shownOf(points, width, 150);
        const columns = columnsOf(shown, { x: 0, y: 0, width, height }, 13, 150);
        let beside = 0;
        const scales = columns.map(({ point, person, lens, radius, left, wide, words }) => {
          const half = (WIDE * person.height) / 2;
          const edges = [person.x - half, person.x + half, lens.x - radius, lens.x + radius] as const;
          expect(Math.min(...edges)).toBeGreaterThan(beside - 0.5);
          beside = left + wide;
          expect(Math.max(...edges)).toBeLessThan(beside + 0.5);
          // Beside the person, or wholly under its feet.
          if (lens.x > person.x) expect(lens.x - radius).toBeGreaterThan(person.x + half - 0.5);
          else expect(lens.y - radius).toBeGreaterThan(person.ground - 0.5);
          expect(person.ground - person.height).toBeGreaterThan(-0.5);
          expect(words).toBeGreaterThan(lens.y + radius);
          expect(words + 3.8 * 13).toBeLessThan(height + 0.5);
          const scale = person.height / Math.sqrt(point.at);
          return { scale, tube: risingIn(point.request, lens)(1).y, lens: lens.perMillimetre };
        });
        expect(beside).toBeLessThan(width + 0.5);
        for (const key of ["scale", "tube", "lens"] as const)
          for (const each of scales) expect(each[key]).toBeCloseTo(scales[0]![key], 6);
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
