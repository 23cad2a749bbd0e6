import { describe, expect, it } from "vitest";
import { appendChange, changeOf, setLanguage, writeChange } from "../../src/i18n/index.ts";

setLanguage("en");

describe("what a change has done to a number", () => {
  it("is the difference of the numbers as they are shown", () => {
    // 12.64 and 12.96 differ by 0.32, but whoever reads 12.6 and 13.0 finds 0.4.
    expect(changeOf(12.64, 12.96, 1)).toEqual({ from: 12.6, to: 13, by: 0.4 });
    expect(writeChange(changeOf(12.64, 12.96, 1)!, "mmHg", 1)).toBe("12.6 → 13.0\u202fmmHg, +0.4");
    expect(writeChange(changeOf(13, 12.64, 1)!, "mmHg", 1)).toBe("13.0 → 12.6\u202fmmHg, \u22120.4");
  });

  it("is none below the last digit", () => {
    expect(writeChange(changeOf(12.61, 12.64, 1)!, "mmHg", 1)).toBe("no change");
    expect(appendChange("12.6", 12.61, 12.64, 1)).toBe("12.6");
    expect(appendChange("12.6", 12.4, 12.64, 1)).toBe("12.6  +0.2");
  });

  it("cannot be told while one of the two is not known", () => {
    expect(changeOf(null, 12, 1)).toBeNull();
    expect(changeOf(12, null, 1)).toBeNull();
    expect(appendChange("12.6", undefined, 12.6, 1)).toBe("12.6");
  });
});
