/**
 * Lines of flow through the lattice's own face flows. Within a cell each velocity is linear between its faces, so a line is followed
 * exactly (Pollock 1988): it never crosses a wall and carries its flow unchanged from opening to opening.
 */
import type { Lattice } from "../lattice/lattice.ts";

/** Cells that a line may pass before it counts as caught in an eddy. */
const PATIENCE = 12;

/** The opening that the line through (x, y) in cell `cell` reaches, forward (+1) or backward (-1) in time; -1 when caught. x, y in 0..1. */
function follow(lattice: Lattice, cell: number, x: number, y: number, direction: 1 | -1): number {
  const { nx, ny, beyond } = lattice.raster;
  const { u, v, westArea, southArea } = lattice.arrays;
  const limit = PATIENCE * (nx + ny);
  let k = cell;
  let px = x;
  let py = y;
  for (let n = 0; n < limit; n++) {
    if (beyond[k]! >= 0) return beyond[k]!;
    const w = direction * westArea[k]! * u[k]!;
    const e = direction * westArea[k + 1]! * u[k + 1]!;
    const s = direction * southArea[k]! * v[k]!;
    const t = direction * southArea[k + nx]! * v[k + nx]!;
    const tx = crossingTime(w, e, px);
    const ty = crossingTime(s, t, py);
    if (tx === Infinity && ty === Infinity) return -1;
    if (tx < ty) {
      const right = w + (e - w) * px > 0;
      py = moved(s, t, py, tx);
      px = right ? 0 : 1;
      k += right ? 1 : -1;
    } else {
      const up = s + (t - s) * py > 0;
      px = moved(w, e, px, ty);
      py = up ? 0 : 1;
      k += up ? nx : -nx;
    }
  }
  return -1;
}

/** Time until the face that the flow heads for; Infinity when it never gets there. `a`, `b`: flow at 0 and at 1. */
function crossingTime(a: number, b: number, at: number): number {
  const here = a + (b - a) * at;
  const goal = here > 0 ? b : a;
  if (here === 0 || goal * here <= 0) return Infinity;
  const change = b - a;
  if (Math.abs(change) < 1e-9 * Math.abs(here)) return ((here > 0 ? 1 : 0) - at) / here;
  return Math.log(goal / here) / change;
}

function moved(a: number, b: number, at: number, time: number): number {
  const change = b - a;
  const here = a + change * at;
  const grown = Math.abs(change * time) < 1e-9 ? here * time : (here * Math.expm1(change * time)) / change;
  return Math.min(1, Math.max(0, at + grown));
}

/** from opening -> to opening -> fraction of the flow that enters there (by lines of equal flow in the present field). */
export function flowShares(lattice: Lattice, lines = 200): Record<string, Record<string, number>> {
  const { openings, arrays } = lattice;
  const shares: Record<string, Record<string, number>> = {};
  for (const { opening, crossing } of openings) {
    const { face, vertical, into, inside } = crossing;
    const entering = Array.from(face, (k, n) =>
      Math.max(
        0,
        into[n]! * (vertical[n] ? arrays.southArea[k]! * arrays.v[k]! : arrays.westArea[k]! * arrays.u[k]!),
      ),
    );
    const leaving = Array.from(face, (k, n) =>
      Math.max(
        0,
        -into[n]! * (vertical[n] ? arrays.southArea[k]! * arrays.v[k]! : arrays.westArea[k]! * arrays.u[k]!),
      ),
    );
    const total = entering.reduce((sum, flow) => sum + flow, 0);
    const out = leaving.reduce((sum, flow) => sum + flow, 0);
    if (total <= out) continue;
    const to: Record<string, number> = {};
    let caught = 0;
    entering.forEach((flow, n) => {
      const count = Math.ceil((flow / total) * lines);
      for (let m = 0; m < count; m++) {
        const along = (m + 0.5) / count;
        const first = into[n]! > 0 ? 0 : 1;
        const end = vertical[n]
          ? follow(lattice, inside[n]!, along, first, 1)
          : follow(lattice, inside[n]!, first, along, 1);
        const part = flow / total / count;
        if (end < 0) caught += part;
        else {
          const name = openings[end]!.opening.name;
          to[name] = (to[name] ?? 0) + part;
        }
      }
    });
    // Lines caught at a stagnation point stand for no flow of their own.
    for (const name of Object.keys(to)) to[name]! /= Math.max(1e-12, 1 - caught);
    shares[opening.name] = to;
  }
  return shares;
}

/**
 * Fraction of the blood's area whose line, followed backward, comes from no opening: closed eddies. `stride` skips cells for speed.
 */
export function recirculatingArea(lattice: Lattice, stride = 1): number {
  const { nx, ny, area, beyond } = lattice.raster;
  let all = 0;
  let caught = 0;
  for (let j = 2; j < ny - 2; j += stride)
    for (let i = 2; i < nx - 2; i += stride) {
      const k = j * nx + i;
      if (area[k] === 0 || beyond[k]! >= 0) continue;
      all += area[k]!;
      if (follow(lattice, k, 0.5, 0.5, -1) < 0) caught += area[k]!;
    }
  return all > 0 ? caught / all : 0;
}
