import { describe, expect, it } from "vitest";
import { checkSettings, DEFAULTS, largerType } from "../../src/modes/kiosk/organiser-settings.ts";

describe("the organiser's settings", () => {
  it("are valid whatever the storage contains", () => {
    for (const found of [null, 7, "x", [], { idle: -1, code: "abc", languages: [3, "es"], counting: "yes" }])
      expect(checkSettings(found)).toMatchObject({ idle: 60, code: "2468", counting: false });
    expect(checkSettings({ languages: [3, "es"] }).languages).toEqual(["es"]);
    expect(checkSettings({ ...DEFAULTS, idle: 120 }).idle).toBe(120);
  });

  // EN 301 549 V3.2.1, 5.1.4; the two examples of the user notes: 24 inch at 1080 x 1920 from 600 mm: about 40 px; 55 inch from 1 m: about 29 px.
  it("U15 size the larger words by the distance", () => {
    expect(Math.abs(largerType({ diagonal: 24, distance: 600 }, 1080, 1920) - 40)).toBeLessThanOrEqual(1);
    expect(Math.abs(largerType({ diagonal: 55, distance: 1000 }, 1080, 1920) - 29)).toBeLessThanOrEqual(1);
  });
});
