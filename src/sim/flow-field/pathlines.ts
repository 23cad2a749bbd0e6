/**
 * Lines of flow through the solver's own face flows. Within a cell each velocity is linear between its faces, so a line is followed
 * exactly (Pollock 1988): it never crosses a wall and carries its flow unchanged from opening to opening.
 */
import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import type { SolverOpening } from "../flow-solver/openings.ts";

/** A line that passes more cells than this many times (nx + ny) counts as caught in an eddy. */
const PATIENCE = 12;

/** A position in a cell: `cell` is its index, x and y run from 0 to 1 from its lower left corner. */
export interface Place {
  cell: number;
  x: number;
  y: number;
}

/** What became of a line that reached no opening. */
const CAUGHT = -1;

/** Answer of {@link follow}: the time was over before an opening was reached. */
export const UNDER_WAY = -2;

/**
 * Moves `place` along its line, forward (+1) or backward (-1), for at most `seconds`.
 * @returns index of the opening that it reached; UNDER_WAY; or CAUGHT, when it met a stagnation point or circled in an eddy
 */
export function follow(solver: FlowSolver, place: Place, direction: 1 | -1, seconds = Infinity): number {
  const { nx, ny, beyond, area, depth, dx } = solver.mesh;
  const { u, v, westArea, southArea } = solver.arrays;
  const limit = PATIENCE * (nx + ny);
  let left = seconds;
  for (let n = 0; n < limit; n++) {
    const k = place.cell;
    if (beyond[k]! >= 0) return beyond[k]!;
    const w = direction * westArea[k]! * u[k]!;
    const e = direction * westArea[k + 1]! * u[k + 1]!;
    const s = direction * southArea[k]! * v[k]!;
    const t = direction * southArea[k + nx]! * v[k + nx]!;
    const tx = crossingTime(w, e, place.x);
    const ty = crossingTime(s, t, place.y);
    // s for which a flow of one passes through the cell
    const fill = area[k]! * depth[k]! * dx * 1e-3;
    if (Math.min(tx, ty) * fill >= left) {
      place.x = moved(w, e, place.x, left / fill);
      place.y = moved(s, t, place.y, left / fill);
      return UNDER_WAY;
    }
    if (tx === Infinity && ty === Infinity) return CAUGHT;
    left -= Math.min(tx, ty) * fill;
    if (tx < ty) {
      const right = w + (e - w) * place.x > 0;
      place.y = moved(s, t, place.y, tx);
      place.x = right ? 0 : 1;
      place.cell += right ? 1 : -1;
    } else {
      const up = s + (t - s) * place.y > 0;
      place.x = moved(w, e, place.x, ty);
      place.y = up ? 0 : 1;
      place.cell += up ? nx : -nx;
    }
  }
  return CAUGHT;
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

/**
 * Flow into the blood through each face of an opening now (solver units: m/s times cells times depth), and whether the opening takes in
 * more than it lets out.
 */
export function entering(
  { arrays }: FlowSolver,
  { crossing }: SolverOpening,
): { flows: number[]; takesIn: boolean } {
  const { face, vertical, into } = crossing;
  const { u, v, westArea, southArea } = arrays;
  const through = Array.from(
    face,
    (k, n) => into[n]! * (vertical[n] ? southArea[k]! * v[k]! : westArea[k]! * u[k]!),
  );
  return {
    flows: through.map((flow) => Math.max(0, flow)),
    takesIn: through.reduce((sum, flow) => sum + flow, 0) > 0,
  };
}

/** The position on face `n` (index) of an opening, `along` it from 0 to 1. */
export function onFace({ crossing }: SolverOpening, n: number, along: number): Place {
  const first = crossing.into[n]! > 0 ? 0 : 1;
  return crossing.vertical[n]
    ? { cell: crossing.inside[n]!, x: along, y: first }
    : { cell: crossing.inside[n]!, x: first, y: along };
}

/**
 * from opening -> to opening -> fraction of the flow that enters there, by lines of equal flow in the present field: valid for steady flow.
 * @param lines count for each opening
 */
export function flowShares(solver: FlowSolver, lines = 200): Record<string, Record<string, number>> {
  // Without prototypes: an opening may have any name.
  const shares: Record<string, Record<string, number>> = Object.create(null);
  for (const opening of solver.openings) {
    const { flows, takesIn } = entering(solver, opening);
    if (!takesIn) continue;
    const total = flows.reduce((sum, flow) => sum + flow, 0);
    const to: Record<string, number> = Object.create(null);
    let caught = 0;
    flows.forEach((flow, n) => {
      const count = Math.ceil((flow / total) * lines);
      for (let m = 0; m < count; m++) {
        const end = follow(solver, onFace(opening, n, (m + 0.5) / count), 1);
        const part = flow / total / count;
        if (end < 0) caught += part;
        else {
          const { name } = solver.openings[end]!.opening;
          to[name] = (to[name] ?? 0) + part;
        }
      }
    });
    // Lines caught at a stagnation point carry no flow.
    for (const name of Object.keys(to)) to[name]! /= Math.max(1e-12, 1 - caught);
    shares[opening.opening.name] = to;
  }
  return shares;
}
