import { describe, expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { coursesOf } from "../../src/scenes/anatomy/courses.ts";
import type { Course } from "../../src/scenes/anatomy/side-course.ts";
import { sideFlow } from "../../src/scenes/anatomy/side-streams.ts";
import { DESCENT } from "../../src/scenes/anatomy/standing.ts";
import { flowTrace } from "../../src/scenes/drawing/trace-clock.ts";
import { fadeAtOpenings } from "../../src/scenes/layers/fade-tracers.ts";
import { tracerJoiner } from "../../src/scenes/layers/joined-tracers.ts";
import { tintRich } from "../../src/scenes/layers/tint.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { band } from "../../src/sim/geometry/centreline.ts";
import { outlineDistance } from "../../src/sim/geometry/distance.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { START } from "../../src/state/scene-state.ts";

const circulation = solve(START.request);
const geometry = pathwayGeometry(START.request)!;

/** Which marks are those of some courses, in turn. */
function marksOf(wanted: (course: Course) => boolean) {
  let from = 0;
  return coursesOf(geometry.chest).flatMap((course) => {
    const flow = flowTrace(circulation.traces.flows, course.flow);
    if (!flow) return [];
    const to = from + Math.max(2, Math.round((0.4 * course.area) / geometry.chest.scale ** 2));
    const own = { from, to, carries: course.carries };
    from = to;
    return wanted(course) ? [own] : [];
  });
}

describe("blood beyond the openings", () => {
  test("its marks are those of the lung's mixture and move with the computed flow", () => {
    const flow = sideFlow();
    const before = flow.at(geometry.chest, circulation, 0, 1)!;
    const start = before.marks.position.slice();
    const { position, origin, count } = flow.at(
      geometry.chest,
      circulation,
      circulation.traces.period / 40,
      1,
    )!.marks;
    expect(count).toBeGreaterThan(300);
    const moved = Array.from({ length: count }, (_, i) =>
      Math.hypot(position[2 * i]! - start[2 * i]!, position[2 * i + 1]! - start[2 * i + 1]!),
    );
    expect(moved.filter((way) => way > 0.2).length / count).toBeGreaterThan(0.5);
    // The right lung has most of the upper vein's blood, the left most of the lower one's.
    const [right] = anatomyOf(geometry.chest).lungs;
    const inRight = outlineDistance(right.outline);
    const shareOfUpper = (wanted: boolean) => {
      const own = Array.from({ length: count }, (_, i) => i).filter(
        (i) =>
          !before.rich[i] &&
          inRight(position[2 * i]!, position[2 * i + 1]!) < 0 === wanted &&
          Math.abs(position[2 * i]!) > 45,
      );
      return own.filter((i) => origin[i] === 0).length / own.length;
    };
    expect(shareOfUpper(true)).toBeGreaterThan(shareOfUpper(false) + 0.2);
  });

  test("a lung's marks are of what leaves the computed plane for it, each as it comes in", () => {
    const flow = sideFlow();
    const [upper, legs] = [
      [1, 0, 0],
      [0, 0, 1],
    ];
    const at = (time: number, departing: Record<string, readonly number[]>) => {
      const { marks } = flow.at(geometry.chest, circulation, time, 1, { departing })!;
      return arterial.map(({ from, to }) => Array.from(marks.origin.subarray(from, to)));
    };
    const arterial = marksOf(({ carries }) => carries === "left" || carries === "right");
    const first = at(0, { left: upper, right: legs });
    const sides = arterial.map(({ carries }) => carries);
    first.forEach((origins, i) => {
      expect(new Set(origins)).toEqual(new Set([sides[i] === "left" ? 0 : 2]));
    });
    // Blood that is under way keeps its origin; in ten seconds all of it has gone.
    const changed = (time: number) =>
      at(time, { left: legs, right: upper })
        .flatMap((origins, i) => origins.map((origin) => origin === (sides[i] === "left" ? 2 : 0)))
        .reduce((sum, is, i) => (sum * i + Number(is)) / (i + 1), 0);
    const soon = changed(0.1);
    expect(soon).toBeGreaterThan(0);
    expect(soon).toBeLessThan(0.4);
    expect(changed(10)).toBeCloseTo(1, 6);
  });

  test("where blood stands still the marks follow what is known of its mixture", () => {
    const flow = sideFlow();
    const origins = (departing: Record<string, readonly number[]>) => {
      const { marks } = flow.at(geometry.chest, circulation, 0, 1, { departing })!;
      return marksOf(({ carries }) => carries === "right").flatMap(({ from, to }) =>
        Array.from(marks.origin.subarray(from, to)),
      );
    };
    expect(new Set(origins({ right: [0, 1, 0] }))).toEqual(new Set([1]));
    expect(new Set(origins({ right: [0, 0.5, 0.5] }))).toEqual(new Set([1, 2]));
  });

  test("in the aorta trails lie along the vessel, at every moment of a beat", () => {
    const { line } = anatomyOf(geometry.chest).before.at(-1)!;
    let [seen, beyond] = [0, 0];
    for (let k = 0; k < 10; k++) {
      const time = (k / 10) * circulation.traces.heartPeriod;
      const { marks, shown } = sideFlow().at(geometry.chest, circulation, time, 1)!;
      for (let i = 0; i < marks.count; i++) {
        const [x, y] = [marks.position[2 * i]!, marks.position[2 * i + 1]!];
        const away = line.map(([px, py]) => Math.hypot(px - x, py - y));
        const nearest = away.indexOf(Math.min(...away));
        if (shown[i]! < 0.5 || away[nearest]! > 2.5 || nearest < 14 || nearest > line.length - 8) continue;
        const [dx, dy] = [x - marks.trail[4 * i]!, y - marks.trail[4 * i + 1]!];
        const [[ax, ay], [bx, by]] = [line[nearest - 2]!, line[nearest + 2]!];
        const turned =
          Math.abs(dx * (by - ay) - dy * (bx - ax)) / (Math.hypot(dx, dy) * Math.hypot(bx - ax, by - ay));
        if (!(Math.hypot(dx, dy) > 0.5)) continue;
        seen++;
        if (turned > Math.sin(Math.PI / 9)) beyond++;
      }
    }
    expect(seen).toBeGreaterThan(40);
    // Marks of other vessels cross behind it.
    expect(beyond / seen).toBeLessThan(0.2);
  });

  test("marks in the lungs and in the liver move with the breath that swells and lowers these", () => {
    const at = (lungs: number) =>
      sideFlow().at(geometry.chest, circulation, 0, lungs)!.marks.position.slice();
    const [rest, full] = [at(1), at(1.1)];
    const [right] = anatomyOf(geometry.chest).lungs;
    const { liver } = anatomyOf(geometry.chest).abdomen;
    const [inLung, inLiver] = [outlineDistance(right.outline), outlineDistance(liver)];
    let [lung, low] = [0, 0];
    for (let i = 0; i < rest.length; i += 2) {
      const [x, y] = [rest[i]!, rest[i + 1]!];
      if (inLung(x, y) < -4 && x < right.hilum[0] - 20) {
        lung++;
        expect(full[i]! - right.hilum[0]).toBeCloseTo(1.1 * (x - right.hilum[0]), 2);
      }
      if (
        inLiver(x, y) < -4 &&
        y < geometry.chest.ivc.centre[1] - 12 &&
        Math.abs(x - geometry.chest.ivc.centre[0]) > 12
      ) {
        low++;
        expect(y - full[i + 1]!).toBeCloseTo(0.1 * DESCENT * geometry.chest.scale, 2);
      }
    }
    expect(Math.min(lung, low)).toBeGreaterThan(20);
  });

  test("nothing moves before a circulation is solved", () => {
    expect(sideFlow().at(geometry.chest, null, 1, 1)).toBeNull();
  });

  test("tracers have no size at an opening and all of it deep inside", () => {
    const [opening] = geometry.openings;
    const { centre, normal } = opening!;
    const deep = [centre[0] - 6 * normal[0], centre[1] - 6 * normal[1]];
    const half = [centre[0] - 1.5 * normal[0], centre[1] - 1.5 * normal[1]];
    const set = {
      count: 3,
      position: Float32Array.from([...centre, ...half, ...deep]),
      trail: Float32Array.from({ length: 24 }, (_, i) => i),
      trailLength: 4,
      origin: new Uint8Array(3),
      age: new Float32Array(3),
      speed: new Float32Array(3),
      dyed: new Uint8Array(3),
    };
    const colours = new Uint32Array(3).fill(0xff123456);
    fadeAtOpenings(set, { taken: 3, shown: null, openings: geometry.openings }, colours);
    const sizes = Array.from(colours, (colour) => colour >>> 24);
    expect(sizes[0]).toBeLessThan(3);
    expect(sizes[1]).toBeCloseTo(128, -1);
    expect(sizes[2]).toBe(255);
    expect(Array.from(colours, (colour) => colour & 0xffffff)).toEqual([0x123456, 0x123456, 0x123456]);

    const joined = tracerJoiner().join(set, 2, set);
    expect(joined.count).toBe(5);
    expect([...joined.position.subarray(4, 10)]).toEqual([...set.position]);
    // Of a trail of four points the second and the last are drawn.
    expect([...joined.trail.subarray(0, 4)]).toEqual([2, 3, 6, 7]);
  });
});

test("blood of the heart moves on into the aorta and its branches, and carries the heart's own oxygen", () => {
  const { chest } = geometry;
  const streams = sideFlow().at(chest, circulation, 0, 1)!;
  const own = Array.from(streams.rich, (kind, i) => (kind === 2 ? i : -1)).filter((i) => i >= 0);
  expect(own.length).toBeGreaterThan(40);
  const { heart, before, behind } = anatomyOf(chest);
  const tubes = [...before, ...behind].filter(({ holds }) => holds === "arterial");
  const heartAndVessels = [
    outlineDistance(chest.atrium),
    outlineDistance(heart.ventricle),
    ...tubes.map(({ line, from, to }) => outlineDistance(band(line, from, to))),
  ];
  const places = own.map(
    (i) => [streams.marks.position[2 * i]!, streams.marks.position[2 * i + 1]!] as const,
  );
  for (const place of places)
    expect(Math.min(...heartAndVessels.map((distance) => distance(...place)))).toBeLessThan(1);
  // Flow does not stop at the valve: the arch has its marks too.
  const arch = places.filter(([, y]) => y > chest.level + 40 * chest.scale);
  expect(arch.length).toBeGreaterThan(15);

  const colours = new Uint32Array(5);
  const mixed = { ...circulation, saturations: { ...circulation.saturations, arterial: 60 } };
  tintRich(
    { rich: Uint8Array.from([1, 2, 0, 1, 1]), unmixed: Float32Array.from([1, 1, 1, 0, 0.5]) },
    0,
    { colouring: "oxygen", circulation: mixed, dyeing: false },
    darkTheme(String),
    colours,
  );
  expect(colours[0]).not.toBe(colours[1]);
  expect(colours[2]).toBe(0);
  // What mixes goes over from its own colour into the heart's.
  expect(colours[3]).toBe(colours[1]);
  for (const shift of [0, 8, 16]) {
    const part = (i: number) => (colours[i]! >>> shift) & 255;
    expect(Math.abs(part(4) - (part(0) + part(1)) / 2)).toBeLessThan(1);
  }
});

test("at the Glenn stage the lungs have blood of the upper vein alone, even before the plane's is known", () => {
  const request = { ...START.request, stage: "glenn" } as const;
  const { chest } = pathwayGeometry(request)!;
  const solved = solve(request);
  const { marks, rich } = sideFlow().at(chest, solved, 0, 1)!;
  const lungs = anatomyOf(chest).lungs.map(({ outline }) => outlineDistance(outline));
  const inLungs = Array.from(marks.origin).filter((_, i) => {
    const [x, y] = [marks.position[2 * i]!, marks.position[2 * i + 1]!];
    return !rich[i] && Math.abs(x) > 45 && lungs.some((lung) => lung(x, y) < 0);
  });
  expect(inLungs.length).toBeGreaterThan(100);
  expect(new Set(inLungs)).toEqual(new Set([0]));
  // That of the lower one goes to the heart.
  expect(new Set(marks.origin)).toEqual(new Set([0, 1, 2]));
  const inAtrium = Array.from(marks.origin).filter((_, i) => {
    const [x, y] = [marks.position[2 * i]!, marks.position[2 * i + 1]!];
    return !rich[i] && x < 8 && outlineDistance(chest.atrium)(x, y) < 0;
  });
  expect(inAtrium.length).toBeGreaterThan(5);
  expect(inAtrium).not.toContain(0);
});

test("each vein from head and arms goes on without a step as its side of the superior vena cava", () => {
  const { svc } = geometry.chest;
  const [nx, ny] = svc.normal;
  for (const [name, side] of [
    ["rightBrachiocephalicVein", -1],
    ["leftBrachiocephalicVein", 1],
  ] as const) {
    const vein = anatomyOf(geometry.chest).veins.find((each) => each.name === name)!;
    const [x, y] = vein.line.at(-1)!;
    const across = (x - svc.centre[0]) * ny - (y - svc.centre[1]) * nx;
    expect(side * across + vein.to / 2).toBeCloseTo(svc.width / 2, 6);
  }
});

test("a lung's artery goes on as its window in the pathway ends: in its direction, as wide as it", () => {
  for (const { arteries, side } of anatomyOf(geometry.chest).lungs) {
    const { centre, normal, width } = geometry.chest[side];
    const from = arteries.nodes.findIndex(({ at: [x, y] }) => Math.hypot(x - centre[0], y - centre[1]) < 0.1);
    const [first, next] = [arteries.nodes[from]!, arteries.nodes[from + 2]!];
    const [dx, dy] = [next.at[0] - first.at[0], next.at[1] - first.at[1]];
    expect((dx * normal[0] + dy * normal[1]) / Math.hypot(dx, dy)).toBeGreaterThan(0.95);
    expect(first.width).toBeCloseTo(width, 6);
  }
});
