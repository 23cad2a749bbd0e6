/** The four valves of a heart with two ventricles: leaflets in section with the one behind them, and cords to the papillary muscles. */
import type { Graphics } from "pixi.js";
import { entryAt, lastOf } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { type Tissue, tissue } from "../../anatomy/tones.ts";
import { spots } from "../../drawing/curve-drawing.ts";
import type { Theme } from "../../theme/theme.ts";
import { VALVES, type ValvePlan } from "./heart-plan.ts";
import { frameOf } from "./root.ts";

/** 0 shut .. 1 open */
export type Openings = Readonly<Record<ValvePlan["name"], number>>;

/** Places of a leaflet, `u` from the ring's middle to its hinge and `v` down the blood's way, in halves of the ring. */
type Way = readonly Point[];
interface Form {
  /** where the section cuts it, from the hinge to the free edge */
  readonly cut: Way;
  /** its free edge onwards to where it ends beside its neighbour */
  readonly edge: Way;
}
type Forms = readonly [shut: Form, open: Form];

const ATRIOVENTRICULAR: Forms = [
  {
    cut: spots("1 0, 0.84 0.14, 0.52 0.16, 0.22 0.34, 0.03 0.72"),
    edge: spots("0.04 0.56, 0.05 0.3, 0 -0.1"),
  },
  {
    cut: spots("1 0, 0.99 0.34, 0.86 0.7, 0.74 0.98, 0.7 1.22"),
    edge: spots("0.5 1.12, 0.2 0.66, 0 -0.1"),
  },
];
const SEMILUNAR: Forms = [
  {
    cut: spots("1.02 0.1, 0.78 -0.08, 0.36 0.06, 0.03 0.62"),
    edge: spots("0.2 0.66, 0.4 0.73, 0.6 0.88"),
  },
  {
    cut: spots("1.02 0.1, 0.98 0.5, 0.88 0.9, 0.9 1.3"),
    edge: spots("0.82 1.3, 0.72 1.24, 0.6 1.1"),
  },
];
/** How a leaflet is joined to its ring, from its far end back to its hinge. */
const JOINED = {
  atrioventricular: spots("0.34 -0.14, 0.7 -0.1, 1 0"),
  semilunar: spots("0.84 0.6, 0.98 0.3, 1.02 0.1"),
};
/** How far from the far end of each place of an edge the valve's parting moves it. */
const MOVED = [0.2, 0.6, 1];

export interface Leaflet {
  /** where the section cuts it */
  readonly line: readonly Point[];
  /** its free edge from there */
  readonly edge: readonly Point[];
  /** where it is joined to its ring, from the end beside its neighbour to its hinge */
  readonly joint: readonly Point[];
  /** of the muscle that holds it most */
  readonly head?: Point;
}

/** The two leaflets that the section cuts, each as far as its neighbour behind. */
export function leafletsOf(plan: ValvePlan, open: number): readonly [Leaflet, Leaflet] {
  const { at } = frameOf(plan);
  const { heads, reach, parting } = plan;
  const [shut, wide] = heads ? ATRIOVENTRICULAR : SEMILUNAR;
  const side = (sign: 1 | -1, long: number, head?: Point): Leaflet => {
    const between = (a: Way, b: Way) =>
      a.map(([u, v], i): Point => {
        const [ou, ov] = entryAt(b, i);
        return [u + open * (ou - u), v + open * (ov - v)];
      });
    // A longer leaflet reaches farther; both still meet in the same place.
    const down = heads ? long ** open : 1;
    const gap = heads ? (reach[2] > 0 ? 0.34 : 0) : 0;
    const place = ([u, v]: Point, moved: number): Point =>
      at(sign * (u + gap * moved) + parting * moved, v > 0 ? down * v : v);
    const cut = between(shut.cut, wide.cut).map((each) => place(each, 0));
    const edge = between(shut.edge, wide.edge).map((each, i) => place(each, entryAt(MOVED, i)));
    const back = JOINED[heads ? "atrioventricular" : "semilunar"].map((each, i) =>
      place(each, 0.7 - 0.35 * i),
    );
    const line = smoothLine(cut, 5);
    const free = smoothLine([lastOf(cut), ...edge], 5);
    return { line, edge: free, joint: smoothLine(back, 4), ...(head && { head }) };
  };
  return [side(-1, reach[0], heads?.[0]), side(1, reach[1], heads?.[1])];
}

/** The leaflet behind the section, whole. */
function behindOf(plan: ValvePlan, open: number): readonly Point[] {
  const { at } = frameOf(plan);
  const deep = plan.reach[2];
  if (plan.heads) {
    const low = (0.6 + 0.3 * open) * deep;
    const wide = 0.3 + 0.26 * open;
    return smoothLine(
      [at(-0.5, -0.12), at(-wide, 0.72 * low), at(0, low), at(wide, 0.72 * low), at(0.5, -0.12)],
      5,
    );
  }
  const [middle, end] = [0.62 + 0.36 * open, 0.88 + 0.3 * open];
  return [
    ...smoothLine([at(-0.6, end), at(0, middle), at(0.6, end)], 5),
    ...smoothLine([at(0.6, end), at(0.5, 0.4), at(0, 0.02), at(-0.5, 0.4), at(-0.6, end)], 5),
  ];
}

/** mm: half a leaflet's thickness at its hinge and at its free edge. */
const THICK = [0.7, 0.34] as const;

function outlineOf(line: readonly Point[], thick: number): readonly Point[] {
  const sides: [Point[], Point[]] = [[], []];
  line.forEach(([x, y], i) => {
    const [ax, ay] = entryAt(line, Math.max(0, i - 1));
    const [bx, by] = entryAt(line, Math.min(line.length - 1, i + 1));
    const half =
      (thick * (THICK[0] + ((THICK[1] - THICK[0]) * i) / (line.length - 1))) / Math.hypot(bx - ax, by - ay);
    sides[0].push([x - half * (by - ay), y + half * (bx - ax)]);
    sides[1].push([x + half * (by - ay), y - half * (bx - ax)]);
  });
  return [...sides[0], lastOf(line), ...sides[1].reverse()];
}

/** The ring of an atrioventricular valve, from which its leaflets hang: its far half bulges towards the atrium. */
function drawRing(ink: Graphics, plan: ValvePlan, look: Tissue): void {
  const { at } = frameOf(plan);
  const ring = smoothLine([at(-1, 0), at(-0.6, -0.11), at(0, -0.15), at(0.6, -0.11), at(1, 0)], 6);
  for (const [width, color] of [
    [1.5, look.edge],
    [0.9, look.body],
  ] as const)
    ink.poly(ring.flat(), false).stroke({ width, color });
}

/** Parts of a free edge from which cords run to its own muscle, and to the other one. */
const CORDS = [
  [0, 0.12, 0.24, 0.36, 0.48, 0.6],
  [0.5, 0.62, 0.74, 0.86],
] as const;
/** Part of the way from a muscle's head at which a cord divides in two. */
const DIVIDES = 0.6;

/** @param behind free edge of the leaflet behind, held by both muscles */
function drawCords(ink: Graphics, pair: readonly Leaflet[], behind: readonly Point[], look: Tissue): void {
  for (const { head } of pair) if (head) for (const [x, y] of behind) ink.moveTo(...head).lineTo(x, y);
  pair.forEach(({ edge }, k) => {
    for (const [other, parts] of CORDS.entries()) {
      const head = entryAt(pair, other ? 1 - k : k).head;
      if (!head) continue;
      for (let i = 0; i < parts.length; i += 2) {
        const ends = [i, i + 1].map((n) => entryAt(edge, Math.round(entryAt(parts, n) * (edge.length - 1))));
        const [[ax, ay], [bx, by]] = [entryAt(ends, 0), entryAt(ends, 1)];
        const fork: Point = [
          head[0] + DIVIDES * ((ax + bx) / 2 - head[0]),
          head[1] + DIVIDES * ((ay + by) / 2 - head[1]),
        ];
        ink.moveTo(head[0] + 0.5 * (i / 2 - 1), head[1] + 0.4).lineTo(...fork);
        for (const end of ends) ink.moveTo(...fork).lineTo(...end);
      }
    }
  });
  ink.stroke({ width: 0.3, color: look.edge, alpha: 0.85 });
}

/** Parts of a leaflet's breadth between which it folds away from the light. */
const FOLDS = [
  [0.1, 0.26],
  [0.42, 0.6],
  [0.74, 0.88],
] as const;

function drawFolds(ink: Graphics, edge: readonly Point[], joint: readonly Point[], look: Tissue): void {
  const on = (way: readonly Point[], part: number): Point =>
    entryAt(way, Math.round(part * (way.length - 1)));
  for (const [from, to] of FOLDS)
    ink
      .poly([...on(joint, 1 - from), ...on(joint, 1 - (from + to) / 2), ...on(edge, to), ...on(edge, from)])
      .fill({ color: look.shade, alpha: 0.13 });
}

/** Atrioventricular and semilunar valves each on their own, since they move apart. */
export function drawValves(
  inks: Readonly<Record<"atrioventricular" | "semilunar", Graphics>>,
  openings: Openings,
  theme: Theme,
): void {
  const look = tissue("valve", theme);
  for (const ink of Object.values(inks)) ink.clear();
  for (const plan of VALVES) {
    const ink = inks[plan.heads ? "atrioventricular" : "semilunar"];
    const open = openings[plan.name];
    const surface = (outline: readonly Point[], alpha: number) =>
      ink
        .poly(outline.flat())
        .fill({ color: look.body, alpha })
        .stroke({ color: look.shade, width: 0.26, alpha: 0.7 });
    const pair = leafletsOf(plan, open);
    const behind = plan.reach[2] > 0 ? behindOf(plan, open) : [];
    // Its lower half, place by place.
    const held = behind.slice(5, -5).filter((_, i) => i % 4 === 1);
    if (plan.heads) drawCords(ink, pair, held, look);
    if (behind.length > 0) surface(behind, plan.heads ? 0.78 : 0.6);
    if (plan.heads) drawRing(ink, plan, look);
    for (const { line, edge, joint } of pair) {
      surface([...line, ...edge, ...joint], 0.86);
      drawFolds(ink, edge, joint, look);
    }
    for (const { line } of pair)
      ink
        .poly(outlineOf(line, plan.heads ? 1 : 0.7).flat())
        .fill({ color: look.body })
        .stroke({ color: look.shade, width: 0.3 });
  }
}
