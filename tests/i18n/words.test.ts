import { afterEach, describe, expect, it } from "vitest";
import { messageFiles } from "../../src/i18n/files.ts";
import {
  digitsOfStep,
  direction,
  formatNumber,
  formatQuantity,
  LANGUAGES,
  languageName,
  MESSAGES,
  parseNumber,
  setLanguage,
  setTechnical,
  speakPlainly,
  speakQuantity,
  t,
} from "../../src/i18n/index.ts";
import { lengthen } from "../../src/i18n/pseudo.ts";

afterEach(() => setLanguage("en"));

describe("messages", () => {
  it("have keys that no two files of a language share", () => {
    for (const tag of LANGUAGES) {
      const keys = Object.entries(messageFiles)
        .filter(([path]) => path.startsWith(`./${tag}/`))
        .flatMap(([, messages]) => Object.keys(messages));
      expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
    }
  });

  it("are in folders whose names are language tags", () => {
    for (const tag of LANGUAGES) expect(Intl.getCanonicalLocales(tag)).toEqual([tag]);
  });

  it("come back in brackets when a key is unknown", () => {
    expect(t("no.such.key")).toBe("[no.such.key]");
  });

  it("call parts by their clinical names in the technical telling, each for a key that there is", async () => {
    await setLanguage("en");
    expect(t("energy.semilunarValve")).toBe(MESSAGES.en?.["energy.semilunarValve"]);
    setTechnical(true);
    expect(t("energy.semilunarValve")).toBe("Semilunar valve");
    expect(t("place.atrium")).toBe("Atrium");
    const end = speakPlainly();
    expect(t("energy.semilunarValve")).toBe(MESSAGES.en?.["energy.semilunarValve"]);
    end();
    expect(t("energy.semilunarValve")).toBe("Semilunar valve");
    setTechnical(false);
    for (const messages of Object.values(MESSAGES))
      for (const key of Object.keys(messages).filter((each) => each.startsWith("technical.")))
        expect(MESSAGES.en?.[key.replace("technical.", "")], key).toBeDefined();
  });

  it("fall back to the nearest language, English at last", async () => {
    expect(await setLanguage("en-GB")).toBe("en");
    expect(await setLanguage("xx")).toBe("en");
  });
});

describe("pseudo-languages", () => {
  it("U20 lengthen by 40 % and keep arguments", () => {
    expect(lengthen("Fenestration diameter").length).toBeGreaterThanOrEqual(29);
    void setLanguage("en-XA");
    expect(t("unit.mm.spoken", { value: "18", count: 18 })).toContain("18");
    expect(t("unit.mm.spoken", { value: "18", count: 18 })).not.toContain("millimetres");
  });

  it("U20 run right to left", () => {
    void setLanguage("ar-XB");
    expect(direction()).toBe("rtl");
    expect(t("unit.mm.written")).toContain("\u202e");
  });
});

describe("numbers and units", () => {
  it("carry a true minus, a thin no-break space, and as many decimals as asked", () => {
    expect(formatQuantity(-2, "mmHg", 1)).toBe("\u22122.0\u202fmmHg");
    expect(formatNumber(-0.01, 1)).toBe("0.0");
    expect(formatQuantity(0.7, "1", 2)).toBe("0.70");
  });

  it("are spoken as words with the unit", () => {
    expect(speakQuantity(18, "mm")).toBe("18 millimetres");
    expect(speakQuantity(1, "mm")).toBe("1 millimetre");
    expect(speakQuantity(1, "mm", 1)).toBe("1.0 millimetres");
  });

  it("are read with comma or point", () => {
    expect(parseNumber("17,5")).toBe(17.5);
    expect(parseNumber(" \u22123.25 ")).toBe(-3.25);
    expect(parseNumber("twelve")).toBeUndefined();
    expect(parseNumber("1.2.3")).toBeUndefined();
  });

  it("take their decimals from the step", () => {
    expect([0.5, 1, 0.01, 10].map(digitsOfStep)).toEqual([1, 0, 2, 0]);
  });

  it("name a language by its own name", () => {
    expect(languageName("es")).toBe("Español");
  });
});
