/** The four valves of a heart with two ventricles: leaflets as sheets, two of them in section, and cords to the papillary muscles. */
import type { Graphics } from "pixi.js";
import { entryAt, lastOf } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { type Tissue, tissue } from "../../anatomy/tones.ts";
import { spots } from "../../drawing/curve-drawing.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import { type Funnel, type Gate, VALVES, type ValvePlan } from "./heart-plan.ts";
import { frameOf } from "./root.ts";

/** 0 shut .. 1 open */
export type Openings = Readonly<Record<ValvePlan["name"], number>>;

/** Places of a leaflet, `u` from the ring's middle to its hinge and `v` down the blood's way, in halves of the ring. */
type Way = readonly Point[];
type Forms = readonly [shut: Way, open: Way];

/** Of an atrioventricular valve any section through its axis, from the ring to the free edge. */
const SECTION = [
  "1 0, 0.84 0.16, 0.52 0.22, 0.22 0.34, 0.03 0.6",
  "1 0, 0.99 0.34, 0.86 0.7, 0.74 0.98, 0.7 1.22",
].map((way) => smoothLine(spots(way), 5)) as unknown as Forms;
/** Where the section cuts a semilunar cusp, from the hinge to the free edge; that edge onwards to where it ends beside its neighbour; and how it is joined to the root, back to its hinge. */
const CUSP: Forms = [
  spots("1.02 0.1, 0.78 -0.08, 0.36 0.06, 0.03 0.62"),
  spots("1.02 0.1, 0.98 0.5, 0.88 0.9, 0.9 1.3"),
];
const CUSP_EDGE: Forms = [spots("0.2 0.66, 0.4 0.73, 0.6 0.88"), spots("0.82 1.3, 0.72 1.24, 0.6 1.1")];
const CUSP_JOINT = spots("0.84 0.6, 0.98 0.3, 1.02 0.1");

/** Where the leaflets of an atrioventricular valve meet at its ring, as turns from the second hinge round the far side: with one behind them, and without. */
const MEET = { three: [0.31, 0.69], two: [0.4, 0.4] } as const;
/** Part of a leaflet's length that is left where it meets its neighbour. */
const SHORT = 0.4;

export interface Leaflet {
  /** where the section cuts it; of one that it misses, empty */
  readonly line: readonly Point[];
  /** its free edge from there */
  readonly edge: readonly Point[];
  /** where it is joined to its ring, from the end beside its neighbour to its hinge */
  readonly joint: readonly Point[];
  /** of the muscle that holds it most */
  readonly head?: Point;
}

const between = ([shut, wide]: Forms, open: number): Way =>
  shut.map(([u, v], i): Point => {
    const [ou, ov] = entryAt(wide, i);
    return [u + open * (ou - u), v + open * (ov - v)];
  });

const steps = (from: number, to: number, count = 12): readonly number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

/** The two leaflets that the section cuts, each as far as its neighbour on the far side, and the one behind them. */
export function leafletsOf(plan: ValvePlan, open: number): readonly Leaflet[] {
  return plan.funnel ? funnelOf(plan, plan.funnel, open) : cuspsOf(plan, open);
}

/** A ring seen aslant, and leaflets that hang from it all round, longest in their middles. */
function funnelOf(plan: ValvePlan, { heads, reach, aslant }: Funnel, open: number): readonly Leaflet[] {
  const { at } = frameOf(plan);
  const section = between(SECTION, open);
  const three = reach[2] > 0;
  const [near, far] = MEET[three ? "three" : "two"];
  /** @param turn from the second hinge round the far side @param part of the leaflet's way down */
  const place = (turn: number, part: number, long: number): Point => {
    const [r, v] = entryAt(section, Math.round(part * (section.length - 1)));
    return at(r * Math.cos(Math.PI * turn), v * long ** open - aslant * r * Math.sin(Math.PI * turn));
  };
  const reaches = (part: number) => SHORT + (1 - SHORT) * (1 - part ** 2) ** 0.5;
  const cut = (hinge: number, meets: number, long: number, head: Point): Leaflet => ({
    line: section.map((_, i) => place(hinge, i / (section.length - 1), long)),
    edge: steps(0, 1).map((part) => place(hinge + part * (meets - hinge), reaches(part), long)),
    joint: steps(meets, hinge).map((turn) => place(turn, 0, long)),
    head,
  });
  const behind: Leaflet = {
    line: [],
    edge: steps(-1, 1, 16).map((part) =>
      place((far + near + part * (far - near)) / 2, reaches(Math.abs(part)), reach[2]),
    ),
    joint: steps(far, near).map((turn) => place(turn, 0, 1)),
  };
  return [cut(1, far, reach[0], heads[0]), cut(0, near, reach[1], heads[1]), ...(three ? [behind] : [])];
}

function cuspsOf(plan: ValvePlan, open: number): readonly Leaflet[] {
  const { at } = frameOf(plan);
  const side = (sign: 1 | -1): Leaflet => {
    const placed = (way: Way) => way.map(([u, v]) => at(sign * u, v));
    const cut = placed(between(CUSP, open));
    return {
      line: smoothLine(cut, 5),
      edge: smoothLine([lastOf(cut), ...placed(between(CUSP_EDGE, open))], 5),
      joint: smoothLine(placed(CUSP_JOINT), 4),
    };
  };
  const [middle, end] = [0.62 + 0.36 * open, 0.88 + 0.3 * open];
  const behind: Leaflet = {
    line: [],
    edge: smoothLine([at(-0.6, end), at(0, middle), at(0.6, end)], 5),
    joint: smoothLine([at(0.6, end), at(0.5, 0.4), at(0, 0.02), at(-0.5, 0.4), at(-0.6, end)], 5),
  };
  return [side(-1), side(1), behind];
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

/** The ring of an atrioventricular valve, from which its leaflets hang. @param side 1 for its far half, -1 for its near one */
function drawRing(ink: Graphics, gate: Gate, side: 1 | -1, look: Tissue): void {
  const { at } = frameOf(gate);
  const aslant = gate.funnel?.aslant ?? 0;
  const ring = steps(0, Math.PI, 24).map((turn) => at(Math.cos(turn), -side * aslant * Math.sin(turn)));
  for (const [width, color] of [
    [1.5, look.edge],
    [1, mix(look.body, look.shade, side > 0 ? 0.3 : 0.14)],
  ] as const)
    ink.poly(ring.flat(), false).stroke({ width, color, cap: "round" });
}

/** Parts of a free edge from which cords run to its own muscle, and to the other one. */
const CORDS = [
  [0, 0.12, 0.24, 0.36, 0.48, 0.6],
  [0.5, 0.62, 0.74, 0.86],
] as const;
/** Part of the way from a muscle's head at which a cord divides in two. */
const DIVIDES = 0.6;

/** @param leaflets the two that the section cuts, and the one behind, which both muscles hold */
function drawCords(ink: Graphics, leaflets: readonly Leaflet[], look: Tissue): void {
  const heads = leaflets.flatMap(({ head }): readonly Point[] => (head ? [head] : []));
  for (const { edge } of leaflets.slice(2))
    for (const [x, y] of edge.slice(3, -3).filter((_, i) => i % 2 === 0))
      for (const head of heads) ink.moveTo(...head).lineTo(x, y);
  heads.forEach((_, k) => {
    const { edge } = entryAt(leaflets, k);
    for (const [other, parts] of CORDS.entries()) {
      const head = entryAt(heads, other ? 1 - k : k);
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
/** Parts of its way down to which the shade beneath its ring reaches. */
const SHADES = [0.42, 0.28, 0.14];

/** A sheet from its ring to its free edge. @param alpha of it, and of the shade in its folds */
function drawSheet(
  ink: Graphics,
  { line, edge, joint }: Leaflet,
  look: Tissue,
  [alpha, folded]: readonly [alpha: number, folded: number],
): void {
  const on = (way: readonly Point[], part: number): Point =>
    entryAt(way, Math.round(part * (way.length - 1)));
  const down = (across: number, part: number): Point => {
    const [[ax, ay], [bx, by]] = [on(joint, 1 - across), on(edge, across)];
    return [ax + part * (bx - ax), ay + part * (by - ay)];
  };
  ink
    .poly([...line, ...edge, ...joint].flat())
    .fill({ color: mix(look.body, look.shade, 0.12), alpha: alpha - (line.length > 0 ? 0 : 0.08) })
    .stroke({ color: look.shade, width: 0.3, alpha: 0.75 });
  const across = steps(0, 1, 8);
  for (const part of SHADES)
    ink
      .poly(
        [
          ...across.map((each) => down(each, 0)),
          ...[...across].reverse().map((each) => down(each, part)),
        ].flat(),
      )
      .fill({ color: look.shade, alpha: 0.13 });
  for (const [from, to] of FOLDS)
    ink
      .poly([
        ...down((from + to) / 2, 0.1),
        ...down(to, 0.96),
        ...down((from + to) / 2, 0.9),
        ...down(from, 0.96),
      ])
      .fill({ color: look.shade, alpha: folded });
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
    const ink = inks[plan.funnel ? "atrioventricular" : "semilunar"];
    const leaflets = leafletsOf(plan, openings[plan.name]);
    if (plan.funnel) {
      drawCords(ink, leaflets, look);
      drawRing(ink, plan, 1, look);
    }
    for (const leaflet of [...leaflets].reverse())
      drawSheet(ink, leaflet, look, plan.funnel ? [0.74, 0.2] : [0.94, 0.08]);
    for (const { line } of leaflets)
      if (line.length > 0)
        ink
          .poly(outlineOf(line, plan.funnel ? 1 : 0.7).flat())
          .fill({ color: look.body })
          .stroke({ color: look.shade, width: 0.3 });
    if (plan.funnel) drawRing(ink, plan, -1, look);
  }
}
