import { expect, test } from "vitest";
import { bend, quarterTurn } from "../../../src/sim/hydraulics/bend.ts";
import { contraction, suddenContraction } from "../../../src/sim/hydraulics/contraction.ts";
import { type Element, lumenArea, reynoldsNumber } from "../../../src/sim/hydraulics/element.ts";
import {
  expansion,
  suddenExpansion,
  suddenExpansionParabolic,
  suddenExpansionPlane,
} from "../../../src/sim/hydraulics/expansion.ts";
import { headOn, jointEntry, meeting } from "../../../src/sim/hydraulics/facing-streams.ts";
import { orifice } from "../../../src/sim/hydraulics/orifice.ts";
import { developingPipe, entranceExcess, entranceLength, pipe } from "../../../src/sim/hydraulics/pipe.ts";
import { stenosis, stenosisBefore } from "../../../src/sim/hydraulics/stenosis.ts";
import {
  combiningBranch,
  combiningStraight,
  dividingBranch,
  dividingStraight,
  division,
  opposedStreams,
} from "../../../src/sim/hydraulics/tee.ts";
import { fromLitresPerMinute, fromMmHg, toLitresPerMinute, toMmHg, toWood } from "../../../src/sim/units.ts";

const blood = { density: 1060, viscosity: 3.5e-3 };
const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value / expected - 1)).toBeLessThan(tolerance);
const drop = ({ a, b }: Element, flow: number) => a * flow + b * flow * Math.abs(flow);

test("a pipe of 18 x 60 mm has 0.0102 WU and spends 0.034 mmHg at 3.3 L/min (Hagen-Poiseuille)", () => {
  const conduit = pipe(0.018, 0.06, blood);
  within(toWood(conduit.a), 0.0102, 0.005);
  within(toMmHg(drop(conduit, fromLitresPerMinute(3.3))), 0.0337, 0.005);
});

test("the Reynolds number in a child's conduit is 460 (physiology values, section 9)", () => {
  within(reynoldsNumber(fromLitresPerMinute(1.3), 0.018, blood), 460, 0.02);
});

test("entrance excess rises from nothing to 1.25 heads and never falls (Shah & London 1978)", () => {
  expect(entranceExcess(0)).toBe(0);
  within(entranceExcess(1), 1.25, 0.01);
  let last = 0;
  for (let x = 1e-5; x < 1; x *= 1.3) {
    const now = entranceExcess(x);
    expect(now).toBeGreaterThan(last - 0.01);
    last = now;
  }
  const short = developingPipe(0.0105, 0.04, fromLitresPerMinute(1.2), blood);
  expect(drop(short, 2e-5)).toBeGreaterThan(drop(pipe(0.0105, 0.04, blood), 2e-5));
});

test("no vein near the heart is long enough for a developed profile: 0.5 m at Reynolds 460 (Durst 2005)", () => {
  expect(entranceLength(0.018, 460)).toBeGreaterThan(0.4);
  within(entranceLength(0.018, 0.001), 0.619 * 0.018, 0.01);
});

test("a sudden expansion follows Borda-Carnot, round and plane parabolas included (momentum balance)", () => {
  expect(suddenExpansion(1)).toBe(0);
  expect(suddenExpansion(0.5)).toBe(0.25);
  expect(suddenExpansionParabolic(0)).toBe(2);
  within(suddenExpansionParabolic(0.5), 2 - 4 / 3 + 1 / 6, 1e-12);
  expect(suddenExpansionParabolic(1)).toBeCloseTo(0, 12);
  within(suddenExpansionPlane(0), 1.543, 0.001);
  expect(suddenExpansionPlane(1)).toBeCloseTo(0, 12);
});

test("a contraction loses up to half a head when sharp, under a tenth of that when rounded (Crane)", () => {
  expect(suddenContraction(0, 0)).toBe(0.5);
  expect(suddenContraction(0, 0.1)).toBeCloseTo(0.22, 6);
  expect(suddenContraction(0, 0.5)).toBeCloseTo(0.045, 6);
  expect(contraction(0.01, 0.01, 0, blood).b).toBe(0);
});

test("a quarter turn loses 1.1-1.3 mitred, 0.3-0.6 at r/D 1, 0.07-0.33 at r/D 1.5 (Miller; Crane)", () => {
  expect(quarterTurn(0.5)).toBe(1.2);
  expect(quarterTurn(1)).toBeGreaterThanOrEqual(0.3);
  expect(quarterTurn(1)).toBeLessThanOrEqual(0.6);
  expect(quarterTurn(1.5)).toBeLessThanOrEqual(0.33);
  expect(quarterTurn(9)).toBe(0.2);
  expect(bend(0.01, 0.003, blood, 1).b).toBeLessThan(bend(0.01, 0, blood, 1).b);
});

test("tees follow Idelchik: dividing, combining and opposed streams", () => {
  expect(dividingBranch(0.5)).toBe(1.25);
  expect(dividingBranch(1)).toBeCloseTo(1.8, 12);
  expect(dividingStraight(1)).toBe(0);
  expect(combiningBranch(0, 1)).toBeCloseTo(0.9 * (1 - 2), 12);
  expect(combiningBranch(1, 1)).toBeCloseTo(1.1, 12);
  expect(combiningStraight(1)).toBeCloseTo(0.55, 12);
  expect(opposedStreams(0.5, 1)).toBeCloseTo(1.25, 12);
});

test("facing streams lose all of it head-on, as much to either side, and next to nothing two radii apart", () => {
  expect(headOn(0, 0.7)).toBe(1);
  expect(headOn(0.7, 0.7)).toBeCloseTo(Math.exp(-1), 12);
  expect(headOn(-0.4, 0.7)).toBe(headOn(0.4, 0.7));
  expect(headOn(2, 0.7)).toBeLessThan(0.001);
});

test("what a narrowing loses before the opening grows with the room left for its jet, up to the whole", () => {
  const whole = stenosis(0.01, 0.005, 0.01, blood);
  const at = (left: number) => stenosisBefore(whole, left, 0.01, 1.8);
  expect(at(0).b).toBe(0);
  within(at(0.018).b / whole.b, 1 - Math.exp(-1), 1e-12);
  within(at(0.018).a / whole.a, 1 - Math.exp(-1), 1e-12);
  within(at(1).b / whole.b, 1, 1e-9);
  expect(at(0.02).source).toMatch(/beyond the branch's opening is not counted/);
});

test.each([
  [50, 0.153, 0.525],
  [75, 0.499, 4.724],
])(
  "a stenosis of %i %% of the area in 12 mm spends %f + %f mmHg at 2 L/min (Young & Tsai 1973)",
  (taken, viscous, turbulent) => {
    const narrowest = 0.012 * Math.sqrt(1 - taken / 100);
    const { a, b } = stenosis(0.012, narrowest, 0.01, blood);
    const flow = fromLitresPerMinute(2);
    within(toMmHg(a * flow), viscous, 0.005);
    within(toMmHg(b * flow * flow), turbulent, 0.005);
  },
);

test.each([
  [4, 3, 0.458],
  [4, 5, 0.592],
  [4, 8, 0.749],
  [5, 5, 0.925],
  [3, 5, 0.333],
])(
  "a hole of %f mm at %f mmHg passes %f L/min by the orifice equation with Cd 0.70",
  (diameter, pressure, expected) => {
    const hole = orifice(diameter * 1e-3, 0.7, blood);
    within(toLitresPerMinute(Math.sqrt(fromMmHg(pressure) / hole.b)), expected, 0.005);
    // Creeping flow rules only near zero: within 2 % of the whole drop here.
    const flow = fromLitresPerMinute(expected);
    expect((hole.a * flow) / drop(hole, flow)).toBeLessThan(0.04);
  },
);

test("a round lumen's area is pi D2 / 4", () => {
  expect(lumenArea(2)).toBeCloseTo(Math.PI, 12);
});

test("between the tabulated points handbook curves are straight, in the logarithm for a turn", () => {
  expect(quarterTurn(0.2)).toBe(1.2);
  expect(quarterTurn(0.75)).toBeCloseTo(Math.sqrt(1.2 * 0.4), 12);
  expect(quarterTurn(1.25)).toBeCloseTo(Math.sqrt(0.4 * 0.2), 12);
  expect(suddenContraction(0.5, 0.05)).toBeCloseTo(0.25 * 0.72, 12);
  expect(suddenContraction(0.5, 0.125)).toBeCloseTo(0.25 * 0.265, 12);
});

test("Idelchik's tees by hand: the combining factor's three rows, the straight leg, streams into a wider outlet", () => {
  expect(dividingBranch(0.8)).toBeCloseTo(1.64, 12);
  expect(combiningBranch(0.3, 0.35)).toBeCloseTo(1 + (0.3 / 0.35) ** 2 - 0.98, 12);
  expect(combiningBranch(0.3, 0.5)).toBeCloseTo(0.63 * 0.38, 12);
  expect(combiningBranch(0.4, 0.5)).toBeCloseTo(0.54 * 0.92, 12);
  expect(combiningBranch(0.6, 0.5)).toBeCloseTo(0.55 * 2.12, 12);
  expect(combiningStraight(0.5)).toBeCloseTo(0.525, 12);
  expect(opposedStreams(0.5, 2)).toBeCloseTo(2, 12);
});

test("a coefficient becomes pressure on the head of its own lumen: edge over the narrower, branch over the common leg", () => {
  const head = (diameter: number, flow: number) => 530 * (flow / lumenArea(diameter)) ** 2;
  const flow = 3e-5;
  within(drop(contraction(0.02, 0.01, 0.001, blood), flow), 0.375 * 0.44 * head(0.01, flow), 1e-9);
  within(drop(expansion(0.01, 0.02, blood), flow), (2 - 2 / 3 + 2 / 48) * head(0.01, flow), 1e-9);
  within(drop(division(0.01, 0.5, 0, blood), flow), 5 * head(0.01, flow), 1e-9);
  within(drop(division(0.01, 0.1, 0, blood), flow), 26 * head(0.01, flow), 1e-9);
  within(drop(division(0.01, 0.5, 0.005, blood), flow), (5 / 3) * head(0.01, flow), 1e-9);
  within(drop(jointEntry(0.01, 1.4, blood), flow), 1.4 * head(0.01, flow), 1e-9);
  within(drop(meeting(3e11), flow), 3e11 * flow * flow, 1e-9);
});

test("blood's inertia is density times length over area; a stenosis moves a fifth more (Young & Tsai 1973)", () => {
  within(pipe(0.018, 0.06, blood).inertance, (1060 * 0.06) / lumenArea(0.018), 1e-12);
  within(stenosis(0.012, 0.006, 0.01, blood).inertance, (1.2 * 10.6) / lumenArea(0.012), 1e-12);
});

test("a hole of 4 mm has 1.31 MPa.s/m3 of creeping resistance (Sampson 1891: 24 mu / D3)", () => {
  within(orifice(0.004, 0.7, blood).a, 1.3125e6, 1e-9);
});

test("the entrance's excess is Shah's correlation at the flow of the moment, and none where blood stands", () => {
  const shah = (x: number) => {
    const root = 13.76 * Math.sqrt(x);
    return root + (1.25 + 64 * x - root) / (1 + 0.00021 / (x * x)) - 64 * x;
  };
  within(entranceExcess(0.01), shah(0.01), 1e-12);
  expect(entranceExcess(-1)).toBe(0);
  const flow = fromLitresPerMinute(1.2);
  const reynolds = (4 * 1060 * flow) / (Math.PI * 3.5e-3 * 0.0105);
  within(
    developingPipe(0.0105, 0.04, flow, blood).b,
    // one of the developed 1.25 heads is carried on
    (0.2 * shah(0.04 / (0.0105 * reynolds)) * 530) / lumenArea(0.0105) ** 2,
    1e-9,
  );
  expect(developingPipe(0.0105, 0.04, 0, blood).b).toBeLessThan((1.3 * 530) / lumenArea(0.0105) ** 2);
  expect(developingPipe(0.0105, 0.04, 0, blood).a).toBe(pipe(0.0105, 0.04, blood).a);
});

test.each([
  [pipe(0.01, 0.01, blood), /Poiseuille.*White/, 0, 2100],
  [developingPipe(0.01, 0.01, 1e-5, blood), /Shah & London 1978/, 0, 2100],
  [bend(0.01, 0, blood, 0.5), /Miller; Crane/, 1e4, Number.POSITIVE_INFINITY],
  [contraction(0.02, 0.01, 0, blood), /Idelchik; Crane/, 3500, Number.POSITIVE_INFINITY],
  [expansion(0.01, 0.02, blood), /Borda-Carnot/, 30, 2100],
  [stenosis(0.01, 0.005, 0.01, blood), /Young & Tsai 1973/, 100, 5000],
  [orifice(0.004, 0.7, blood), /Idelchik.*Sampson 1891/, 500, 5000],
  [division(0.01, 1, 0, blood), /Idelchik/, 4000, Number.POSITIVE_INFINITY],
  [meeting(1e11), /facing streams.*3D set/, 150, 2500],
  [jointEntry(0.01, 1.4, blood), /3D set/, 150, 2500],
])(
  "each relation names its source and the Reynolds numbers it was measured at: %o",
  (element, source, low, high) => {
    expect(element.source).toMatch(source);
    expect(element.validReynolds).toEqual([low, high]);
  },
);
