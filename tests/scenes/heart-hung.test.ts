import { expect, test } from "vitest";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { descentAt, heartHung } from "../../src/scenes/circuit/sinking.ts";

test("where the vessels stay, the heart's floor goes down by the dome's way, and its roof not at all", () => {
  for (const stage of ["extracardiac", "lateral-tunnel", "atriopulmonary", "glenn"] as const) {
    expect(heartHung(stage, 1).part).toBe(0);
    const { hinge, part } = heartHung(stage, 1.12);
    // From the roof of the atrium down to where the lower vein passes the dome.
    const floor = hinge + descentAt(1.12) / part;
    expect(hinge).toBeLessThan(360);
    expect(floor).toBeGreaterThan(484);
    expect(part * (floor - hinge)).toBeCloseTo(descentAt(1.12), 9);
  }
});

test("the blood of a single ventricle's heart goes with it, and no other", () => {
  const hanging = vesselsOf("extracardiac", false).filter(({ hangs }) => hangs);
  expect(hanging.map(({ name }) => name)).toEqual(["throughAtrium", "throughVentricle"]);
  expect(heartHung("two-ventricle", 1.12).part).toBe(0);
});
