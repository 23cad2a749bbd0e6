/** How blood enters and leaves a flow solver: given velocities with a parabola across the opening, or a given pressure that lets sound leave. */
import { seenFrom } from "../geometry/distance.ts";
import type { Opening } from "../geometry/geometry.ts";
import type { SolverArrays } from "./array-layout.ts";
import type { CutCellMesh } from "./cut-cell-mesh.ts";
import { type OpeningRule, ROUND_DRAG } from "./stencil-coefficients.ts";

/** Faces between the blood and what lies beyond, each counted positive INTO the blood. */
export interface Crossing {
  /** [n] face index, and whether it is a south face (else a west face) */
  readonly face: Int32Array;
  readonly vertical: Uint8Array;
  /** [n] dimensionless: +1 or -1, the sign of the axis velocity that enters */
  readonly into: Int8Array;
  /** [n] index of the cell in the blood beside the face, and of the one beyond */
  readonly inside: Int32Array;
  readonly outside: Int32Array;
  /** [n] cells: how far beyond the plane those two are (the first is not positive) */
  readonly insideBeyond: Float64Array;
  readonly outsideBeyond: Float64Array;
}

/** An opening on the grid, with what is held there. */
export interface SolverOpening {
  readonly opening: Opening;
  readonly rule: OpeningRule;
  readonly crossing: Crossing;
  /** faces beyond the opening (and on it where its velocity is given), and their velocity for one unit of flow (m/s per m/s times area) */
  readonly held: { readonly u: Int32Array; readonly v: Int32Array };
  readonly heldShape: { readonly u: Float64Array; readonly v: Float64Array };
  /** given pressure: the face in the blood that each held face copies; cells whose pressure is held, and their distance beyond (cells) */
  readonly repeats: { readonly u: Int32Array; readonly v: Int32Array };
  readonly cells: Int32Array;
  readonly cellBeyond: Float64Array;
  /** cells times mm: open width times depth of the crossing */
  readonly area: number;
  /** m2/s2: pressure over density asked for on the plane */
  target: number;
  /** m/s times cells times mm, into the blood: what a given velocity was last held at */
  flow: number;
  /** m/s outward: slow mean; what differs from it is sound */
  slowSpeed: number;
  /** m/s outward that is wanted, the pressure following; undefined: the pressure is held and the flow follows */
  wanted: number | undefined;
  /** m2/s2: added to the target so that the mean pressure on the plane equals it, whatever the pressure gradient of the flow */
  shift: number;
  /** m2/s2 per cell, per m/s outward: developed pressure slope of the channel that the opening cuts */
  readonly slope: number;
}

/** What an opening belongs to. */
export interface OpeningPlane {
  readonly mesh: CutCellMesh;
  readonly arrays: SolverArrays;
  /** the depth is that of round lumens */
  readonly round: boolean;
  /** m2/s */
  readonly kinematicViscosity: number;
}

/**
 * Finds the faces and cells of an opening and their shares of its flow (solver units: m/s times cells times mm).
 * @param index of the opening in the mesh's `beyond`
 */
export function layOpening(
  { mesh, arrays: a, round, kinematicViscosity }: OpeningPlane,
  opening: Opening,
  index: number,
  rule: OpeningRule,
): SolverOpening {
  const { nx, ny, beyond, west, south, dx, originX, originY } = mesh;
  const face: number[] = [];
  const vertical: number[] = [];
  const into: number[] = [];
  const inside: number[] = [];
  const outside: number[] = [];
  const held = { u: [] as number[], v: [] as number[] };
  const shape = { u: [] as number[], v: [] as number[] };
  const repeats = { u: [] as number[], v: [] as number[] };
  const cells: number[] = [];
  const cellBeyond: number[] = [];
  const [normalX, normalY] = opening.normal;
  const half = 0.5 * opening.width;
  const profile = (x: number, y: number) =>
    developed(Math.min(1, Math.abs(seenFrom(opening, x, y).across) / half), round);
  const far = (k: number) =>
    seenFrom(opening, originX + (k % nx) * dx, originY + Math.floor(k / nx) * dx).beyond / dx;
  for (let j = 1; j < ny - 1; j++)
    for (let i = 1; i < nx - 1; i++) {
      const k = j * nx + i;
      if (beyond[k] === index && (west[k]! > 0 || west[k + 1]! > 0 || south[k]! > 0 || south[k + nx]! > 0)) {
        cells.push(k);
        cellBeyond.push(far(k));
      }
      for (const isSouth of [false, true]) {
        const open = isSouth ? south[k]! : west[k]!;
        const other = isSouth ? k - nx : k - 1;
        const here = beyond[k] === index;
        const there = beyond[other] === index;
        if (open === 0 || (!here && !there)) continue;
        const x = originX + (isSouth ? i : i - 0.5) * dx;
        const y = originY + (isSouth ? j - 0.5 : j) * dx;
        const list = isSouth ? "v" : "u";
        if (here !== there) {
          face.push(k);
          vertical.push(isSouth ? 1 : 0);
          into.push(here ? -1 : 1);
          inside.push(here ? other : k);
          outside.push(here ? k : other);
        }
        if (rule === "pressure" && here !== there) continue;
        held[list].push(k);
        shape[list].push(-(isSouth ? normalY : normalX) * profile(x, y));
        if (rule === "pressure") repeats[list].push(faceInside(mesh, opening, index, { isSouth, x, y }));
      }
    }
  const crossing: Crossing = {
    face: Int32Array.from(face),
    vertical: Uint8Array.from(vertical),
    into: Int8Array.from(into),
    inside: Int32Array.from(inside),
    outside: Int32Array.from(outside),
    insideBeyond: Float64Array.from(inside, far),
    outsideBeyond: Float64Array.from(outside, far),
  };
  let area = 0;
  let flow = 0;
  face.forEach((k, n) => {
    const open = vertical[n] ? a.southArea[k]! : a.westArea[k]!;
    area += open * Math.abs(vertical[n] ? normalY : normalX);
    const x = originX + ((k % nx) - (vertical[n] ? 0 : 0.5)) * dx;
    const y = originY + (Math.floor(k / nx) - (vertical[n] ? 0.5 : 0)) * dx;
    flow += into[n]! * open * -(vertical[n] ? normalY : normalX) * profile(x, y);
  });
  // Parabola between plates: 12 nu U / w2; round: 32.
  const slope = (-(round ? 32 : 12) * kinematicViscosity * dx) / (opening.width ** 2 * 1e-3);
  const scale = flow > 0 ? 1 / flow : 0;
  return {
    opening,
    rule,
    crossing,
    held: { u: Int32Array.from(held.u), v: Int32Array.from(held.v) },
    heldShape: {
      u: Float64Array.from(shape.u, (value) => value * scale),
      v: Float64Array.from(shape.v, (value) => value * scale),
    },
    repeats: { u: Int32Array.from(repeats.u), v: Int32Array.from(repeats.v) },
    cells: Int32Array.from(cells),
    cellBeyond: Float64Array.from(cellBeyond),
    area,
    target: 0,
    flow: 0,
    slowSpeed: 0,
    wanted: undefined,
    shift: 0,
    slope,
  };
}

/** Developed profile, 0 at the wall (`part` 1): a parabola between plates; with the drag of a round lumen its cosh. */
function developed(part: number, round: boolean): number {
  if (!round) return 1 - part ** 2;
  const root = Math.sqrt(ROUND_DRAG) / 2;
  return Math.cosh(root) - Math.cosh(root * part);
}

/** The solved face on the blood's side that a face beyond the opening repeats (its mirror along the normal, moved in as far as needed). */
function faceInside(
  mesh: CutCellMesh,
  opening: Opening,
  index: number,
  { isSouth, x, y }: { readonly isSouth: boolean; readonly x: number; readonly y: number },
): number {
  const { nx, dx, originX, originY, west, south, beyond } = mesh;
  const [normalX, normalY] = opening.normal;
  const { beyond: far } = seenFrom(opening, x, y);
  // Half open at least where there is such a face, else any.
  for (const least of [0.5, 1e-9])
    for (let inward = far / dx; inward < far / dx + 3; inward += 0.25) {
      const i = Math.round((x - inward * dx * normalX - originX) / dx + (isSouth ? 0 : 0.5));
      const j = Math.round((y - inward * dx * normalY - originY) / dx + (isSouth ? 0.5 : 0));
      const k = j * nx + i;
      const open = isSouth ? south[k] : west[k];
      const other = isSouth ? k - nx : k - 1;
      if (open! >= least && !(beyond[k] === index && beyond[other] === index)) return k;
    }
  return 0;
}

/** Flow through an opening INTO the blood: m/s times cells times mm of depth. */
export function openingFlow({ crossing }: SolverOpening, a: SolverArrays): number {
  const { face, vertical, into } = crossing;
  let flow = 0;
  for (let n = 0; n < face.length; n++) {
    const k = face[n]!;
    flow += into[n]! * (vertical[n] ? a.southArea[k]! * a.v[k]! : a.westArea[k]! * a.u[k]!);
  }
  return flow;
}

/** Holds a velocity opening at `flow` (m/s times cells times mm, into the blood). */
export function holdFlow(opening: SolverOpening, flow: number, a: SolverArrays): void {
  const { held, heldShape } = opening;
  opening.flow = flow;
  for (let n = 0; n < held.u.length; n++) {
    const k = held.u[n]!;
    a.u[k] = a.uAhead[k] = a.uNext[k] = flow * heldShape.u[n]!;
  }
  for (let n = 0; n < held.v.length; n++) {
    const k = held.v[n]!;
    a.v[k] = a.vAhead[k] = a.vNext[k] = flow * heldShape.v[n]!;
  }
}
