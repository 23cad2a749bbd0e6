/**
 * Tabulates what a settled field loses over what the handbook gives, for the three pathways over offset, narrowing and flow:
 * `npx tsx src/cli/field-ratios.ts` writes src/sim/hydraulics/field-ratios.json and the table of docs/model-pathways.md. Takes several minutes; a part of
 * a row's label as argument ("lateral-tunnel offset 8") recomputes only those rows.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { BLOOD_DENSITY, bloodViscosity } from "../sim/body/blood.ts";
import { MAX_OPEN } from "../sim/flow-field/energy-book.ts";
import { buildField } from "../sim/flow-field/index.ts";
import { lowerVeinDrop } from "../sim/flow-field/pressure-drop.ts";
import { pathwayGeometry } from "../sim/geometry/pathways/index.ts";
import { type FieldRatios, fieldRatios, GRID } from "../sim/hydraulics/field-ratio.ts";
import { pathwayLaw, pathwayLoss } from "../sim/hydraulics/index.ts";
import {
  CASES,
  type CirculationRequest,
  PATHWAY_STAGES,
  type PathwayStage,
} from "../sim/parameters/request.ts";
import { RATIO_TABLE, ratioTable } from "./validation/ratio-table.ts";

const BODY = CASES.caseA;
/** Cells across: enough for a loss within some per cent of a finer grid's; see docs/model-pathways.md. */
const CELLS_ACROSS = 12;
/** s of blood time: each reading's window, and the time after which a field that does not settle is read as it is */
const WINDOW = 0.6;
const MAX_WINDOWS = 24;
/** %: a field counts as settled only when its energy budget closes too. */
const GOOD_AUDIT = 5;

interface Run {
  readonly power: number;
  readonly drop: number;
  readonly auditPercent: number;
  readonly settled: boolean;
}

function run(stage: PathwayStage, cavalOffset: number, pathwayNarrowing: number, index: number): Run {
  const set: CirculationRequest["set"] =
    stage === "atriopulmonary" ? { cavalOffset } : { cavalOffset, pathwayNarrowing };
  const request: CirculationRequest = {
    kind: "circulation",
    stage,
    body: BODY,
    volumeRule: "hold-output",
    set,
  };
  // m3/s; split as in physiology values, section 2 (docs/constants-from-memory.md)
  const flow = (index * BODY.bsa * 1e-3) / 60;
  const flows = { ivc: 0.55 * flow, svc: 0.45 * flow, left: 0.45 * flow, right: 0.55 * flow };
  const fluid = { density: BLOOD_DENSITY, viscosity: bloodViscosity(BODY.haemoglobin) * 1e3 };
  const field = buildField(pathwayGeometry(request)!, fluid, { cellsAcross: CELLS_ACROSS, depth: "round" });
  field.setBoundary({
    period: WINDOW,
    inflow: { ivc: Float32Array.of(flows.ivc * 1e6), svc: Float32Array.of(flows.svc * 1e6) },
    split: { left: 0.45, right: 0.55 },
    outflow: {},
  });
  let readings = field.read().readings;
  let settled = false;
  for (let window = 1; window <= MAX_WINDOWS && !settled; window++) {
    field.advanceSeconds(WINDOW);
    readings = field.read().readings;
    settled = readings.settled && Math.abs(readings.auditPercent) < GOOD_AUDIT;
  }
  field.release();
  const handbook = pathwayLoss(pathwayLaw(request, flows), flows);
  return {
    power: readings.powerLoss / handbook.powerLoss,
    drop: lowerVeinDrop(readings)! / handbook.pressureDrop,
    auditPercent: readings.auditPercent,
    settled,
  };
}

const round = (value: number): number => Math.round(value * 1e3) / 1e3;

const part = process.argv[2] ?? "";
const powers: Record<string, (number | null)[]> = {};
const drops: Record<string, (number | null)[]> = {};
const audits: Record<string, number[]> = {};
for (const stage of PATHWAY_STAGES) {
  powers[stage] = [];
  drops[stage] = [];
  audits[stage] = [];
  for (const offset of GRID.cavalOffset) {
    for (const narrowing of stage === "atriopulmonary" ? [0] : GRID.pathwayNarrowing) {
      for (const index of GRID.index) {
        const label = `${stage} offset ${offset} narrowing ${narrowing} index ${index}`;
        const at = powers[stage].length;
        if (!label.includes(part)) {
          powers[stage].push(fieldRatios.powers[stage]![at]!);
          drops[stage].push(fieldRatios.drops[stage]![at]!);
          audits[stage].push(fieldRatios.audits[stage]![at]!);
          continue;
        }
        const { power, drop, auditPercent, settled } = run(stage, offset, narrowing, index);
        const counts = Math.abs(auditPercent) <= MAX_OPEN;
        powers[stage].push(counts ? round(power) : null);
        drops[stage].push(counts ? round(drop) : null);
        audits[stage].push(round(auditPercent));
        process.stderr.write(
          `${label}: power ${round(power)}, drop ${round(drop)}, audit ${round(auditPercent)} %${settled ? "" : ", not settled"}\n`,
        );
      }
    }
  }
}
const table: FieldRatios = { ...GRID, cellsAcross: CELLS_ACROSS, powers, drops, audits };
writeFileSync(
  new URL("../sim/hydraulics/field-ratios.json", import.meta.url),
  `${JSON.stringify(table, null, 2)}\n`,
);
const page = new URL("../../docs/model-pathways.md", import.meta.url);
writeFileSync(page, readFileSync(page, "utf8").replace(RATIO_TABLE, ratioTable(table)));
