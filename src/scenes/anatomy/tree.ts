/**
 * A tree of vessels in a lung: named limbs as far as the segments, and beyond each a dichotomy into the room that is left.
 * Widths by a power law of the number of ends (exponents from 2 to 3 are measured in pulmonary arteries: Huang et al. 1996).
 */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { outlineDistance } from "../../sim/geometry/distance.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { smoothLine } from "./placing.ts";

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

/** A stem, or what leaves another limb; it passes the points `through`. */
export interface Limb {
  /** index of the limb that it leaves, and of the point there */
  readonly from?: readonly [limb: number, point: number];
  readonly through: readonly Point[];
}

/** mm of a 5-year-old: a twig's length, and the room that it keeps to the lung's edge. */
const TWIG = 7.4;
const RIM = 2;
/** How fine a tree grows: mm of a 5-year-old that a twig keeps to others, and generations of twigs, each shorter than the one before. */
interface Fineness {
  readonly room: number;
  readonly forks: number;
  /** of its length, how far ahead it must be free where it leaves a limb's side: a stub is no branch */
  readonly ahead: number;
}
const FINE: Fineness = { room: 1.7, forks: 4, ahead: 1 };
/** between vessels that have taken most of the room */
export const FINER: Fineness = { room: 1.2, forks: 5, ahead: 1.7 };
/** Steps of a limb from point to point, and of a twig. */
const STEPS = 5;
const BENDS = 3;
const SHORTER = 0.84;
/** By which the number of ends goes with the width. */
export const EXPONENT = 2;
/** Steps over which an end grows thin. */
const TAPER = 7;
/** Angles at which twigs may leave, radians: at a limb's end, and along it. */
const FORWARD = [0.35, 0.55, 0.8];
const ASIDE = [0.65, 0.9];
const BOTH = [1, -1];
/** mm of room for which a twig turns by one radian more */
const CURL = 0.9;
/** What is left of its angle where a limb's end does not divide. */
const ALONE = 0.3;

interface Bud {
  readonly x: number;
  readonly y: number;
  readonly parent: number;
}

/** Where something grows on, and in which direction (radians). */
type Tip = readonly [from: number, heading: number];

/** @param taken places that belong to other vessels */
export function growTree(
  limbs: readonly Limb[],
  outline: readonly Point[],
  width: number,
  taken: readonly Point[] = [],
  { room: apart, forks, ahead }: Fineness = FINE,
): Tree {
  const buds: Bud[] = [];
  const edge = outlineDistance(outline);

  /** mm around a place that nothing else takes, 0 where that is too little */
  const room = (x: number, y: number, from: Bud): number => {
    let least = (apart + 1) ** 2;
    for (const [tx, ty] of taken) least = Math.min(least, (tx - x) ** 2 + (ty - y) ** 2);
    for (const bud of buds)
      if (Math.abs(bud.x - from.x) + Math.abs(bud.y - from.y) > 2 * apart)
        least = Math.min(least, (bud.x - x) ** 2 + (bud.y - y) ** 2);
    return least < (apart / 1.4) ** 2 ? 0 : Math.min(Math.sqrt(least), apart - RIM - edge(x, y));
  };
  /** Bends bit by bit from the heading of what it leaves to its own. */
  const twig = (from: number, [before, heading]: readonly [number, number], length: number): Tip => {
    let parent = from;
    const step = length / BENDS;
    for (let k = 1; k <= BENDS; k++) {
      const { x, y } = entryAt(buds, parent);
      const turn = before + (heading - before) * Math.min(1, (k + 0.5) / BENDS);
      parent = buds.push({ x: x + step * Math.cos(turn), y: y + step * Math.sin(turn), parent }) - 1;
    }
    return [parent, heading];
  };
  /** A twig to each side, in the freest of some directions and rather straight on; none where all is taken. */
  const fork = ([from, heading]: Tip, length: number, angles: readonly number[], sides = BOTH): Tip[] => {
    const bud = entryAt(buds, from);
    const turns = sides.flatMap((side): number[] => {
      let [best, most] = [0, 0];
      for (const angle of angles) {
        const turn = heading + side * angle;
        const at = (part: number) =>
          room(bud.x + part * length * Math.cos(turn), bud.y + part * length * Math.sin(turn), bud);
        const found = Math.min(at(sides === BOTH ? 1 : ahead), at(1), 1.4 * at(0.6));
        const worth = found - CURL * angle;
        if (found > apart && worth > most) [best, most] = [side * angle, worth];
      }
      return most > 0 ? [best] : [];
    });
    // One that goes on alone does not curl.
    const alone = turns.length < sides.length ? ALONE : 1;
    return turns
      .map((turn) => heading + alone * turn)
      .filter((turn) => edge(bud.x + length * Math.cos(turn), bud.y + length * Math.sin(turn)) < -RIM)
      .map((turn) => twig(from, [heading, turn], length));
  };

  const places: number[][] = [];
  for (const limb of limbs) places.push(grow(buds, limb, places));
  let tips = places.map((points) => tipAt(buds, lastOf(points)));
  for (let k = 0; k < forks; k++) {
    const length = TWIG * SHORTER ** k;
    tips = tips.flatMap((tip) => fork(tip, length, FORWARD));
    if (k > 0) continue;
    // Along a limb they leave to one side and the other in turn.
    for (const points of places)
      points.slice(1, -1).forEach((at, i) => {
        for (const [more, side] of [
          [1, 1],
          [3, -1],
        ] as const)
          tips.push(...fork(tipAt(buds, at + more), length, ASIDE, [i % 2 === 0 ? side : -side]));
      });
  }
  return widened(buds, width);
}

function tipAt(buds: readonly Bud[], i: number): Tip {
  const { x, y, parent } = entryAt(buds, i);
  const before = entryAt(buds, Math.max(0, parent));
  return [i, Math.atan2(y - before.y, x - before.x)];
}

/** Adds a limb's steps; answers where the points that it passes lie among the buds. */
function grow(buds: Bud[], { from, through }: Limb, places: readonly number[][]): number[] {
  let parent = from ? entryAt(entryAt(places, from[0]), from[1]) : -1;
  const own: number[] = from ? [parent] : [];
  // A branch leaves as its stem came.
  const before = from
    ? [entryAt(buds, parent).parent, parent].map((i): Point => {
        const { x, y } = entryAt(buds, Math.max(0, i));
        return [x, y];
      })
    : [];
  const line = smoothLine([...before, ...through], STEPS).slice(from ? STEPS + 1 : 0);
  line.forEach(([x, y], i) => {
    parent = buds.push({ x, y, parent }) - 1;
    if ((i + (from ? 1 : 0)) % STEPS === 0) own.push(parent);
  });
  return own;
}

function widened(buds: readonly Bud[], width: number): Tree {
  const ends = new Float64Array(buds.length);
  // Steps to the farthest end beyond each place.
  const ahead = new Uint16Array(buds.length);
  const tips: number[] = [];
  for (let i = buds.length - 1; i >= 0; i--) {
    if (ends[i] === 0) {
      ends[i] = 1;
      tips.unshift(i);
    }
    const { parent } = entryAt(buds, i);
    if (parent < 0) continue;
    ends[parent] = entryAt(ends, parent) + entryAt(ends, i);
    ahead[parent] = Math.max(entryAt(ahead, parent), entryAt(ahead, i) + 1);
  }
  const widths: number[] = [];
  /** ends beyond the stem that each hangs on */
  const all: number[] = [];
  const nodes = buds.map(({ x, y, parent }, i) => {
    all.push(parent < 0 ? entryAt(ends, i) : entryAt(all, parent));
    const share = entryAt(ends, i) / entryAt(all, i);
    const full = width * share ** (1 / EXPONENT) * Math.min(1, (1 + entryAt(ahead, i)) / TAPER);
    const stem = parent < 0 ? width : entryAt(widths, parent);
    // Where a stem goes on it narrows bit by bit; what leaves it begins with a short funnel.
    const kept = parent >= 0 && entryAt(ends, i) > 0.5 * entryAt(ends, parent) ? NARROWS : FUNNEL;
    widths.push(parent < 0 ? width : Math.min(stem, full + kept * (stem - full)));
    return { at: [x, y] as const, parent, width: entryAt(widths, i) };
  });
  return { nodes, ends: tips };
}

/** Of what its stem is wider a step on. */
const NARROWS = 0.72;
const FUNNEL = 0.3;

/** Indices of the nodes that hang on the first stem, and of the others. */
export function stemsOf({ nodes }: Tree): readonly [number[], number[]] {
  const stemOf = (i: number): number => {
    const { parent } = entryAt(nodes, i);
    return parent < 0 ? i : stemOf(parent);
  };
  const first = stemOf(0);
  const all = [...nodes.keys()];
  return [all.filter((i) => stemOf(i) === first), all.filter((i) => stemOf(i) !== first)];
}
