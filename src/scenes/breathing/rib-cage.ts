/** Half of the rib cage: ribs from the spine down to the side, where the wall is cut, with muscle from each rib to the next. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { LungShape } from "../anatomy/lung-shape.ts";
import { type Bounds, boundsOf, type Ink, strokes, trace } from "../anatomy/painted-sheet.ts";
import { smoothLine } from "../anatomy/placing.ts";
import { tissue } from "../anatomy/tones.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { inChest } from "../circuit/chest-plan.ts";
import type { Theme } from "../theme/theme.ts";
import { paintCutBone } from "./cut-bone.ts";
import { MIDLINE } from "./torso.ts";

/** First to tenth: plane units of their heads at the spine and of their cut at the side, which lies lower the further down they are. */
const RIBS = [
  { root: 152, side: 204 },
  ...Array.from({ length: 9 }, (_, k) => ({ root: 176 + 35 * k, side: 236 + 39 * k })),
];
/** mm beyond the lung: the inside of the chest wall, the middle of a rib in it, and its outside. */
const WALL = { inside: 1, rib: 4, outside: 7 } as const;
const SPINE = 24;

export interface Rib {
  readonly root: Point;
  readonly bend: Point;
  /** middle of its cut */
  readonly cut: Point;
}

const [MIDDLE] = inChest([MIDLINE, 0]);

/** How far (mm from the midline) the lung reaches at a height; beyond its ends as far as there. */
function reachOf({ outline }: LungShape, height: number): number {
  const at = (y: number): number => {
    const crossed = outline.flatMap(([ax, ay], i) => {
      const [bx, by] = entryAt(outline, (i + 1) % outline.length);
      return ay < y !== by < y ? [Math.abs(ax + ((y - ay) / (by - ay)) * (bx - ax) - MIDDLE)] : [];
    });
    return Math.max(0, ...crossed);
  };
  const [, bottom, , top] = boundsOf([outline], 0);
  return at(Math.min(top - 2, Math.max(bottom + 6, height)));
}

const signOf = ({ side }: LungShape): 1 | -1 => (side === "right" ? -1 : 1);

/** A place in the wall beside a lung. */
const beside = (lung: LungShape, height: number, out: number): Point => [
  MIDDLE + signOf(lung) * (reachOf(lung, height) + out),
  height,
];

export function ribsOf(lung: LungShape): readonly Rib[] {
  return RIBS.map(({ root, side }) => {
    const [, low] = inChest([0, side]);
    const cut = beside(lung, low, WALL.rib);
    const head = inChest([MIDLINE + signOf(lung) * SPINE, root]);
    // It leaves the spine level, and turns down towards the side.
    return { root: head, bend: [head[0] + 0.55 * (cut[0] - head[0]), head[1] + 1], cut };
  });
}

export const cageBounds = (lung: LungShape): Bounds =>
  boundsOf([ribsOf(lung).flatMap(({ root, cut }) => [root, cut])], 14);

/** Behind the lungs, seen through them: bands with a lighter edge towards the light. */
export function paintRibs(ink: Ink, lung: LungShape, theme: Theme): void {
  const bone = legTissue("bone", theme);
  ink.save();
  ink.globalAlpha = theme.name === "dark" ? 0.18 : 0.15;
  for (const { root, bend, cut } of ribsOf(lung)) {
    const along = smoothLine([root, bend, cut], 12);
    strokes(ink, along, 1, [
      [4.6, theme.name === "dark" ? bone.shade : bone.edge],
      [3.8, bone.body],
    ]);
    strokes(
      ink,
      along.map(([x, y]): Point => [x, y + 0.9]),
      1,
      [[0.9, bone.light]],
    );
  }
  ink.restore();
}

/** Heights between which the wall is cut: it ends in the first rib, and thins out where the belly begins. */
const reachOfWall = (ribs: readonly Rib[]): readonly [first: number, last: number] => [
  entryAt(ribs, 0).cut[1] + 1,
  entryAt(ribs, ribs.length - 1).cut[1] - 10,
];

/** Along the cut wall from above. @param out mm beyond the lung */
function wallLine(lung: LungShape, out: number): readonly Point[] {
  const [first, last] = reachOfWall(ribsOf(lung));
  return Array.from({ length: 49 }, (_, i): Point => {
    const height = first + ((last - first) * i) / 48;
    const thin = Math.min(1, (first + 1 - height) / 3, (height - last) / 10);
    return beside(lung, height, WALL.rib + (out - WALL.rib) * Math.sqrt(thin));
  });
}

/** mm: half the axes of a cut rib, whose lower border is thin; and along the wall, to which it lies flat. */
const CUT = { wide: 2, high: 3.6, thin: 0.45, flat: 4 } as const;

function paintCutRib(ink: Ink, lung: LungShape, { cut }: Rib, theme: Theme): void {
  const outline = (rim: number) =>
    Array.from({ length: 28 }, (_, i): Point => {
      const turn = (Math.PI * i) / 14;
      const [across, up] = [Math.cos(turn), Math.sin(turn)];
      const wide = (CUT.wide - rim) * (1 - CUT.thin * Math.max(0, -up) ** 1.5);
      return [wide * across, (CUT.high - rim) * up];
    });
  ink.save();
  ink.translate(...cut);
  const [above, below] = [CUT.flat, -CUT.flat].map((up) => beside(lung, cut[1] + up, 0)) as [Point, Point];
  ink.rotate(Math.atan2(below[0] - above[0], above[1] - below[1]));
  paintCutBone(ink, outline, theme);
  ink.restore();
}

/** The wall in section: between the ribs cut across two layers of muscle, whose fibres run down from rib to rib and cross. */
export function paintWall(ink: Ink, lung: LungShape, theme: Theme): void {
  const ribs = ribsOf(lung);
  const look = tissue("muscle", theme);
  const [first, last] = reachOfWall(ribs);
  const line = (out: number) => wallLine(lung, out);
  trace(ink, [...line(WALL.inside), ...line(WALL.outside).toReversed()], true);
  ink.fillStyle = look.body;
  ink.fill();
  ink.save();
  ink.clip();
  ink.globalAlpha = 0.5;
  for (const [from, to, way] of [
    [WALL.rib, WALL.outside + 1, -1],
    [WALL.inside - 1, WALL.rib, 1],
  ] as const)
    for (let height = first; height > last; height -= 1.1)
      strokes(ink, [beside(lung, height - 1.4 * way, from), beside(lung, height + 1.4 * way, to)], 1, [
        [0.4, look.shade],
      ]);
  ink.globalAlpha = 0.8;
  strokes(ink, line(WALL.rib), 1, [[0.45, look.light]]);
  ink.restore();
  for (const out of [WALL.inside, WALL.outside]) strokes(ink, line(out), 1, [[0.6, look.edge]]);
  for (const rib of ribs) paintCutRib(ink, lung, rib, theme);
}
