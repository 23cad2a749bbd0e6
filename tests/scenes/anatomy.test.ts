// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { coursesOf } from "../../src/scenes/anatomy/courses.ts";
import { returning } from "../../src/scenes/anatomy/great-vessels.ts";
import { sheetsOf } from "../../src/scenes/anatomy/hanging-valve.ts";
import { ATRIOVENTRICULAR, SEMILUNAR } from "../../src/scenes/anatomy/heart-shape.ts";
import { CUSPS, cuspLine, INLET } from "../../src/scenes/anatomy/leaflets.ts";
import "../../src/scenes/anatomy/stages/index.ts";
import { STILL, standingAt } from "../../src/scenes/anatomy/standing.ts";
import { drawnPlane } from "../../src/scenes/layers/drawn-plane.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { outlineDistance } from "../../src/sim/geometry/distance.ts";
import type { Point } from "../../src/sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { hasPlane, STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";
import { bodies, geometryOf } from "./chests.ts";

const circulation = solve(START.request);
const highest = (values: Float64Array) => values.indexOf(Math.max(...values));

describe.each(STAGES.filter(hasPlane))("the chest around %s", (stage) => {
  const chests = bodies.map((body) => anatomyOf(geometryOf(stage, body).chest));

  test("the aorta leaves the ventricle's base, passes beside the superior vena cava and goes on behind", () => {
    for (const { before, behind, heart, frame } of chests) {
      const course = before.find(({ name }) => name === "aorta")!.line;
      expect(Math.hypot(course[0]![0] - heart.base[0], course[0]![1] - heart.base[1])).toBeLessThan(
        14 * heart.size,
      );
      const beside = course.find(([, y]) => y > frame.level + 40 * frame.scale)!;
      const wall = frame.svc.centre[0] + frame.svc.width / 2;
      expect(beside[0] - wall).toBeGreaterThan(0);
      expect(beside[0] - wall).toBeLessThan(16 * frame.scale);
      const down = behind.find(({ name }) => name === "descendingAorta")!.line;
      const [end] = course.slice(-1) as [Point];
      expect(Math.min(...down.map(([x, y]) => Math.hypot(x - end[0], y - end[1])))).toBeLessThan(
        4 * frame.scale,
      );
    }
  });

  test("four pulmonary veins end in the atrium, and three branches leave the arch", () => {
    for (const { behind, before, frame } of chests) {
      const inAtrium = outlineDistance(frame.atrium);
      const veins = behind.filter(({ name }) => name.endsWith("PulmonaryVein"));
      expect(veins).toHaveLength(4);
      for (const { line } of veins) expect(inAtrium(...line.at(-1)!)).toBeLessThan(0);
      const arch = before.find(({ name }) => name === "aorta")!;
      const branches = before.filter((each) => each !== arch);
      expect(branches).toHaveLength(3);
      for (const { line } of branches) {
        const [x, y] = line[0]!;
        expect(Math.min(...arch.line.map(([ax, ay]) => Math.hypot(ax - x, ay - y)))).toBeLessThan(
          arch.from / 2,
        );
      }
    }
  });

  test("the lungs' stems reach back under the pulmonary arteries, so that no vessel ends at its lung", () => {
    for (const { lungs, frame } of chests)
      for (const { side, arteries } of lungs) {
        const { centre, normal } = frame[side];
        const [first] = arteries.nodes.filter(({ parent }) => parent < 0);
        const inwards = (centre[0] - first!.at[0]) * normal[0] + (centre[1] - first!.at[1]) * normal[1];
        expect(inwards).toBeGreaterThan(8 * frame.scale);
      }
  });

  test("each vein that feeds the pathway is painted with one group: vena cava, hepatic or brachiocephalic veins", () => {
    for (const { veins, frame } of chests) {
      const named = (wanted: string) => veins.filter(({ group }) => group === wanted).map(({ name }) => name);
      const groups = [named("cava"), named("hepatic"), named("brachiocephalic")];
      expect(groups[0]).toEqual(["lowerInferiorVenaCava"]);
      expect(named("atrium")).toEqual(frame.lowerVein ? ["lowerVein"] : []);
      expect(groups[1]).toHaveLength(6);
      for (const name of groups[1]!) expect(name).toMatch(/Hepatic(Vein|Twig)$/);
      expect(groups[2]).toEqual(["superiorVenaCava", "rightBrachiocephalicVein", "leftBrachiocephalicVein"]);
      expect([...groups.flat(), ...named("atrium")].sort()).toEqual(veins.map(({ name }) => name).sort());
    }
  });

  test("right pulmonary veins that pass behind the pathway are drawn through its blood", () => {
    for (const body of bodies) {
      const shape = pathwayGeometry({ ...START.request, stage, body })!;
      const drawn = returning(anatomyOf(shape.chest));
      expect(drawn).toHaveLength(2);
      if (stage === "glenn") continue;
      const plane = drawnPlane(shape);
      const hidden = (line: readonly Point[]) =>
        line.some(([x, y]) => {
          const [i, j] = [
            Math.round((x - plane.originX) / plane.dx),
            Math.round((y - plane.originY) / plane.dx),
          ];
          return (plane.distance[j * plane.nx + i] ?? 1) < 0;
        });
      for (const { line } of drawn) expect(hidden(line)).toBe(true);
    }
  });

  test("the lungs' trees stay in their lungs, begin at the pulmonary arteries and grow no wider outwards", () => {
    for (const { lungs, frame } of chests)
      for (const { side, outline, arteries } of lungs) {
        const inLung = outlineDistance(outline);
        const [root] = arteries.nodes;
        expect(
          Math.hypot(root!.at[0] - frame[side].centre[0], root!.at[1] - frame[side].centre[1]),
        ).toBeLessThan(0.01);
        expect(root!.width).toBeCloseTo(frame[side].width, 6);
        for (const end of arteries.ends) expect(inLung(...arteries.nodes[end]!.at)).toBeLessThan(1);
        for (const { parent, width } of arteries.nodes)
          if (parent >= 0) expect(width).toBeLessThanOrEqual(arteries.nodes[parent]!.width + 1e-9);
        expect(arteries.ends.length).toBeGreaterThan(15);
      }
  });
});

describe("what surgery has joined", () => {
  const chestOf = (stage: (typeof STAGES)[number]) =>
    anatomyOf(pathwayGeometry({ ...START.request, stage })!.chest);

  test("outside a lateral tunnel lies nothing of the atrium: its outer wall is the atrium's own", () => {
    const { frame } = chestOf("lateral-tunnel");
    const { line, widths } = frame.graft!;
    const right = Math.min(...line.map(([x], i) => x - widths[i]! / 2));
    expect(Math.min(...frame.atrium.map(([x]) => x))).toBeGreaterThan(right + 2);
  });

  test("at the Glenn stage the lower vein ends at the atrium's floor, and its blood goes on through the inlet's valve", () => {
    const { frame, heart } = chestOf("glenn");
    const [x, y] = frame.lowerVein!.at(-1)!;
    const floor = Math.min(...frame.atrium.filter(([ax]) => Math.abs(ax - x) < 5).map(([, ay]) => ay));
    expect(Math.abs(y - floor)).toBeLessThan(4 * frame.scale);
    const own = coursesOf(frame).filter(({ carries }) => carries === "lower");
    expect(own.length).toBeGreaterThan(2);
    const { from, to } = ATRIOVENTRICULAR;
    const valve = heart.at(0, (from + to) / 2);
    const wide = ((to - from) / 2) * frame.scale;
    const last = own.filter(({ x: xs, y: ys }) =>
      xs.some((at, i) => Math.hypot(at - valve[0], ys[i]! - valve[1]) < wide),
    );
    expect(last.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  });
});

describe("what moves", () => {
  const { traces } = circulation;

  test("a valve stands open while blood passes it and is shut while none does", () => {
    const filling = standingAt(
      circulation,
      traces.time[highest(traces.flows.atrioventricularValve!)]!,
      false,
    );
    expect(filling).toMatchObject({ atrioventricular: 1, semilunar: 0 });
    const ejecting = standingAt(circulation, traces.time[highest(traces.flows.aorta!)]!, false);
    expect(ejecting).toMatchObject({ atrioventricular: 0, semilunar: 1 });
  });

  test("the ventricle is widest and the lungs are largest when their traces are", () => {
    const sizes = Array.from(traces.time, (time) => standingAt(circulation, time, false));
    const widest = sizes.reduce(
      (best, { ventricle }, i) => (ventricle > sizes[best]!.ventricle ? i : best),
      0,
    );
    expect(traces.volumes.ventricle![widest]).toBeCloseTo(Math.max(...traces.volumes.ventricle!), 6);
    const swings = sizes.map(({ lungs }) => lungs);
    expect(Math.max(...swings) - Math.min(...swings)).toBeGreaterThan(0.05);
  });

  test("with reduced motion all of it stands still", () => {
    for (const time of [0, 0.2, 0.4]) expect(standingAt(circulation, time, true)).toBe(STILL);
  });

  test("the inlet's leaflets meet along their free edges where it is shut, and part where it stands open", () => {
    const middle = (open: number) => sheetsOf(INLET, open).map(({ edge }) => edge[edge.length >> 1]!);
    const gap = ([a, b]: readonly Point[]) => Math.hypot(a![0] - b![0], a![1] - b![1]);
    expect(gap(middle(0))).toBeLessThan(0.2);
    expect(gap(middle(1))).toBeGreaterThan(1);
    for (const open of [0, 0.5, 1])
      for (const { joint, edge } of sheetsOf(INLET, open)) {
        const across = (way: readonly Point[]) => Math.abs(way[0]![1] - way.at(-1)![1]);
        // Held over all of its breadth, not in one point.
        expect(across(edge)).toBeGreaterThan(0.6 * across(joint));
      }
    // Shut it is no dome: no leaflet rises above its ring's near side.
    const [ring, shut] = [INLET.at(0, -INLET.aslant)[0], sheetsOf(INLET, 0)];
    for (const { edge } of shut) for (const [along] of edge) expect(along).toBeGreaterThan(ring);
  });

  test("the outflow's cusps meet in the middle of their ring where it is shut, and leave the way free open", () => {
    const cut = CUSPS.filter(({ whole }) => !whole);
    const gap = (open: number) => {
      const [low, high] = cut.map((cusp) => cuspLine(cusp, open).at(-1)![1]);
      return high! - low!;
    };
    const width = SEMILUNAR.to - SEMILUNAR.from;
    expect(Math.abs(gap(0))).toBeLessThan(0.1 * width);
    expect(gap(1)).toBeGreaterThan(0.6 * width);
  });

  test("each of the outflow's cusps hangs from the root's wall, and the one behind spans both", () => {
    const [behind, low, high] = CUSPS;
    expect(cuspLine(low!, 0)[0]![1]).toBeLessThanOrEqual(SEMILUNAR.from);
    expect(cuspLine(high!, 0)[0]![1]).toBeGreaterThanOrEqual(SEMILUNAR.to);
    const [first, last] = [behind!.hangs.at(-1)!, behind!.hangs[0]!];
    expect([first[1] < SEMILUNAR.from + 1, last[1] > SEMILUNAR.to - 1]).toEqual([true, true]);
  });
});
