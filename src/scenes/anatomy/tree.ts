/**
 * A tree of vessels that fills an outline: space colonisation (Runions, Lane & Prusinkiewicz 2007) towards evenly spread
 * points, with widths by a power law of the number of ends (exponents from 2 to 3 are measured in pulmonary arteries: Huang et al. 1996).
 */
import { entryAt } from "../../sim/checked/present.ts";
import { planeDistance } from "../../sim/geometry/distance.ts";
import type { Point } from "../../sim/geometry/geometry.ts";

interface Node {
  readonly at: Point;
  /** index of the node before; -1 at a root */
  readonly parent: number;
  /** mm */
  readonly width: number;
}

export interface Tree {
  readonly nodes: readonly Node[];
  /** indices of nodes from which nothing goes on */
  readonly ends: readonly number[];
}

interface Growth {
  /** mm at a root */
  readonly width: number;
  /** first index of the points' sequence: two trees in one lung fill different places */
  readonly seed: number;
}

/** mm of a 5-year-old: a step, the reach within which a point is taken, the room kept to the lung's edge. */
const STEP = 2.4;
const TAKEN = 3.4;
const RIM = 3.2;
/** how many points a tree grows to */
const POINTS = 150;
const EXPONENT = 2.2;
const ROUNDS = 160;
/** A twig grows thinner over its last steps. */
const taper = (steps: number): number => Math.min(1, 0.4 + 0.15 * steps);

interface Bud {
  x: number;
  y: number;
  parent: number;
}

/** @param roots where each stem begins and a place that it passes */
export function growTree(
  roots: readonly (readonly [Point, Point])[],
  outline: readonly Point[],
  { width, seed }: Growth,
): Tree {
  const buds: Bud[] = [];
  for (const [from, to] of roots) {
    buds.push({ x: from[0], y: from[1], parent: -1 }, { x: to[0], y: to[1], parent: buds.length });
  }
  let goals = spreadIn(outline, RIM, seed);
  for (let round = 0; round < ROUNDS && goals.length > 0; round++) {
    const before = buds.length;
    reach(buds, goals, STEP);
    const fresh = buds.slice(before);
    const taken = TAKEN ** 2;
    goals = goals.filter(([x, y]) => fresh.every((bud) => (bud.x - x) ** 2 + (bud.y - y) ** 2 > taken));
    if (buds.length === before) break;
  }
  return widened(smoothed(pruned(buds)), width, roots.length);
}

/** Without twigs of a single step, which would be knobs. */
function pruned(buds: readonly Bud[]): readonly Bud[] {
  const on = new Uint16Array(buds.length);
  for (const { parent } of buds) if (parent >= 0) on[parent] = entryAt(on, parent) + 1;
  const kept = buds.map(({ parent }, i) => on[i] !== 0 || parent < 0 || on[parent] === 1);
  const place = new Int32Array(buds.length);
  let count = 0;
  kept.forEach((keep, i) => {
    place[i] = keep ? count++ : -1;
  });
  return buds
    .filter((_, i) => kept[i])
    .map((bud) => ({ ...bud, parent: bud.parent < 0 ? -1 : entryAt(place, bud.parent) }));
}

/** Each bud that is the nearest of some points grows one step towards their mean direction. */
function reach(buds: Bud[], goals: readonly Point[], step: number): void {
  const pull = new Map<number, [number, number]>();
  for (const [x, y] of goals) {
    let nearest = -1;
    let least = Number.POSITIVE_INFINITY;
    buds.forEach((bud, i) => {
      // A stem's beginning lies in the vessel that it goes on from: no branch leaves it there.
      if (bud.parent < 0) return;
      const away = (bud.x - x) ** 2 + (bud.y - y) ** 2;
      if (away < least) [nearest, least] = [i, away];
    });
    const bud = entryAt(buds, nearest);
    const far = Math.sqrt(least) || 1;
    const sum = pull.get(nearest) ?? [0, 0];
    pull.set(nearest, [sum[0] + (x - bud.x) / far, sum[1] + (y - bud.y) / far]);
  }
  for (const [parent, [dx, dy]] of pull) {
    const bud = entryAt(buds, parent);
    const length = Math.hypot(dx, dy);
    if (length < 1e-6) continue;
    const next = { x: bud.x + (step * dx) / length, y: bud.y + (step * dy) / length, parent };
    // Two points that pull to either side would grow the same step for ever.
    if (buds.some((other) => Math.hypot(other.x - next.x, other.y - next.y) < 0.2 * step)) continue;
    buds.push(next);
  }
}

/** Points spread evenly over the outline's inside, by the Halton sequence. */
function spreadIn(outline: readonly Point[], rim: number, seed: number): Point[] {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const distance = planeDistance({ open: [{ polygon: { points: outline } }], solid: [], openings: [] }, 0);
  const points: Point[] = [];
  for (let i = seed; points.length < POINTS && i < seed + 12 * POINTS; i++) {
    const point: Point = [left + (right - left) * halton(i, 2), low + (high - low) * halton(i, 3)];
    if (distance(...point) < -rim) points.push(point);
  }
  return points;
}

function halton(index: number, base: number): number {
  let [value, part] = [0, 1 / base];
  for (let i = index; i > 0; i = Math.floor(i / base)) {
    value += (i % base) * part;
    part /= base;
  }
  return value;
}

/** Corners of single steps are drawn towards the line of what comes before and after. */
function smoothed(buds: readonly Bud[]): readonly Bud[] {
  let line = buds;
  for (let pass = 0; pass < 3; pass++) {
    const after = new Map<number, number>();
    line.forEach(({ parent }, i) => {
      if (parent >= 0 && !after.has(parent)) after.set(parent, i);
    });
    line = line.map((bud, i) => {
      const next = after.get(i);
      if (bud.parent < 0 || next === undefined) return bud;
      const [p, n] = [entryAt(line, bud.parent), entryAt(line, next)];
      return { ...bud, x: bud.x / 2 + (p.x + n.x) / 4, y: bud.y / 2 + (p.y + n.y) / 4 };
    });
  }
  return line;
}

function widened(buds: readonly Bud[], width: number, roots: number): Tree {
  const ends = new Float64Array(buds.length);
  const on = new Uint8Array(buds.length);
  for (const { parent } of buds) if (parent >= 0) on[parent] = 1;
  for (let i = buds.length - 1; i >= 0; i--) {
    if (!on[i]) ends[i] = 1;
    const { parent } = entryAt(buds, i);
    if (parent >= 0) ends[parent] = entryAt(ends, parent) + entryAt(ends, i);
  }
  // Steps to the farthest end beyond each place.
  const ahead = new Uint16Array(buds.length);
  for (let i = buds.length - 1; i >= 0; i--) {
    const { parent } = entryAt(buds, i);
    if (parent >= 0) ahead[parent] = Math.max(entryAt(ahead, parent), entryAt(ahead, i) + 1);
  }
  const all = buds.reduce((sum, { parent }, i) => sum + (parent < 0 ? entryAt(ends, i) : 0), 0) / roots;
  const nodes = buds.map(({ x, y, parent }, i) => ({
    at: [x, y] as const,
    parent,
    width: width * Math.min(1, entryAt(ends, i) / all) ** (1 / EXPONENT) * taper(entryAt(ahead, i)),
  }));
  return { nodes, ends: nodes.flatMap((_, i) => (on[i] ? [] : [i])) };
}
