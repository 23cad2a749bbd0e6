import { describe, expect, it, vi } from "vitest";
import { counted, countsTable, readCounts } from "../../../src/modes/kiosk/counts.ts";
import { minutesAndSeconds } from "../../../src/modes/lecture/speaker/clock.tsx";

describe("counts of use", () => {
  it("are by day and lesson, and make a table", () => {
    const once = counted({}, "2026-11-25", "03-pathways");
    const twice = counted(counted(once, "2026-11-25", "03-pathways"), "2026-11-26", "04-energy-loss");
    expect(twice).toEqual({ "2026-11-25": { "03-pathways": 2 }, "2026-11-26": { "04-energy-loss": 1 } });
    expect(countsTable(twice, (lesson) => lesson.toUpperCase())).toBe(
      "Day,Lesson,Times\r\n2026-11-25,03-PATHWAYS,2\r\n2026-11-26,04-ENERGY-LOSS,1\r\n",
    );
  });

  it("are none where something else stands in their place", () => {
    try {
      for (const found of ["null", "7", "[1]", '{"2026-11-25":null}', '{"2026-11-25":{"a":"often"}}', "{"]) {
        vi.stubGlobal("localStorage", { getItem: () => found });
        expect(readCounts(), found).toEqual({});
      }
    } finally {
      vi.unstubAllGlobals();
    }
  });
});

describe("the speaker's clock", () => {
  it("shows minutes and seconds, with a true minus past the end", () => {
    expect([0, 59.9, 61, 3600, -75].map(minutesAndSeconds)).toEqual([
      "0:00",
      "0:59",
      "1:01",
      "60:00",
      "\u22121:15",
    ]);
  });
});
