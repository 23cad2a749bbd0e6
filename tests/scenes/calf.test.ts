import type { Graphics } from "pixi.js";
import { expect, test } from "vitest";
import { stillMoment } from "../../src/chain/still-moment.ts";
import {
  ACHILLES_TENDON,
  CALCANEUS,
  DEEP_FLEXORS,
  FASCIA,
  FEMUR,
  GASTROCNEMIUS,
  SKIN,
  SOLEUS,
  TIBIA,
} from "../../src/scenes/calf/leg-parts.ts";
import { drawPushes } from "../../src/scenes/calf/pushes.ts";
import { outlineOf } from "../../src/scenes/calf/rounded.ts";
import { calfDoing, squeezes } from "../../src/scenes/calf/squeezes.ts";
import { beforeVein, behindVein, bulge } from "../../src/scenes/calf/strip-ends.ts";
import {
  CALF,
  freeHalfWidth,
  halfWidth,
  LENGTH,
  placeInLeg,
  pressedAt,
  squeezeAt,
  VALVES,
} from "../../src/scenes/calf/vein.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import type { Circulation, Traces } from "../../src/sim/circulation/answer/answer.ts";
import type { SceneState } from "../../src/state/scene-state.ts";
import { traces, wave } from "./leg-traces.ts";

test("the calf's muscles lie behind the vein and the tibia, and one tendon reaches from them to the calcaneus", () => {
  const near = (part: typeof SKIN, y: number) =>
    outlineOf(part)
      .filter(([, at]) => Math.abs(at - y) < 20)
      .map(([x]) => x);
  const vein = (y: number) => placeInLeg(y, 0).spot[0];
  for (let y = 300; y <= 680; y += 20) {
    const bone = Math.min(...near(TIBIA, y));
    for (const muscle of [GASTROCNEMIUS, SOLEUS])
      for (const x of near(muscle, y)) expect(x, `at ${y}`).toBeLessThan(vein(y));
    // Vein and deep muscle, into which the bulges behind valves press, have room before the bone, and all of them within fascia and skin.
    expect(vein(y) + halfWidth(y, 0)).toBeLessThan(Math.min(bone, ...near(DEEP_FLEXORS, y)) + 15);
    expect(Math.min(...near(GASTROCNEMIUS, y), bone)).toBeGreaterThan(Math.min(...near(FASCIA, y)));
    expect(Math.min(...near(FASCIA, y))).toBeGreaterThan(Math.min(...near(SKIN, y)));
  }
  const foot = outlineOf(ACHILLES_TENDON).reduce((a, b) => (b[1] > a[1] ? b : a));
  const top = Math.min(...outlineOf(ACHILLES_TENDON).map(([, y]) => y));
  for (const muscle of [GASTROCNEMIUS, SOLEUS])
    expect(top).toBeLessThan(Math.max(...outlineOf(muscle).map(([, y]) => y)));
  const heel = outlineOf(CALCANEUS);
  expect(Math.min(...heel.map(([x, y]) => Math.hypot(x - foot[0], y - foot[1])))).toBeLessThan(20);
});

test("the vein runs from behind the knee to the sole of the foot, within the skin", () => {
  const sole = Math.max(...outlineOf(SKIN).map(([, y]) => y));
  for (let at = 0; at <= LENGTH; at += 20) {
    const { spot, up } = placeInLeg(at, 0);
    expect(spot[1]).toBeLessThan(sole - 8);
    expect(Math.hypot(...up)).toBeCloseTo(1, 6);
  }
  expect(placeInLeg(0, 0).spot[0]).toBeLessThan(Math.min(...outlineOf(FEMUR).map(([x]) => x)));
  expect(placeInLeg(LENGTH, 0).spot[0]).toBeGreaterThan(Math.max(...outlineOf(TIBIA).map(([x]) => x)) + 150);
});

test("squeezing narrows the vein within the muscle only, and never shuts it", () => {
  const middle = (CALF.top + CALF.bottom) / 2;
  expect(halfWidth(middle, 1)).toBeLessThan(0.5 * halfWidth(middle, 0));
  expect(halfWidth(middle, 1)).toBeGreaterThan(5);
  expect(halfWidth(40, 1)).toBe(halfWidth(40, 0));
});

test("the muscle's pressure itself flattens the vein, more when it is higher", () => {
  const withPeak = (peak: number): Traces => ({
    ...traces,
    pressures: { calf: wave((p) => peak * Math.sin(p / 2) ** 2) },
  });
  const [weak, strong] = [10, 60].map((peak) => pressedAt(withPeak(peak), 0.5)) as [number, number];
  expect(weak).toBeLessThan(0.5 * strong);
  expect(strong).toBeGreaterThan(0.85);
  expect(pressedAt(withPeak(60), 0)).toBeCloseTo(0, 6);
});

test("muscles follow the vein's walls on both sides, and the belly bulges back as it presses", () => {
  const y = (CALF.top + CALF.bottom) / 2;
  for (const pressed of [0, 0.5, 1]) {
    const wall = halfWidth(y, pressed);
    expect(behindVein(FASCIA)(y, pressed)[1]).toBeCloseTo(placeInLeg(y, -wall).spot[0], 6);
    expect(beforeVein(TIBIA)(y, pressed)[1]).toBeCloseTo(placeInLeg(y, wall).spot[0], 6);
    expect(beforeVein(TIBIA)(y, pressed)[0]).toBe(beforeVein(TIBIA)(y, 0)[0]);
    expect(behindVein(SKIN, 250)(y, 0)[0] - behindVein(SKIN, 250)(y, pressed)[0]).toBeCloseTo(
      bulge(y, pressed),
      6,
    );
  }
  expect(bulge(y, 1)).toBeGreaterThan(12);
  expect(bulge(CALF.bottom + 20, 1)).toBe(0);
});

test("arrows onto the vein grow with the pressure, and there are none at rest", () => {
  const lengths = (pressed: number) => {
    const found: number[] = [];
    const ink: Graphics = {
      poly: (points: number[]) => {
        const xs = points.filter((_, i) => i % 2 === 0);
        found.push(Math.max(...xs) - Math.min(...xs));
        return ink;
      },
      fill: () => ink,
      stroke: () => ink,
    } as unknown as Graphics;
    drawPushes(
      ink,
      pressed,
      darkTheme((key) => key),
    );
    return found;
  };
  expect(lengths(0)).toEqual([]);
  expect(lengths(0.5)).toHaveLength(6);
  const half = lengths(0.5);
  for (const [i, long] of lengths(1).entries()) expect(long).toBeGreaterThan((half[i] ?? 0) + 10);
});

test("blood stays between the leaflets and the walls", () => {
  for (const open of [0, 0.5, 1])
    for (let y = 0; y < LENGTH; y += 5)
      expect(
        freeHalfWidth(
          y,
          0.6,
          VALVES.map(() => open),
        ),
      ).toBeLessThanOrEqual(halfWidth(y, 0.6));
});

test("each contraction is found once, and a calf at rest squeezes never", () => {
  expect(squeezes(traces)).toHaveLength(2);
  expect(calfDoing(traces, 0.25)).toBe("squeeze");
  expect(calfDoing(traces, 0.75)).toBe("release");
  // Between two contractions it rests, though its pressure is about to rise.
  expect(calfDoing(traces, 0.02)).toBe("rest");
  const rest = { ...traces, pressures: { calf: new Float64Array(401) } };
  expect(squeezes(rest)).toEqual([]);
  expect(calfDoing(rest, 0.25)).toBe("rest");
  expect(squeezeAt(rest, 0.5)).toBe(0);
});

test("a picture that never moved shows the squeeze at the moment at which most blood leaves, and a calf at rest its beginning", () => {
  const moment = (of: Traces, scene = "calf") =>
    stillMoment({ scene } as Pick<SceneState, "scene">, { traces: of } as Circulation);
  const still = moment(traces);
  expect(calfDoing(traces, still)).toBe("squeeze");
  const leaving = (at: number) => traces.flows.legs![Math.round(200 * at)]!;
  for (let at = 0; at < 2; at += 0.01)
    if (calfDoing(traces, at) === "squeeze") expect(leaving(at)).toBeLessThanOrEqual(leaving(still) + 1e-9);
  expect(moment({ ...traces, pressures: { calf: new Float64Array(401) } })).toBe(0);
  expect(moment(traces, "pathway")).toBe(0);
});

test("a squeeze begins where the muscle's pressure begins to rise and ends where it is greatest", () => {
  const [first] = squeezes(traces);
  expect(first!.from).toBeLessThan(0.1);
  expect(first!.to).toBeCloseTo(0.5, 1);
});

test("the foot ends in a round toe", () => {
  const end = outlineOf(SKIN)
    .filter(([x, y]) => x > 680 && y > 800)
    .map(([, y]) => y);
  expect(Math.max(...end) - Math.min(...end)).toBeGreaterThan(45);
});
