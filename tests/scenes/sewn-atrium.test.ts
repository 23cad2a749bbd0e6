// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { among } from "../../src/scenes/anatomy/mark-density.ts";
import {
  arteriesOf,
  closedOf,
  connectionOf,
  mouthOf,
  onOval,
  SEPTUM,
  sleeveOf,
  windowOf,
} from "../../src/scenes/anatomy/stages/chamber-shape.ts";
import "../../src/scenes/anatomy/stages/index.ts";
import { contour } from "../../src/scenes/layers/contour.ts";
import { drawnPlane, inBlood } from "../../src/scenes/layers/drawn-plane.ts";
import { fadeAtOpenings } from "../../src/scenes/layers/fade-tracers.ts";
import { shortTrails } from "../../src/scenes/layers/joined-tracers.ts";
import { outlineDistance } from "../../src/sim/geometry/distance.ts";
import { type Body, CASES } from "../../src/sim/parameters/request.ts";
import { apart, bodies, geometryOf } from "./chests.ts";

/** An atriopulmonary connection in a body, with the edge of its blood. */
function chambered(body: Body) {
  const geometry = geometryOf("atriopulmonary", body);
  const plane = drawnPlane(geometry);
  const anatomy = anatomyOf(geometry.chest);
  const frame = { ...geometry.chest, chamber: geometry.chest.chamber! };
  return { anatomy, frame, plane, lumen: contour(plane, plane.distance, 0) };
}

test("each pulmonary artery leaves the atriopulmonary chamber at a shoulder of its roof, from edge to edge", () => {
  for (const body of bodies)
    for (const side of ["left", "right"] as const) {
      const { frame, lumen } = chambered(body);
      const { low, high } = mouthOf(frame, side, lumen);
      const width = frame[side].width;
      expect(apart(low, high)).toBeGreaterThan(0.85 * width);
      expect(apart(low, high)).toBeLessThan(1.5 * width);
      const [x, y] = frame.chamber;
      for (const [px, py] of [low, high]) {
        expect(py).toBeGreaterThan(0.3 * y);
        expect(Math.abs(Math.hypot(px / x, py / y) - 1)).toBeLessThan(0.05);
        expect(Math.sign(px)).toBe(side === "left" ? 1 : -1);
      }
    }
});

test("both arteries are one vessel that passes behind upper vein and roof, which is sewn to it by one opening", () => {
  for (const body of bodies) {
    const { frame, lumen, plane } = chambered(body);
    const { opening, over, under } = connectionOf(frame, lumen);
    const [right, left] = [mouthOf(frame, "right", lumen), mouthOf(frame, "left", lumen)];
    for (const [edge, part] of [
      [under, "low"],
      [over, "high"],
    ] as const) {
      expect(apart(edge[0]!, right[part])).toBeLessThan(0.01);
      expect(apart(edge.at(-1)!, left[part])).toBeLessThan(0.01);
      for (const [x, y] of edge.slice(4, -4)) expect(inBlood(plane, x, y)).toBe(true);
    }
    // The opening with its sewn rim lies before that vessel, in the atrium.
    const passes = outlineDistance([...over, ...[...under].reverse()]);
    for (const at of opening()) expect(passes(...at)).toBeLessThan(0);
    for (const at of opening(2.4 * frame.scale)) expect(passes(...at)).toBeLessThan(1.5 * frame.scale);
    // The upper vein ends above it, within the atrium's own roof.
    expect(Math.max(...opening(2.4 * frame.scale).map(([, y]) => y))).toBeLessThan(
      frame.chamber[1] - 3 * frame.scale,
    );
    // It is seen whole beside the aorta.
    const { line, from } = chambered(body).anatomy.before.at(-1)!;
    for (const [x, y] of opening())
      for (const at of line) expect(apart([x, y], at)).toBeGreaterThan(0.42 * from);
  }
});

test("the atrium's wall goes round before the arteries, which come out from behind it", () => {
  for (const body of bodies) {
    const { frame, lumen } = chambered(body);
    const [a, b] = frame.chamber;
    const [edge] = closedOf(frame, lumen);
    const inside = outlineDistance(edge!);
    for (const side of ["left", "right"] as const) {
      expect(inside(...frame[side].centre)).toBeGreaterThan(0);
      const { low, high } = mouthOf(frame, side, lumen);
      const sign = Math.sign(low[0]);
      const before = edge!.filter(([x, y]) => sign * x > 0 && y > low[1] && y < high[1]);
      expect(before.length).toBeGreaterThan(8);
      for (const [x, y] of before) expect(Math.abs(Math.hypot(x / a, y / b) - 1)).toBeLessThan(0.05);
    }
    edge!.forEach((place, i) => {
      expect(apart(place, edge!.at(i - 1)!)).toBeLessThan(3.5 * frame.scale);
    });
    // What of them lies behind it is in one stretch on each side.
    expect(arteriesOf(frame, lumen).filter((line) => line.length > 4).length).toBeGreaterThanOrEqual(2);
    // The window is cut within the wall, and not into septum or veins.
    const cut = windowOf(frame, edge!);
    cut.forEach((place, i) => {
      expect(inside(...place)).toBeLessThan(0.05);
      expect(apart(place, edge![i]!)).toBeLessThan(4 * frame.scale);
      if (place[0] > 0 || Math.abs(place[1]) > b) expect(apart(place, edge![i]!)).toBe(0);
    });
  }
});

test("an atriopulmonary chamber's septum is cut open to the left atrium, and its muscle thins out on both veins", () => {
  for (const body of bodies) {
    const { frame, anatomy } = chambered(body);
    const [a, b] = frame.chamber;
    const on = onOval(frame.chamber);
    const inAtrium = outlineDistance(frame.atrium);
    for (const part of [-1, 0, 1])
      expect(inAtrium(...on(SEPTUM.at + part * SEPTUM.half, 3 * frame.scale))).toBeLessThan(0);
    const sleeve = sleeveOf(frame);
    for (const at of [[-a, 0] as const, [a, 0] as const]) expect(sleeve(at)).toBe(0);
    const [svc, ivc] = [frame.svc.centre, frame.ivc.centre];
    for (const end of [svc, ivc]) expect(sleeve(end)).toBe(1);
    const onVein = sleeve([ivc[0], -b - 4 * frame.scale]);
    expect(onVein).toBeGreaterThan(0.2);
    expect(onVein).toBeLessThan(0.9);
    // Its floor has no valve: the right ventricle lies beside it.
    const inVentricle = outlineDistance(anatomy.heart.ventricle);
    expect(inVentricle(...on(-62, 16 * frame.scale))).toBeLessThan(4 * frame.scale);
  }
});

test("in an atriopulmonary chamber marks lie no closer than in its vessels: the same ones show wherever fewer do", () => {
  const { frame } = chambered(CASES.caseA);
  const seen = among(frame, null)!;
  const [a] = frame.chamber;
  // What something lies before is hidden all the same, and elsewhere nothing changes.
  expect(among(frame, () => 0)!(0, 0, 0)).toBe(0);
  const hidden = () => 0;
  expect(among(geometryOf("lateral-tunnel").chest, hidden)).toBe(hidden);
  const count = 500;
  const shownAt = (x: number, y: number) => {
    const marks = { ...shortTrails(count), count };
    for (let i = 0; i < count; i++) marks.position.set([x, y], 2 * i);
    const colours = new Uint32Array(count).fill(0xff112233);
    fadeAtOpenings(marks, { taken: count, shown: null, openings: [], seen }, colours);
    return [...colours].map((colour) => colour >>> 24 > 127);
  };
  const [inside, between, outside] = [shownAt(0, 0), shownAt(0.95 * a, 0), shownAt(...frame.ivc.centre)];
  const kept = (shown: readonly boolean[]) => shown.filter(Boolean).length / count;
  expect(kept(outside)).toBe(1);
  expect(kept(shownAt(...frame.right.centre))).toBe(1);
  expect(kept(inside)).toBeGreaterThan(0.15);
  expect(kept(inside)).toBeLessThan(0.45);
  expect(kept(between)).toBeGreaterThan(kept(inside) + 0.1);
  for (const [i, shows] of inside.entries()) if (shows) expect(between[i]).toBe(true);
});
