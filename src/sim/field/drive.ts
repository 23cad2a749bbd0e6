/** Puts a drive's moment onto a lattice's openings. */
import type { Opening } from "../geometry/geometry.ts";
import type { OpeningRule } from "../lattice/coefficients.ts";
import type { Lattice } from "../lattice/lattice.ts";
import { holdFlow, type LatticeOpening } from "../lattice/openings.ts";
import { fromMillilitre, fromMmHg } from "../units.ts";
import type { FieldDrive } from "./flow-field.ts";
import { flowUnit } from "./measure.ts";

/** Whether an opening's velocity or its pressure is given: by the drive where it names the opening, else by the geometry. */
export function openingRule(opening: Opening, drive: FieldDrive | undefined): OpeningRule {
  if (drive && opening.name in drive.inflow) return "velocity";
  // What leaves finds its own profile: the pressure follows the flow that is asked for.
  if (drive && (opening.name in drive.split || opening.name in drive.outflow)) return "pressure";
  return opening.velocity !== undefined ? "velocity" : "pressure";
}

/** A sample of a repeating wave, linear in between. */
function waveAt(wave: Float32Array, turns: number): number {
  const place = (turns - Math.floor(turns)) * wave.length;
  const index = Math.min(wave.length - 1, Math.floor(place));
  const share = place - index;
  return wave[index]! * (1 - share) + wave[(index + 1) % wave.length]! * share;
}

/** mL/s (m2/s with uniform depth) to the lattice's unit. */
const latticeFlow = (lattice: Lattice, flow: number): number =>
  (lattice.choice.depth === "round" ? fromMillilitre(flow) : flow) / flowUnit(lattice);

/** Sets flows and wanted outflows at `time` (s). Without a drive the geometry's own velocities and pressures stand. */
export function applyDrive(lattice: Lattice, drive: FieldDrive, time: number): void {
  const turns = drive.period > 0 ? time / drive.period : 0;
  let leaving = 0;
  for (const opening of lattice.openings) {
    const { name } = opening.opening;
    const inflow = drive.inflow[name];
    const outflow = drive.outflow[name];
    if (inflow && opening.rule === "velocity") {
      const flow = latticeFlow(lattice, waveAt(inflow, turns));
      leaving += flow;
      holdFlow(opening, flow, lattice.arrays);
    } else if (outflow) {
      const flow = latticeFlow(lattice, waveAt(outflow, turns));
      leaving -= flow;
      opening.wanted = flow / opening.area;
    }
  }
  for (const opening of lattice.openings) {
    const part = drive.split[opening.opening.name];
    if (part !== undefined && opening.rule === "pressure") opening.wanted = (part * leaving) / opening.area;
  }
}

/** Holds what the geometry itself gives: mean velocity (m/s) or pressure (mmHg). `density` kg/m3. */
export function applyGiven(lattice: Lattice, density: number): void {
  for (const opening of lattice.openings) {
    const { velocity, pressure } = opening.opening;
    if (opening.rule === "velocity")
      holdFlow(opening, (velocity ?? 0) * fullArea(lattice, opening), lattice.arrays);
    else opening.target = fromMmHg(pressure ?? 0) / density;
  }
}

/** Open area that a mean velocity is given for: width, or the round lumen of that width (cells times depth unit). */
function fullArea(lattice: Lattice, { opening }: LatticeOpening): number {
  const across = opening.width / lattice.raster.cell;
  return lattice.choice.depth === "round" ? (across * Math.PI * opening.width) / 4 : across;
}

/** m/s: the fastest blood that a drive sends through any opening, in the middle of its parabola. */
export function driveSpeed(lattice: Lattice, drive: FieldDrive): number {
  let fastest = 0;
  for (const opening of lattice.openings) {
    const wave = drive.inflow[opening.opening.name] ?? drive.outflow[opening.opening.name];
    if (!wave) continue;
    const most = wave.reduce((peak, flow) => Math.max(peak, Math.abs(flow)), 0);
    fastest = Math.max(fastest, (1.5 * latticeFlow(lattice, most)) / fullArea(lattice, opening));
  }
  return fastest;
}
