/** The four valves of a heart with two ventricles: leaflets in section with the one behind them, and cords to the papillary muscles. */
import type { Graphics } from "pixi.js";
import { entryAt, lastOf } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { type Tissue, tissue } from "../../anatomy/tones.ts";
import type { Theme } from "../../theme/theme.ts";
import { VALVES, type ValvePlan } from "./heart-plan.ts";
import { frameOf } from "./root.ts";

/** 0 shut .. 1 open */
export type Openings = Readonly<Record<ValvePlan["name"], number>>;

/** Places of a leaflet's line, `u` from the ring's middle to its hinge and `v` down the blood's way, in halves of the ring. */
type Way = readonly Point[];
const ATRIOVENTRICULAR: readonly [shut: Way, open: Way] = [
  [
    [1, 0],
    [0.72, 0.2],
    [0.3, 0.42],
    [0.03, 0.72],
  ],
  [
    [1, 0],
    [0.92, 0.42],
    [0.74, 0.84],
    [0.62, 1.2],
  ],
];
const SEMILUNAR: readonly [shut: Way, open: Way] = [
  [
    [1.02, 0.1],
    [0.72, -0.06],
    [0.32, 0.08],
    [0.03, 0.62],
  ],
  [
    [1.02, 0.1],
    [0.96, 0.5],
    [0.84, 0.9],
    [0.86, 1.3],
  ],
];
/** The free edge of the leaflet behind: in the middle between its two ends at the other leaflets' sides. */
const BEHIND = { atrioventricular: [0.62, 0.36], semilunar: [0.6, 1.34] } as const;

export interface Leaflet {
  readonly line: readonly Point[];
  /** of the muscle that holds it most */
  readonly head?: Point;
}

/** Both leaflets in section, from hinge to free edge. */
export function leafletsOf(plan: ValvePlan, open: number): readonly [Leaflet, Leaflet] {
  const { at } = frameOf(plan);
  const [shut, wide] = plan.heads ? ATRIOVENTRICULAR : SEMILUNAR;
  const side = (sign: 1 | -1, reach: number, head?: Point): Leaflet => ({
    line: smoothLine(
      shut.map(([u, v], i): Point => {
        const [ou, ov] = entryAt(wide, i);
        // A longer leaflet reaches farther; both still meet in the same place.
        const down = plan.heads ? reach ** open : 1;
        return at(sign * (u + open * (ou - u)), down * (v + open * (ov - v)));
      }),
      4,
    ),
    ...(head && { head }),
  });
  const [first, second] = plan.reach;
  return [side(-1, first, plan.heads?.[0]), side(1, second, plan.heads?.[1])];
}

/** The leaflet behind the section, whole: its free edge, and the line from which it hangs. */
function behindOf(plan: ValvePlan, open: number): readonly Point[] {
  const { at } = frameOf(plan);
  const reach = plan.reach[2];
  if (plan.heads) {
    const deep = (BEHIND.atrioventricular[0] + 0.34 * open) * reach;
    const wide = 0.36 + 0.3 * open;
    return smoothLine(
      [
        at(-0.98, 0.02),
        at(-1.25 * wide, 0.6 * deep),
        at(-0.7 * wide, 0.9 * deep),
        at(-0.05, deep),
        at(0.7 * wide, 0.9 * deep),
        at(1.25 * wide, 0.6 * deep),
        at(0.98, 0.02),
      ],
      5,
    );
  }
  const [low, high] = BEHIND.semilunar;
  const middle = low + open * (high - low);
  return [
    ...smoothLine([at(-0.98, 1.06), at(0, middle), at(0.98, 1.06)], 5),
    ...smoothLine([at(0.98, 1.06), at(0.8, 0.3), at(0, 0.02), at(-0.8, 0.3), at(-0.98, 1.06)], 5),
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
  ink.poly(ring.flat(), false).stroke({ width: 0.6, color: look.edge, alpha: 0.75 });
}

/** Parts of a leaflet from which cords run to its own muscle, and to the other one. */
const CORDS = [
  [1, 0.86, 0.68],
  [0.94, 0.78],
] as const;

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
    const behind = behindOf(plan, open);
    ink.poly(behind.flat()).fill({ color: look.body, alpha: plan.heads ? 0.16 : 0.3 });
    ink.poly(behind.flat(), !plan.heads).stroke({ color: look.shade, width: 0.28, alpha: 0.75 });
    if (plan.heads) drawRing(ink, plan, look);
    const pair = leafletsOf(plan, open);
    pair.forEach(({ line }, k) => {
      for (const [other, parts] of CORDS.entries()) {
        const head = entryAt(pair, other ? 1 - k : k).head;
        if (!head) continue;
        parts.forEach((part, i) => {
          const from = entryAt(line, Math.round(part * (line.length - 1)));
          ink.moveTo(...from).lineTo(head[0] + 0.5 * (i - 1), head[1] + 0.4);
        });
      }
    });
    if (plan.heads) ink.stroke({ width: 0.28, color: look.edge, alpha: 0.85 });
    for (const { line } of pair)
      ink
        .poly(outlineOf(line, plan.heads ? 1 : 0.7).flat())
        .fill({ color: look.body })
        .stroke({ color: look.shade, width: 0.3 });
  }
}
