/**
 * Tabulates what a settled field loses against what the handbook says, for the three pathways over offset, narrowing and flow:
 * `npx tsx src/command/coefficients.ts` writes src/sim/hydraulics/field-ratios.json. Takes several minutes; a part of
 * a row's label as argument ("lateral-tunnel offset 8") renews those rows alone.
 */
import { writeFileSync } from "node:fs";
import { BLOOD_DENSITY, bloodViscosity } from "../sim/body/blood.ts";
import { buildField } from "../sim/field/index.ts";
import { lowerVeinDrop } from "../sim/field/pressure-drop.ts";
import { pathwayGeometry } from "../sim/geometry/pathways/index.ts";
import { type FieldRatios, fieldRatios, GRID } from "../sim/hydraulics/field-ratio.ts";
import { pathwayLaw, pathwayLoss } from "../sim/hydraulics/index.ts";
import { CASES, type CirculationRequest, PATHWAY_STAGES, type PathwayStage } from "../sim/request.ts";

const BODY = CASES.caseA;
/** Enough for a loss within some per cent of a finer grid's; see docs/model-pathways.md. */
const CELLS_ACROSS = 12;
/** s of blood time: each reading's window, and after how many a field that will not settle is taken as it is */
const WINDOW = 0.6;
const MOST_WINDOWS = 8;
/** Windows at the end of an unsettled run that its mean is taken over. */
const MEANS = 4;

/** %: a field counts as settled when its energy book closes, too. */
const GOOD_AUDIT = 5;
/** %: a field whose energy book is further out says nothing about losses. */
const WORST_AUDIT = 10;

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
  // m3/s; the split of physiology values, section 2
  const flow = (index * BODY.bsa * 1e-3) / 60;
  const flows = { ivc: 0.55 * flow, svc: 0.45 * flow, left: 0.45 * flow, right: 0.55 * flow };
  const fluid = { density: BLOOD_DENSITY, viscosity: bloodViscosity(BODY.haemoglobin) * 1e3 };
  const field = buildField(pathwayGeometry(request)!, fluid, { cellsAcross: CELLS_ACROSS, depth: "round" });
  field.drive({
    period: WINDOW,
    inflow: { ivc: Float32Array.of(flows.ivc * 1e6), svc: Float32Array.of(flows.svc * 1e6) },
    split: { left: 0.45, right: 0.55 },
    outflow: {},
  });
  // What has not settled is taken as its mean over the later windows.
  let loss = 0;
  let drop = 0;
  let dissipation = 0;
  let windows = 0;
  let settled = false;
  for (let window = 1; window <= MOST_WINDOWS && !settled; window++) {
    field.advanceSeconds(WINDOW);
    const readings = field.read().readings;
    settled = readings.settled && window > 1 && Math.abs(readings.auditPercent) < GOOD_AUDIT;
    if (settled) loss = drop = dissipation = windows = 0;
    if (!settled && window <= MOST_WINDOWS - MEANS) continue;
    loss += readings.powerLoss;
    drop += lowerVeinDrop(readings)!;
    dissipation += readings.dissipation;
    windows++;
  }
  field.release();
  const handbook = pathwayLoss(pathwayLaw(request, flows), flows);
  return {
    power: loss / windows / handbook.powerLoss,
    drop: drop / windows / handbook.pressureDrop,
    auditPercent: (100 * (loss - dissipation)) / loss,
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
        const counts = Math.abs(auditPercent) <= WORST_AUDIT;
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
