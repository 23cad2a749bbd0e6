import { expect, it } from "vitest";
import { solve } from "../../src/sim/circulation/solve.ts";
import { STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";
import { writeTable } from "../../src/ui/take-away/state-table.ts";

it("U19 the table gives each unit its UCUM code, in every stage", () => {
  for (const stage of STAGES) {
    const circulation = solve({ ...START.request, stage });
    const text = writeTable({ circulation, readings: null, link: "", date: "2026-01-01" });
    const rows = text
      .trimEnd()
      .split("\r\n")
      .map((row) => [...row.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, cell]) => cell!));
    expect(rows.length).toBeGreaterThan(40);
    expect(rows.slice(1).filter(([, , , unit, code]) => unit !== "" && code === "")).toEqual([]);
  }
});
