/** Kind "field": from unknown input to a checked plane with its openings, or to every fault. */

import type { Fault } from "../faults.ts";
import type { FlowGeometry, Opening, Point } from "../geometry/geometry.ts";
import { type Checked, numberWithin, oneOf, recordIn, refuseUnknownKeys, shown } from "../input-checks.ts";
import { checkShapes, isPoint, LENGTH, narrowestTube } from "./shapes.ts";

/** A checked request; ranges in {@link FIELD_RANGES}. */
export interface FieldRequest {
  readonly geometry: FlowGeometry;
  /** kg/m3, mPa.s */
  readonly fluid: { readonly density: number; readonly viscosity: number };
  readonly depth: "uniform" | "round";
  /** cells across the narrowest tube or opening */
  readonly cellsAcross: number;
  /** mm */
  readonly dx: number;
  /** s of blood time */
  readonly maxSeconds: number;
  /** largest relative change, a fraction */
  readonly steadyTolerance: number;
}

const FIELD_KEYS = [
  "kind",
  "fluid",
  "solid",
  "open",
  "openings",
  "depth",
  "cellsAcross",
  "maxSeconds",
  "steadyTolerance",
] as const;

/** Ranges and defaults of the plain numbers. */
export const FIELD_RANGES = {
  density: { min: 1, max: 20000, usual: 1060, unit: "kg/m3" },
  viscosity: { min: 0.01, max: 1e5, usual: 3.5, unit: "mPa.s" },
  cellsAcross: { min: 4, max: 400, usual: 40, unit: "cells across the narrowest tube or opening" },
  maxSeconds: { min: 0.001, max: 1e5, usual: 20, unit: "s of blood time" },
  steadyTolerance: { min: 1e-9, max: 0.1, usual: 1e-5, unit: "" },
} as const;

/** What an opening may be set to; beyond it a number is taken for a typing error. */
const VELOCITY = { min: -20, max: 20, unit: "m/s" } as const;
const PRESSURE = { min: -400, max: 400, unit: "mmHg" } as const;
/** Cells of the whole grid; beyond this memory may not suffice. */
const MAX_CELLS = 3e6;

/** The request with lengths in mm, or all faults at once, each with path, what was found and what is allowed. */
export function checkField(input: Record<string, unknown>): Checked<FieldRequest> {
  const faults: Fault[] = [];
  refuseUnknownKeys(input, FIELD_KEYS, "", faults);
  const number = (name: keyof typeof FIELD_RANGES, value: unknown, path: string): number => {
    const range = FIELD_RANGES[name];
    if (value === undefined) return range.usual;
    numberWithin(value, range, path, faults);
    return value as number;
  };
  const given = (input.fluid === undefined ? undefined : recordIn(input.fluid, "fluid", faults)) ?? {};
  refuseUnknownKeys(given, ["density", "viscosity"], "fluid.", faults);
  const fluid = {
    density: number("density", given.density, "fluid.density"),
    viscosity: number("viscosity", given.viscosity, "fluid.viscosity"),
  };
  const depth =
    input.depth === undefined
      ? "uniform"
      : oneOf(input.depth, ["uniform", "round"] as const, "depth", faults);
  const cellsAcross = number("cellsAcross", input.cellsAcross, "cellsAcross");
  const maxSeconds = number("maxSeconds", input.maxSeconds, "maxSeconds");
  const steadyTolerance = number("steadyTolerance", input.steadyTolerance, "steadyTolerance");
  const open = checkShapes(input.open, "open", faults);
  if (Array.isArray(input.open) && input.open.length === 0)
    faults.push({ path: "open", found: "no shape", allowed: "one shape at least" });
  const solid = input.solid === undefined ? [] : checkShapes(input.solid, "solid", faults);
  const openings = checkOpenings(input.openings, faults);
  if (faults.length > 0 || !depth) return { faults };
  const narrowest = Math.min(narrowestTube(open), ...openings.map(({ width }) => width));
  const request: FieldRequest = {
    geometry: { open, solid, openings },
    fluid,
    depth,
    cellsAcross,
    dx: narrowest / cellsAcross,
    maxSeconds,
    steadyTolerance,
  };
  return { request };
}

/** A fault at `cellsAcross` when the whole grid would have too many cells (`count`, roughly). */
export function refuseTooMany(count: number, cellsAcross: number): Fault | undefined {
  if (count <= MAX_CELLS) return undefined;
  const allowed = Math.floor(cellsAcross * Math.sqrt(MAX_CELLS / count));
  return {
    path: "cellsAcross",
    found: `${cellsAcross}, which makes ${Math.round(count)} cells`,
    allowed: allowed >= FIELD_RANGES.cellsAcross.min ? `at most ${allowed} here` : "a smaller plane",
  };
}

function checkOpenings(input: unknown, faults: Fault[]): Opening[] {
  if (!Array.isArray(input) || input.length === 0) {
    faults.push({ path: "openings", found: shown(input), allowed: "a list of one opening at least" });
    return [];
  }
  const names = new Set<string>();
  return input.flatMap((found: unknown, n) => {
    const path = `openings[${n}]`;
    const before = faults.length;
    const each = recordIn(found, path, faults);
    if (!each) return [];
    refuseUnknownKeys(
      each,
      ["name", "centre", "normal", "width", "velocity", "pressure"],
      `${path}.`,
      faults,
    );
    const { name, centre, normal, width, velocity, pressure } = each;
    if (typeof name !== "string" || name === "")
      faults.push({ path: `${path}.name`, found: shown(name), allowed: "a word" });
    else if (names.has(name))
      faults.push({ path: `${path}.name`, found: shown(name), allowed: "a name that no other opening has" });
    else names.add(name);
    if (!isPoint(centre)) faults.push({ path: `${path}.centre`, found: shown(centre), allowed: "[x, y] mm" });
    if (!isPoint(normal) || Math.hypot(normal[0], normal[1]) < 1e-9)
      faults.push({
        path: `${path}.normal`,
        found: shown(normal),
        allowed: "[x, y], not both 0, out of the blood",
      });
    numberWithin(width, LENGTH, `${path}.width`, faults);
    if ((velocity === undefined) === (pressure === undefined))
      faults.push({
        path,
        found: velocity === undefined ? "neither velocity nor pressure" : "velocity and pressure",
        allowed: "one of velocity (m/s) and pressure (mmHg)",
      });
    if (velocity !== undefined) numberWithin(velocity, VELOCITY, `${path}.velocity`, faults);
    if (pressure !== undefined) numberWithin(pressure, PRESSURE, `${path}.pressure`, faults);
    if (faults.length > before) return [];
    const [x, y] = normal as Point;
    const length = Math.hypot(x, y);
    return [{ ...(each as unknown as Opening), normal: [x / length, y / length] as Point }];
  });
}
