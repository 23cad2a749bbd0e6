/** Writes docs/validation-field.md and its plots: `npx tsx src/command/validation-field.ts` (about a minute). */
import { mkdirSync, writeFileSync } from "node:fs";
import { CAVITY_X, CAVITY_Y, solveCavity } from "../sim/field/benchmark/cavity.ts";
import { solveCylinder, solvePoiseuille } from "../sim/field/benchmark/channels.ts";

/** Ghia, Ghia & Shin, J Comput Phys 48:387 (1982), Reynolds number 100 (figures from memory). */
const GHIA_U = [
  1, 0.84123, 0.78871, 0.73722, 0.68717, 0.23151, 0.00332, -0.13641, -0.20581, -0.2109, -0.15662, -0.1015,
  -0.06434, -0.04775, -0.04192, -0.03717, 0,
];
const GHIA_V = [
  0, -0.05906, -0.07391, -0.08864, -0.10313, -0.16914, -0.22445, -0.24533, 0.05454, 0.17527, 0.17507, 0.16077,
  0.12317, 0.1089, 0.10091, 0.09233, 0,
];

/** A line for what was computed, rings for the table. */
function plot(
  at: readonly number[],
  found: readonly number[],
  table: readonly number[],
  name: string,
): string {
  const x = (value: number) => 40 + 320 * value;
  const y = (value: number) => 190 - 140 * value;
  const line = at.map((value, n) => `${x(value).toFixed(1)},${y(found[n]!).toFixed(1)}`).join(" ");
  const rings = at.map(
    (value, n) =>
      `<circle cx="${x(value).toFixed(1)}" cy="${y(table[n]!).toFixed(1)}" r="3.5" fill="none" stroke="#b00"/>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 260" font-family="sans-serif" font-size="12"><rect width="400" height="260" fill="#fff"/><path d="M40 30V250M40 190H370" stroke="#888"/><polyline points="${line}" fill="none" stroke="#06c" stroke-width="1.5"/>${rings.join("")}<text x="50" y="24">${name}: line computed, rings Ghia et al (1982)</text></svg>\n`;
}

const cavity = solveCavity(100, 64);
const slots = [8, 16, 32].map((cells) => ({ cells, ...solvePoiseuille(20, cells) }));
const cylinder = [40, 80].map((cells) => ({ cells, ...solveCylinder(20, cells) }));
mkdirSync("docs/validation", { recursive: true });
writeFileSync("docs/validation/cavity-u.svg", plot(CAVITY_Y, cavity.u, GHIA_U, "u over y, Re 100"));
writeFileSync("docs/validation/cavity-v.svg", plot(CAVITY_X, cavity.v, GHIA_V, "v over x, Re 100"));
const worst = (found: readonly number[], table: readonly number[]) =>
  Math.max(...found.map((value, n) => Math.abs(value - table[n]!))).toFixed(4);
const percent = (value: number) => `${(100 * value).toFixed(2)} %`;
writeFileSync(
  "docs/validation-field.md",
  `# The flow field against published tables

Written by \`src/command/validation-field.ts\`; more figures in [the field's chapter](model-field.md).

## Lid-driven cavity, Re 100, 64 cells
Greatest difference over the lid's speed: u ${worst(cavity.u, GHIA_U)}, v ${worst(cavity.v, GHIA_V)}.

![u over y](validation/cavity-u.svg) ![v over x](validation/cavity-v.svg)

## Plane Poiseuille, Re 20
| cells | profile error | slope error |
|---|---|---|
${slots.map(({ cells, profileError, slopeError }) => `| ${cells} | ${percent(profileError)} | ${percent(slopeError)} |`).join("\n")}

## Cylinder 2D-1 (Schaefer & Turek 1996)
| cells across the channel | c_D | c_L | pressure difference, Pa |
|---|---|---|---|
${cylinder.map((c) => `| ${c.cells} | ${c.dragCoefficient.toFixed(4)} | ${c.liftCoefficient.toFixed(5)} | ${c.pressureDifference.toFixed(5)} |`).join("\n")}
| published | 5.57-5.59 | 0.0104-0.0110 | 0.1172-0.1176 |
`,
);
