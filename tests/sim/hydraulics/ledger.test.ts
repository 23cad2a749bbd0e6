import { expect, test } from "vitest";
import { lumenArea } from "../../../src/sim/hydraulics/element.ts";
import { gradeLine } from "../../../src/sim/hydraulics/grade-line.ts";
import type { BranchName, ElementLaw, PathwayLaw } from "../../../src/sim/hydraulics/law.ts";
import { ledger, meanDrop, pathwayLoss } from "../../../src/sim/hydraulics/ledger.ts";
import { toMilliwatt, toMmHg, toWood } from "../../../src/sim/units.ts";

/** A pathway of one element a branch, simple enough to be worked out by hand. */
const element = (branch: BranchName, a: number, b: number): ElementLaw => ({
  element: branch,
  branch,
  a,
  b,
  inertance: 0,
  areaAfter: lumenArea(0.01),
  source: "by hand",
  validReynolds: [200, 900],
  factor: 1,
  diameter: 0.02,
  from: 0,
  to: 10,
});
const law = (course: PathwayLaw["course"], gradeLung: "left" | "right" = "right"): PathwayLaw => ({
  fluid: { density: 1000, viscosity: 0.004 },
  course,
  gradeLung,
  branches: {
    ivc: [element("ivc", 1e6, 2e11)],
    svc: [element("svc", 2e6, 0)],
    left: [element("left", 3e6, 0)],
    right: [element("right", 5e6, 0)],
  },
});
const flows = { ivc: 3e-5, svc: 2e-5, left: 1e-5, right: 4e-5 };
/** Pa */
const DROPS = { ivc: 30 + 180, svc: 40, left: 30, right: 200 };

test("steady samples count as their value, and a flow that swings about nothing drops nothing", () => {
  expect(meanDrop({ a: 2, b: 3 }, [0.5, 0.5, 0.5, 0.5])).toBeCloseTo(meanDrop({ a: 2, b: 3 }, 0.5), 12);
  expect(meanDrop({ a: 2, b: 3 }, [0.5, -0.5])).toBeCloseTo(0, 12);
});

test("the drop is the vein's and the lungs' by their flow; power is every branch's; resistance is power over lung flow squared", () => {
  const power = DROPS.ivc * 3e-5 + DROPS.svc * 2e-5 + DROPS.left * 1e-5 + DROPS.right * 4e-5;
  const lungs = 0.2 * DROPS.left + 0.8 * DROPS.right;
  for (const [course, vein] of [
    ["joined", DROPS.ivc],
    ["parted", DROPS.svc],
    ["pumped", 0],
  ] as const) {
    const { pressureDrop, powerLoss, resistance } = pathwayLoss(law(course), flows);
    expect(pressureDrop).toBeCloseTo(toMmHg(vein + lungs), 9);
    expect(powerLoss).toBeCloseTo(toMilliwatt(power), 9);
    expect(resistance).toBeCloseTo(toWood(power / 5e-5 ** 2), 9);
  }
});

test("where no blood runs there is no loss, no share and no resistance; a lung that runs backward weighs nothing", () => {
  const still = { ivc: 0, svc: 0, left: 0, right: 0 };
  expect(pathwayLoss(law("joined"), still)).toEqual({ pressureDrop: 0, powerLoss: 0, resistance: 0 });
  expect(ledger(law("joined"), still).map(({ share }) => share)).toEqual([0, 0, 0, 0]);
  const backward = { ...flows, left: -1e-5, right: 5e-5 };
  expect(pathwayLoss(law("joined"), backward).pressureDrop).toBeCloseTo(toMmHg(DROPS.ivc + 250), 9);
});

test("a row says whether its Reynolds number lies within the relation's, both ends included", () => {
  const reynolds = (flow: number) => (4 * 1000 * flow) / (Math.PI * 0.004 * 0.02);
  const flowAt = (number: number) => (number * Math.PI * 0.004 * 0.02) / 4000;
  const inRange = (ivc: number) => ledger(law("joined"), { ...flows, ivc })[0]!.inRange;
  expect(ledger(law("joined"), flows)[0]!.reynolds).toBeCloseTo(reynolds(3e-5), 9);
  expect([150, 250, 850, 950].map((number) => inRange(flowAt(number)))).toEqual([false, true, true, false]);
});

test("a hole without a flow has no row, a flow without a hole has none, and with both it is named", () => {
  const hole = { a: 1e8, b: 0, source: "by hand", diameter: 0.004, validReynolds: [0, 5000] as const };
  const holed = { ...law("joined"), fenestration: hole };
  expect(ledger(holed, flows)).toHaveLength(4);
  expect(ledger(law("joined"), { ...flows, fenestration: 1e-6 })).toHaveLength(4);
  expect(ledger(holed, { ...flows, fenestration: 1e-6 })[4]).toMatchObject({
    element: "fenestration",
    branch: "fenestration",
  });
});

test("the grade line lies one dynamic head beneath the energy line, in the lumen of the moment", () => {
  const pressures = {
    hepaticVein: 13,
    ivc: 12.5,
    pulmonaryArteryLeft: 10.5,
    pulmonaryArteryRight: 9.5,
    pulmonaryVein: 7,
    atrium: 6,
  };
  for (const lung of ["left", "right"] as const) {
    const [, vein, artery, bed] = gradeLine(law("joined", lung), flows, pressures);
    const head = (flow: number) => toMmHg(500 * (flow / lumenArea(0.02)) ** 2);
    expect(vein!.totalPressure - vein!.pressure).toBeCloseTo(head(flows.ivc), 9);
    expect(artery!.totalPressure).toBeCloseTo(12.5 - toMmHg(DROPS.ivc), 9);
    expect(artery!.totalPressure - artery!.pressure).toBeCloseTo(head(flows[lung]), 9);
    expect(bed!.pressure).toBe(lung === "left" ? 10.5 : 9.5);
  }
});
