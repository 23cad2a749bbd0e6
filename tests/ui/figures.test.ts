import { describe, expect, it } from "vitest";
import { tabulatedLoss } from "../../src/chain/tabulated.ts";
import { speakQuantity, t } from "../../src/i18n/index.ts";
import { lookupIn } from "../../src/lesson/figure-paths.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";
import { fieldPressureDrop, figuresOf } from "../../src/ui/figures.ts";
import { readingOf } from "../../src/ui/pathway-sentences.ts";

const opening = (name: string, flow: number, totalPressure: number) => ({
  name,
  flow,
  pressure: 0,
  totalPressure,
  reynolds: 500,
});
const readings = {
  openings: [
    opening("ivc", 30, 0.9),
    opening("svc", 15, 0.8),
    opening("left", -30, 0.1),
    opening("right", -15, 0.4),
  ],
  powerLoss: 2.5,
  dissipation: 2.4,
  auditPercent: 4,
  massBalancePercent: 0.1,
  shares: { ivc: { left: 0.7, right: 0.3 } },
  recirculatingArea: 0.12,
  settled: true,
  pace: 1,
  cellUpdatesPerSecond: 1e7,
};
const circulation = solve(START.request);

describe("figures", () => {
  it("weight the pulmonary arteries by their flow", () => {
    expect(fieldPressureDrop(readings)).toBeCloseTo(0.9 - (2 / 3) * 0.1 - (1 / 3) * 0.4, 10);
  });

  it("speak of the liver's veins where no pathway leads to the lungs", () => {
    for (const stage of ["two-ventricle", "glenn"] as const) {
      const answer = solve({ ...START.request, stage });
      const names = figuresOf(answer, null).map(({ name }) => name);
      expect(names).toEqual(["hepaticVeinPressure", "arterialSaturation", "output"]);
    }
  });

  it("say next to the saturation when nobody could keep the effort up, and only then", () => {
    const reported = (metabolicEquivalents: number) => {
      const answer = solve({ ...START.request, stage: "glenn", set: { metabolicEquivalents } });
      const note = figuresOf(answer, null).find(({ name }) => name === "arterialSaturation")!.note;
      return [note !== undefined, readingOf(answer, null).length === 3];
    };
    expect(reported(1)).toEqual([false, false]);
    expect(reported(5)).toEqual([true, true]);
  });

  it("wait for a settled flow", () => {
    expect(fieldPressureDrop({ ...readings, settled: false })).toBeNull();
    expect(figuresOf(null, null).every(({ value }) => value === null)).toBe(true);
  });

  it("read no loss from a field whose energy budget is more than 10 % open, and say why", () => {
    for (const field of [
      { ...readings, auditPercent: -35 },
      { ...readings, auditPercent: 10.5 },
      { ...readings, settled: false, auditPercent: 2 },
    ]) {
      const ofField = figuresOf(circulation, field).filter(({ source }) => source === "field");
      expect(ofField.map(({ value }) => value)).toEqual([null, null]);
      const { note } = ofField.find(({ name }) => name === "powerLoss")!;
      expect(note).toBe(field.settled ? "figure.note.open" : "figure.note.settling");
      expect(readingOf(circulation, field)).toContain(t(note!));
      const situation = { own: { request: START.request, circulation, field }, others: {} };
      expect(lookupIn(situation)("field.powerLoss")).toBeNull();
      expect(lookupIn(situation)("field.recirculatingArea")).toBe(0.12);
    }
    expect(figuresOf(circulation, readings).some(({ note }) => note)).toBe(false);
  });

  it("keep the handbook's and the field's values apart, in that order", () => {
    const loss = figuresOf(circulation, readings).filter(({ name }) => name === "powerLoss");
    expect(loss.map(({ source }) => source)).toEqual(["handbook", "field"]);
    expect(loss[0]!.value).toBe(circulation.pathway.powerLoss);
    expect(loss[1]!.value).toBe(2.5);
  });
});

describe("while the field settles", () => {
  const tabulated = tabulatedLoss(circulation)!;
  const losses = (field: typeof readings | null) =>
    figuresOf(circulation, field, tabulated).filter(({ name }) => name === "powerLoss");

  it("the table of such fields speaks at once, marked as such, as a part of the handbook's figure", () => {
    const [handbook, table] = losses(null);
    expect(table!.source).toBe("table");
    expect(table!.value).toBe(tabulated.powerLoss);
    expect(table!.value! / handbook!.value!).toBeGreaterThan(0.2);
    expect(table!.value! / handbook!.value!).toBeLessThan(1);
    expect(losses({ ...readings, settled: false })[1]!.source).toBe("table");
  });

  it("the live field takes its place once it has settled", () => {
    expect(losses(readings)[1]).toMatchObject({ source: "field", value: 2.5 });
  });

  it("a stage without a table has none", () => {
    expect(tabulatedLoss(solve({ ...START.request, stage: "glenn" }))).toBeNull();
  });
});

describe("the reading of the scene", () => {
  it("has at most three sentences and the very numbers of the answer", () => {
    const sentences = readingOf(circulation, readings);
    expect(sentences.length).toBeLessThanOrEqual(3);
    expect(sentences[0]).toContain(`${circulation.pressures.pathway.toFixed(1)}\u202fmmHg`);
    expect(sentences[2]).toContain("70\u202f%");
  });

  it("U9 speaks units as words", () => {
    expect(readingOf(circulation, null, speakQuantity)[0]).toContain("millimetres of mercury");
  });
});
