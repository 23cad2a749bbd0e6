import { describe, expect, it } from "vitest";
import { formatQuantity, LANGUAGES, setLanguage, speakQuantity } from "../../src/i18n/index.ts";
import { figureBand } from "../../src/lesson/model/figure-band.ts";
import { nameFault } from "../../src/lesson/model/figure-paths.ts";
import { type Figure as LiveFigure, parseFigure } from "../../src/lesson/model/live-figures.ts";
import { numbersIn } from "../../src/lesson/model/situation.ts";
import { changesOf } from "../../src/scenes/layers/grade-stretches.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { hasPathway, STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";
import { figuresOf } from "../../src/ui/figures.ts";
import { numberIn } from "../../src/ui/lesson/voice.ts";
import { readingOf } from "../../src/ui/pathway-sentences.ts";
import { sheetRows } from "../../src/ui/take-away/sheet.ts";

const readings = {
  openings: [],
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
const answers = STAGES.map((stage) => solve({ ...START.request, stage }));

/** "0.52 mmHg (0.45 to 0.60)" */
const dropOf = ({ pathway }: typeof circulation) =>
  formatQuantity(pathway.pressureDrop, "mmHg", 2, pathway.band!.pressureDrop);

describe("figures", () => {
  it("give each thing one number, in every stage", () => {
    for (const answer of answers) {
      const names = figuresOf(answer).map(({ name }) => name);
      expect(new Set(names).size).toBe(names.length);
    }
  });

  it("carry a band with the pathway's drop and loss, and with nothing else", () => {
    for (const answer of answers) {
      const banded = figuresOf(answer).filter(({ band }) => band);
      const joined = hasPathway(answer.request.stage);
      expect(banded.map(({ name }) => name)).toEqual(joined ? ["pressureDrop", "powerLoss"] : []);
      for (const { value, band } of banded) {
        expect(band![0]).toBeLessThan(value!);
        expect(band![1]).toBeGreaterThan(value!);
      }
    }
  });

  it("are the numbers of the reading, the grade line and the sheet, to the last sign", () => {
    for (const answer of answers.filter(({ request }) => hasPathway(request.stage))) {
      const figures = figuresOf(answer);
      const drop = figures.find(({ name }) => name === "pressureDrop")!;
      const written = formatQuantity(drop.value!, drop.unit, drop.digits, drop.band);
      expect(written).toBe(dropOf(answer));
      expect(readingOf(answer, readings)[0]).toContain(written);
      const theme = darkTheme((_, values) => String(values?.drop));
      expect(changesOf(answer, theme)[0]).toMatchObject({
        words: written,
        figure: formatQuantity(drop.value!, "mmHg", 2),
      });
      const colours = { ground: "", ink: "", soft: "" };
      const sheet = { title: "", figures, date: "2026-01-01", colours, family: "" };
      expect(sheetRows(sheet, 1280, 720)[1]!.text).toContain(written);
    }
  });

  it("speak of the liver's veins where no pathway leads to the lungs", () => {
    for (const answer of answers.filter(({ request }) => !hasPathway(request.stage)))
      expect(figuresOf(answer).map(({ name }) => name)).toEqual([
        "hepaticVeinPressure",
        "arterialSaturation",
        "output",
      ]);
  });

  it("say next to the saturation when nobody could keep the effort up, and only then", () => {
    const reported = (metabolicEquivalents: number) => {
      const answer = solve({ ...START.request, stage: "glenn", set: { metabolicEquivalents } });
      const note = figuresOf(answer).find(({ name }) => name === "arterialSaturation")!.note;
      return [note !== undefined, readingOf(answer, null).length === 3];
    };
    expect(reported(1)).toEqual([false, false]);
    expect(reported(5)).toEqual([true, true]);
  });

  it("wait for the first answer", () => {
    expect(figuresOf(null).every(({ value, band }) => value === null && band === undefined)).toBe(true);
  });
});

describe("live numbers of a lesson", () => {
  const situation = { own: { request: START.request, circulation }, others: { second: undefined } };
  const figure = (text: string): LiveFigure => {
    const parsed = parseFigure(text);
    if (!parsed.ok) throw new Error(parsed.found);
    return parsed.value;
  };

  it("show the band of drop, loss and shares, whatever they are multiplied with", () => {
    expect(numberIn(situation, figure("pathway.pressureDrop | mmHg 2"))).toBe(dropOf(circulation));
    const { left, right, band } = circulation.shares!.ivc;
    const shown = figureBand(figure("100 * shares.ivc.right | % 0"), situation)!;
    expect(shown[0]).toBeCloseTo(100 * (left + right - band[1]), 9);
    expect(shown[1]).toBeCloseTo(100 * (left + right - band[0]), 9);
  });

  it("show the spread of the wash-out", () => {
    const field = { ...readings, washOutSeconds: 1.72, washOutBand: [1.4, 2.2] as const };
    const measured = { own: { request: START.request, circulation, field }, others: { second: undefined } };
    expect(figureBand(figure("field.washOutSeconds | s 1"), measured)).toEqual([1.4, 2.2]);
    expect(figureBand(figure("field.washOutSeconds | s 1"), situation)).toBeNull();
    expect(numberIn(measured, figure("field.washOutSeconds | s 1"))).toBe(
      formatQuantity(1.72, "s", 1, [1.4, 2.2]),
    );
  });

  it("show none for a bare number, for what has none, and for a ratio of two", () => {
    for (const text of [
      "pathway.pressureDrop | mmHg 2 bare",
      "pressures.svc | mmHg 1",
      "pathway.powerLoss / energy.in | % 1",
    ])
      expect(figureBand(figure(text), situation), text).toBeNull();
  });

  it("are kept with their band for the record", () => {
    const drop = figure("pathway.pressureDrop | mmHg 2");
    const kept = numbersIn([{ kind: "figure", line: 1, figure: drop }], situation);
    const { pressureDrop, band } = circulation.pathway;
    expect(kept).toEqual({ [drop.written]: [pressureDrop, ...band!.pressureDrop] });
  });

  it("know the circulation's shares; no loss, drop or share of the flow in a plane", () => {
    expect(nameFault("second.shares.ivc.left", [])).toBeNull();
    expect(nameFault("shares.ivc.middle", [])).toMatchObject({ allowed: expect.stringContaining("left") });
    expect(nameFault("shares.ivc", [])).not.toBeNull();
    for (const [name, instead] of [
      ["field.powerLoss", "pathway.powerLoss"],
      ["third.field.pressureDrop", "pathway.pressureDrop"],
      ["field.shares", "shares.ivc.left"],
    ] as const)
      expect(nameFault(name, [])).toEqual({ found: name, allowed: expect.stringContaining(instead) });
    expect(nameFault("field.recirculatingArea", [])).toBeNull();
  });
});

describe("the reading of the scene", () => {
  it("has at most four sentences and the very numbers of the answer, none of a share or loss in the field", () => {
    const sentences = readingOf(circulation, readings);
    expect(sentences.length).toBeLessThanOrEqual(4);
    expect(sentences[0]).toContain(`${circulation.pressures.pathway.toFixed(1)}\u202fmmHg`);
    const { left, band } = circulation.shares!.ivc;
    expect(sentences[2]).toContain(formatQuantity(100 * left, "%", 0, [100 * band[0], 100 * band[1]]));
    expect(sentences.join(" ")).not.toContain("70\u202f%");
  });

  it("gives the wash-out with the shortest and the longest of its pulses, in every language, and nothing before they are known", async () => {
    const known = { ...readings, washOutSeconds: 1.72, washOutBand: [1.4, 2.2] as const };
    for (const language of LANGUAGES) {
      await setLanguage(language);
      const written = formatQuantity(1.72, "s", 1, [1.4, 2.2]);
      expect(written).toMatch(/1[.,]7\u202fs \(1[.,]4 \S+ 2[.,]2\)/);
      expect(readingOf(circulation, known).at(-1)).toContain(written);
      expect(readingOf(circulation, readings).at(-1)).not.toMatch(/\ds|\d\u202fs/);
    }
    await setLanguage("en");
  });

  it("U9 speaks units as words", () => {
    const [first] = readingOf(circulation, null, speakQuantity);
    expect(first).toContain("millimetres of mercury, between");
  });
});
