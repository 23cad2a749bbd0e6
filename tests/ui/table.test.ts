import { expect, it } from "vitest";
import { solve } from "../../src/sim/circulation/solve.ts";
import { STAGES, type Stage } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";
import { writeTable } from "../../src/ui/take-away/state-table.ts";

/** Cells: section, name, value, low, high, unit, code, source. */
function rowsOf(stage: Stage) {
  const circulation = solve({ ...START.request, stage });
  const rows = writeTable({ circulation, link: "", date: "2026-01-01" })
    .trimEnd()
    .split("\r\n")
    .map((row) => [...row.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, cell]) => cell!));
  return { circulation, rows: rows.slice(1) };
}

it("U19 the table gives each unit its UCUM code, in every stage", () => {
  for (const stage of STAGES) {
    const { rows } = rowsOf(stage);
    expect(rows.length).toBeGreaterThan(40);
    expect(rows.filter(([, , , , , unit, code]) => unit !== "" && code === "")).toEqual([]);
  }
});

it("the table carries drop, loss and shares of a pathway once, each with the ends of its band", () => {
  for (const stage of STAGES) {
    const { circulation, rows } = rowsOf(stage);
    const named = (section: string) => rows.filter(([where]) => where === section);
    const banded = named("results").filter(([, , , low]) => low !== "");
    const { pathway, shares } = circulation;
    if (!pathway.band || !shares) {
      expect([...banded, ...named("shares of the blood")]).toEqual([]);
      continue;
    }
    expect(banded.map((row) => row.slice(2, 5).map(Number))).toEqual([
      [pathway.pressureDrop, ...pathway.band.pressureDrop],
      [pathway.powerLoss, ...pathway.band.powerLoss],
    ]);
    const parts = named("shares of the blood").map((row) => row.slice(2, 5).map(Number));
    expect(parts).toHaveLength(4);
    for (const [value, low, high] of parts) {
      expect(low).toBeLessThanOrEqual(value!);
      expect(high).toBeGreaterThanOrEqual(value!);
    }
    expect(parts[0]![0]).toBeCloseTo(100 * shares.ivc.left, 9);
  }
});
