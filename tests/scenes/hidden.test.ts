import { expect, test } from "vitest";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { layVessels } from "../../src/scenes/circuit/dots.ts";
import { seenAlong, seenAt } from "../../src/scenes/circuit/hidden.ts";
import { vessel } from "../../src/scenes/circuit/vessel.ts";
import { curve, placeOn } from "../../src/scenes/drawing/curve-drawing.ts";

test("a vessel's blood is hidden where another is drawn over it, and only there", () => {
  const back = vessel("back", ["svc", "svc"], 20, "0 500, 100 500, 200 500");
  const front = vessel("front", ["ivc", "ivc"], 20, "100 400, 100 500, 100 600");
  const [low, high] = seenAlong(layVessels([back, front]));
  expect(seenAt(low, 0.5)).toBe(0);
  expect(seenAt(low, 0.2)).toBe(1);
  expect(seenAt(low, 0.8)).toBe(1);
  expect(seenAt(high, 0.5)).toBe(1);
  // What joins is one vessel.
  const joined = [back, front].map((each) => ({ ...each, joins: "one" }));
  for (const each of seenAlong(layVessels(joined))) expect(seenAt(each, 0.5)).toBe(1);
});

test("the lungs' artery is hidden behind the aorta, and the aorta behind the left kidney's vein", () => {
  const laid = layVessels(vesselsOf("extracardiac", false));
  const seen = seenAlong(laid);
  const index = (name: string) => laid.findIndex(({ vessel: { name: own } }) => own === name);
  const at = new Float64Array(4);
  /** Least that is seen of the first where it meets the second's middle. */
  const crossing = (under: string, over: string) => {
    const [a, b] = [index(under), index(over)];
    const line = curve(laid[b]!.vessel.points);
    let [least, near] = [1, 8];
    for (let i = 0; i <= 200; i++) {
      placeOn(laid[a]!.line, i / 200, at);
      for (let k = 0; k < line.x.length; k++) {
        const away = Math.hypot(line.x[k]! - at[0]!, line.y[k]! - at[1]!);
        if (away < near) [least, near] = [seenAt(seen[a], i / 200), away];
      }
    }
    return least;
  };
  expect(crossing("leftPulmonaryArtery", "arch")).toBe(0);
  expect(crossing("descending", "leftKidneyVein")).toBe(0);
});

test("ways through one lung that share a root show one way's marks there", () => {
  const laid = layVessels(vesselsOf("extracardiac", false));
  const seen = seenAlong(laid);
  const ways = laid
    .map(({ vessel: { name } }, i) => ({ name, i }))
    .filter(({ name }) => /^rightBed\d/.test(name));
  expect(ways.length).toBeGreaterThan(4);
  for (const { name, i } of ways) {
    expect(seenAt(seen[i], 0.01), name).toBe(0);
    expect(Math.max(...seen[i]!), name).toBe(1);
  }
});
