/**
 * Solves the validation planes through kind "field" on 20 and on 40 cells across, both depths, and writes the differences to
 * docs/validation/field-convergence.json: `npx tsx src/cli/validation/field-convergence.ts` (half an hour; a part of a plane's name
 * as argument recomputes only those planes). validation-field.ts writes the page from it.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { VALIDATION_PLANES } from "./field-planes.ts";
import { type Gap, gapBetween, solvePlane } from "./field-run.ts";

export const GRIDS = [20, 40] as const;

export interface Convergence {
  readonly plane: string;
  readonly depth: "uniform" | "round";
  readonly gap: Gap;
  /** %, on the two grids */
  readonly audit: readonly number[];
  readonly steady: readonly boolean[];
  /** mW/m, or mW when round */
  readonly loss: readonly number[];
}

const FILE = new URL("../../../docs/validation/field-convergence.json", import.meta.url);

export function readConvergence(): readonly Convergence[] {
  try {
    return JSON.parse(readFileSync(FILE, "utf8")) as Convergence[];
  } catch {
    return [];
  }
}

const order = ({ plane, depth }: Convergence): number =>
  2 * VALIDATION_PLANES.findIndex(({ name }) => name === plane) + (depth === "round" ? 1 : 0);

async function renew(part: string): Promise<void> {
  mkdirSync(new URL(".", FILE), { recursive: true });
  for (const plane of VALIDATION_PLANES.filter(({ name }) => name.includes(part)))
    for (const depth of ["uniform", "round"] as const) {
      const coarse = await solvePlane(plane, depth, GRIDS[0]);
      const fine = await solvePlane(plane, depth, GRIDS[1]);
      const both = [coarse, fine];
      const row: Convergence = {
        plane: plane.name,
        depth,
        gap: gapBetween(coarse, fine),
        audit: both.map(({ loss }) => loss.auditPercent),
        steady: both.map(({ run }) => run.steady),
        loss: both.map(({ loss }) => loss.power),
      };
      process.stderr.write(`${plane.name}, ${depth}: ${JSON.stringify(row.gap)} ${row.steady.join(", ")}\n`);
      const others = readConvergence().filter((old) => old.plane !== row.plane || old.depth !== row.depth);
      const rows = [...others, row].sort((a, b) => order(a) - order(b));
      writeFileSync(FILE, `${JSON.stringify(rows, null, 1)}\n`);
    }
}

if (process.argv[1]?.endsWith("field-convergence.ts")) await renew(process.argv[2] ?? "");
