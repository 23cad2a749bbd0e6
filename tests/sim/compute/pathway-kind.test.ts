import { describe, expect, test } from "vitest";
import { compute } from "../../../src/sim/compute/run-request.ts";

const REQUEST = {
  kind: "pathway",
  stage: "extracardiac",
  body: { ageYears: 5, bsa: 0.72 },
  set: { cavalOffset: 4 },
  flows: { ivc: 1.386, svc: 1.134, left: 1.134, right: 1.386 },
};
const run = (change: object = {}, format: "json" | "csv" = "json") =>
  compute(JSON.stringify({ ...REQUEST, ...change }), format);

describe("kind pathway", () => {
  test("answers the contract's keys, near what 3D found for this pathway", async () => {
    const { output, exit, errors } = await run();
    expect([exit, errors]).toEqual([0, []]);
    const { pathway, shares, note } = JSON.parse(output);
    // docs/validation/three-d.json, ec-centre: 2.785 mW, 0.406 mmHg, shares 0.757 and 0.080
    expect(Math.abs(pathway.powerLoss / 2.785 - 1)).toBeLessThan(0.1);
    expect(Math.abs(pathway.pressureDrop / 0.406 - 1)).toBeLessThan(0.1);
    expect(pathway.band.powerLoss[0]).toBeLessThan(2.785);
    expect(pathway.band.powerLoss[1]).toBeGreaterThan(2.785);
    expect(pathway.ledger.length).toBeGreaterThan(8);
    expect(pathway.ledger.every((row: { source: string }) => row.source.length > 10)).toBe(true);
    expect(Math.abs(shares.ivc.left - 0.757)).toBeLessThan(0.08);
    expect(Math.abs(shares.svc.left - 0.08)).toBeLessThan(0.08);
    expect(1.386 * shares.ivc.left + 1.134 * shares.svc.left).toBeCloseTo(1.134, 6);
    expect(note).toBeUndefined();
  });
  test("flows that do not balance are refused, with what came in and what went out", async () => {
    const { output, errors, exit } = await run({ flows: { ...REQUEST.flows, right: 1.5 } });
    expect([output, exit]).toEqual(["", 2]);
    expect(errors).toHaveLength(1);
    expect(errors[0]).toMatch(/flows.*2\.52.*2\.634.*0\.1 %/);
  });
  test.each([
    [{ flows: { ...REQUEST.flows, left: "much" } }, /flows\.left/],
    [{ flows: { ivc: 1, svc: 1, left: 1 } }, /flows\.right.*missing/],
    [{ flows: { ...REQUEST.flows, hepatic: 1 } }, /flows\.hepatic.*unknown key/],
    [{ flows: 3 }, /flows.*object/],
    [{ stage: "glenn" }, /stage.*extracardiac/],
    [{ volumeRule: "fixed-volume" }, /volumeRule.*unknown key/],
    [{ set: { conduitDiametre: 18 } }, /conduitDiameter/],
  ])("%j is refused", async (change, words) => {
    const { errors, exit } = await run(change);
    expect(exit).toBe(2);
    expect(errors.join("\n")).toMatch(words);
  });
  test("outside the set a note says what lies outside, and the band is wider", async () => {
    const far = JSON.parse((await run({ set: { conduitDiameter: 8 } })).output);
    expect(far.note).toMatch(/outside the 3D cases.*pathwayDiameter/);
    expect(far.pathway.outsideSet).toContain("pathwayDiameter");
    const near = JSON.parse((await run()).output);
    const width = ({ pathway }: typeof far) => pathway.band.pressureDrop[1] / pathway.band.pressureDrop[0];
    expect(width(far)).toBeGreaterThan(width(near));
  });
  test("as CSV every number has its unit", async () => {
    const { output } = await run({}, "csv");
    expect(output.split("\r\n").filter((line) => /^[^,]+,-?[\d.e-]+,$/.test(line))).toEqual([]);
  });
});
