/** Writes docs/validation-field.md and its plots: `npx tsx src/cli/validation-field.ts` (some minutes); its convergence table from the results of validation/field-convergence.ts. */
import { mkdirSync, writeFileSync } from "node:fs";
import { entryAt, present } from "../sim/checked/present.ts";
import { MAX_WALL_SECONDS } from "../sim/compute/stopwatch.ts";
import { CAVITY_X, CAVITY_Y, solveCavity } from "../sim/flow-field/benchmark/cavity.ts";
import { solvePoiseuille, solveStep } from "../sim/flow-field/benchmark/channels.ts";
import { solveCylinder } from "../sim/flow-field/benchmark/cylinder.ts";
import { CAVITY_TABLE } from "./validation/cavity-table.ts";
import { type Convergence, GRIDS, readConvergence } from "./validation/field-convergence.ts";

/** A line for the computed values, rings for the table. */
function plot(
  at: readonly number[],
  found: readonly number[],
  table: readonly number[],
  name: string,
): string {
  const x = (value: number) => 40 + 320 * value;
  const y = (value: number) => 190 - 140 * value;
  const line = at.map((value, n) => `${x(value).toFixed(1)},${y(entryAt(found, n)).toFixed(1)}`).join(" ");
  const rings = at.map(
    (value, n) =>
      `<circle cx="${x(value).toFixed(1)}" cy="${y(entryAt(table, n)).toFixed(1)}" r="3.5" fill="none" stroke="#b00"/>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 260" font-family="sans-serif" font-size="12"><rect width="400" height="260" fill="#fff"/><path d="M40 30V250M40 190H370" stroke="#888"/><polyline points="${line}" fill="none" stroke="#06c" stroke-width="1.5"/>${rings.join("")}<text x="50" y="24">${name}: line computed, rings Ghia et al (1982)</text></svg>\n`;
}

interface Line {
  readonly name: string;
  readonly values: readonly number[];
  readonly colour: string;
}

/** Lines over cells across, both axes logarithmic; the dashed one falls with the square of the cell width. */
function plotOrder(cells: readonly number[], lines: readonly Line[]): string {
  const x = (value: number) =>
    60 + 300 * (Math.log(value / entryAt(cells, 0)) / Math.log(present(cells.at(-1)) / entryAt(cells, 0)));
  const most = Math.max(...lines.flatMap(({ values }) => values));
  const y = (value: number) => 40 + 32 * Math.log(most / value);
  const path = (values: readonly number[]) =>
    values.map((value, n) => `${x(entryAt(cells, n)).toFixed(1)},${y(value).toFixed(1)}`).join(" ");
  const drawn = lines.map(
    ({ name, values, colour }, n) =>
      `<polyline points="${path(values)}" fill="none" stroke="${colour}" stroke-width="2"/><text x="70" y="${205 + 16 * n}" fill="${colour}">${name}</text>`,
  );
  const square = path(cells.map((count) => most * (entryAt(cells, 0) / count) ** 2));
  const ticks = cells.map((count) => `<text x="${x(count) - 6}" y="256">${count}</text>`);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 260" font-family="sans-serif" font-size="12"><rect width="400" height="260" fill="#fff"/><polyline points="${square}" fill="none" stroke="#888" stroke-dasharray="4 4"/>${drawn.join("")}${ticks.join("")}<text x="60" y="20">error over cells across (dashed: second order)</text></svg>\n`;
}

/** The energy audit of each plane on the two grids, % of its loss. */
function plotAudits(rows: readonly Convergence[]): string {
  const y = (value: number) => 150 - 30 * value;
  const bars = rows.flatMap(({ audit }, n) =>
    audit.map((value, grid) => {
      const [top, foot] = [Math.min(y(value), y(0)), Math.max(y(value), y(0))];
      return `<rect x="${44 + n * 17 + 7 * grid}" y="${top.toFixed(1)}" width="6" height="${(foot - top).toFixed(1)}" fill="${grid ? "#06c" : "#b80"}"/>`;
    }),
  );
  const levels = [-3, 0, 3].map(
    (value) =>
      `<path d="M40 ${y(value)}H390" stroke="#888"/><text x="8" y="${y(value) + 4}">${value} %</text>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 260" font-family="sans-serif" font-size="12"><rect width="400" height="260" fill="#fff"/>${levels.join("")}${bars.join("")}<text x="44" y="20">energy audit, rows of the table: ${GRIDS[0]} cells ochre, ${GRIDS[1]} blue</text></svg>\n`;
}

const CELLS = [8, 16, 32];
const rows = readConvergence();
const cavity = solveCavity(100, 64);
const slots = CELLS.map((cells) => ({ cells, ...solvePoiseuille(20, cells) }));
const eddy = solveCavity(1000, 128);
const steps = [32, 64].map((cells) => ({ cells, ...solveStep(800, cells) }));
const cylinder = [40, 80].map((cells) => ({ cells, ...solveCylinder(20, cells) }));
mkdirSync("docs/validation", { recursive: true });
writeFileSync(
  "docs/validation/cavity-u.svg",
  plot(CAVITY_Y, cavity.u, CAVITY_TABLE[100].u, "u over y, Re 100"),
);
writeFileSync(
  "docs/validation/cavity-v.svg",
  plot(CAVITY_X, cavity.v, CAVITY_TABLE[100].v, "v over x, Re 100"),
);
writeFileSync(
  "docs/validation/poiseuille-order.svg",
  plotOrder(CELLS, [
    { name: "profile", values: slots.map(({ profileError }) => profileError), colour: "#06c" },
    { name: "pressure slope", values: slots.map(({ slopeError }) => Math.abs(slopeError)), colour: "#b00" },
  ]),
);
writeFileSync("docs/validation/audit.svg", plotAudits(rows));
const worst = (found: readonly number[], table: readonly number[]) =>
  Math.max(...found.map((value, n) => Math.abs(value - entryAt(table, n)))).toFixed(4);
const length = (value: number | null) => present(value).toFixed(3);
const millions = (value: number) => (value / 1e6).toFixed(0);
const percent = (value: number) => `${(100 * value).toFixed(2)} %`;
writeFileSync(
  "docs/validation-field.md",
  `# The flow field against published tables

Written by \`src/cli/validation-field.ts\`; more figures in [the field's chapter](model-field.md).

## Lid-driven cavity, Re 100, 64 cells
Greatest difference over the lid's speed: u ${worst(cavity.u, CAVITY_TABLE[100].u)}, v ${worst(cavity.v, CAVITY_TABLE[100].v)}.
Finer solutions go down to v = -0.2538 (Marchi, Suero & Araki 2009), where the table stops at ${Math.min(...CAVITY_TABLE[100].v)} and we at ${Math.min(...cavity.v).toFixed(4)}.

![u over y](validation/cavity-u.svg) ![v over x](validation/cavity-v.svg)

## Lid-driven cavity, Re 1000, 128 cells
Greatest difference over the lid's speed: u ${worst(eddy.u, CAVITY_TABLE[1000].u)}, v ${worst(eddy.v, CAVITY_TABLE[1000].v)}; steady after ${millions(eddy.updates)} million cell updates.

## Plane Poiseuille, Re 20
| cells | profile error | slope error |
|---|---|---|
${slots.map(({ cells, profileError, slopeError }) => `| ${cells} | ${percent(profileError)} | ${percent(slopeError)} |`).join("\n")}

![error over cells](validation/poiseuille-order.svg)

## Cylinder 2D-1 (Schaefer & Turek 1996)
| cells across the channel | c_D | c_L | pressure difference, Pa |
|---|---|---|---|
${cylinder.map((c) => `| ${c.cells} | ${c.dragCoefficient.toFixed(4)} | ${c.liftCoefficient.toFixed(5)} | ${c.pressureDifference.toFixed(5)} |`).join("\n")}
| published | 5.57-5.59 | 0.0104-0.0110 | 0.1172-0.1176 |

The cylinder is a quarter as wide as the channel: 40 cells across the channel are ten across it.

## Backward-facing step, Re 800 (Gartling 1990)
| cells across the channel | lower eddy ends | upper eddy begins | ends | million cell updates |
|---|---|---|---|---|
${steps.map((s) => `| ${s.cells} | ${length(s.reattachment)} | ${length(s.upperSeparation)} | ${length(s.upperReattachment)} | ${millions(s.updates)} |`).join("\n")}
| published | 6.10 | 4.85 | 10.48 | |

Channel heights from the step. A request has ${MAX_WALL_SECONDS} seconds, in which a processor core does 7,000 to 11,000 million cell updates.

## Against itself on twice as fine a grid
Invented planes through \`compute\`, ${GRIDS[0]} cells across the narrowest tube against ${GRIDS[1]}; written by \`src/cli/validation/field-convergence.ts\`.
Loss: change of the power lost. Pressure: greatest change of a difference of static or total pressure between two openings, over the
greatest such difference. Flow: greatest change at an opening, of all inflow. Share: greatest change of a share. Audit: what the energy budget
leaves open on the two grids. "Not steady": stopped by the clock, means taken.

| plane | depth | loss | pressure | flow | share | audit | |
|---|---|---|---|---|---|---|---|
${rows
  .map(
    ({ plane, depth, gap, audit, steady }) =>
      `| ${plane} | ${depth} | ${percent(gap.loss)} | ${percent(gap.pressure)} | ${percent(gap.flow)} | ${gap.share.toFixed(4)} | ${audit.map((value) => `${value.toFixed(1)} %`).join(", ")} | ${steady.every(Boolean) ? "" : `not steady on ${GRIDS.filter((_, n) => !steady[n]).join(", ")}`} |`,
  )
  .join("\n")}

![audit on two grids](validation/audit.svg)
`,
);
