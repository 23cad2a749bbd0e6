import { expect, test } from "vitest";
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { buildField } from "../../src/sim/flow-field/index.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";
import { figuresOf } from "../../src/ui/figures.ts";

/** Readings of a live field twice in each breath, from rest on. */
function readingsOf(set: CirculationRequest["set"]) {
  const request = { ...START.request, stage: "lateral-tunnel" as const, set };
  const circulation = solve(request);
  const geometry = pathwayGeometry(request)!;
  const field = buildField(geometry, fluidOf(request), { cellsAcross: 6, depth: "round" });
  const leaks = geometry.openings.some(({ name }) => name === "fenestration");
  const drive = boundaryConditions(circulation, circulation, leaks);
  field.setBoundary(drive);
  return Array.from({ length: 7 }, () => {
    field.advanceSeconds(drive.period / 2);
    const { readings } = field.read();
    const shown = figuresOf(circulation, readings).filter(({ source }) => source === "field");
    return { ...readings, shown: shown.map(({ value }) => value), note: shown[1]!.note };
  });
}

test.each([
  ["a closed wall", {}],
  ["an open fenestration", { fenestrationDiameter: 4 }],
] as const)(
  "a live field with %s shows a loss only once it has settled with its energy budget closed",
  (_, set) => {
    const all = readingsOf(set);
    for (const { settled, auditPercent, powerLoss, shown, note } of all) {
      const closed = settled && Math.abs(auditPercent) <= 10;
      expect(shown[1]).toBe(closed ? powerLoss : null);
      expect(shown[0] === null).toBe(!closed);
      expect(note).toBe(closed ? undefined : `figure.note.${settled ? "open" : "settling"}`);
    }
    expect(all[0]!.note).toBe("figure.note.settling");
    expect(all.some(({ auditPercent }) => Math.abs(auditPercent) > 10)).toBe(true);
    expect(all.at(-1)!.settled).toBe(true);
  },
  120_000,
);
