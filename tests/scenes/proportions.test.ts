import { expect, test } from "vitest";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { CHIN, FIGURE } from "../../src/scenes/circuit/figure-shape.ts";
import { carried, GROWN, proportionsOf } from "../../src/scenes/circuit/proportions.ts";
import { grownFigure, headOf } from "../../src/scenes/growth/grown-figure.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { START } from "../../src/state/scene-state.ts";

const at = (ageYears: number) =>
  proportionsOf({
    request: { ...START.request, body: { ...START.request.body, ageYears } },
  } as unknown as Circulation);
/** Part of the height. */
const headIn = ({ carry, body }: typeof GROWN) => {
  const [crown, sole] = [carry([500, -219])[1], carry([500, 2124])[1]];
  expect(body.top).toBeLessThan(crown);
  return (carry([500, CHIN])[1] - crown) / (sole - crown);
};

test("a grown body is that of the tables, and one age has one record", () => {
  expect(GROWN.figure).toEqual(FIGURE);
  expect(at(30)).toBe(at(18));
  expect(at(5.1)).toBe(at(5));
});

test("heads in a height grow with the age, and a child's is as large beside the grown one's as in the row of growing bodies", () => {
  const parts = [2, 5, 10, 15, 18].map((years) => headIn(at(years)));
  for (let i = 1; i < parts.length; i++) expect(parts[i]).toBeLessThan(parts[i - 1]!);
  expect(headIn(at(5)) / headIn(GROWN)).toBeCloseTo(headOf(5) / headOf(18), 1);
  expect(grownFigure(5).parts.length).toBeGreaterThan(2);
});

test("what lies in the trunk keeps its place, limbs and head do not", () => {
  const five = at(5);
  for (const spot of [
    [468, 300],
    [600, 700],
    [500, 1060],
  ] as const)
    expect(five.carry(spot)).toEqual(spot);
  const [head, foot, hand] = [five.carry([560, -100]), five.carry([620, 2100]), five.carry([900, 1080])];
  expect(head[1]).toBeLessThan(-130);
  expect(foot[1]).toBeLessThan(2000);
  expect(hand[1]).toBeLessThan(990);
  const moved = vesselsOf("extracardiac", false).filter(
    (vessel) => JSON.stringify(carried(vessel, five).points) !== JSON.stringify(vessel.points),
  );
  expect(moved.map(({ name }) => name)).toEqual(
    expect.arrayContaining(["leftCarotid", "leftLegTibialVein", "upperLimbArteryLeft"]),
  );
  expect(moved.map(({ name }) => name)).not.toContain("conduit");
});
