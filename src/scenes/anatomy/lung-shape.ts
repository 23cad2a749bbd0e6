/** The lungs: outline, fissures between the lobes, and trees of pulmonary arteries and veins that fill them. */
import { entryAt } from "../../sim/checked/present.ts";
import { closedOutline } from "../../sim/geometry/centreline.ts";
import { type Distance, outlineDistance } from "../../sim/geometry/distance.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { type Placing, smoothLine } from "./placing.ts";
import { ARTERIES, type Side, VEINS } from "./segments.ts";
import { OVERLAP } from "./side-course.ts";
import { FINER, growTree, type Tree } from "./tree.ts";

/** Three lobes on the right, two and a notch for the heart on the left; x, y in the chest. */
const OUTLINES: Readonly<Record<Side, readonly Point[]>> = {
  right: [
    [-30, 70],
    [-42, 66],
    [-60, 49],
    [-73, 20],
    [-77, -13],
    [-78, -44],
    [-76, -54],
    [-66, -45],
    [-52, -37.5],
    [-38, -35.5],
    [-24, -38],
    [-17, -40],
    [-15, -24],
    [-14, 0],
    [-12, 22],
    [-14, 46],
    [-20, 62],
  ],
  left: [
    [50, 70],
    [62, 66],
    [77, 48],
    [89, 20],
    [95, -14],
    [98, -44],
    [96, -56],
    [87, -47],
    [76, -43.5],
    [67, -45],
    [66, -34],
    [60, -18],
    [46, -2],
    [38, 18],
    [36, 44],
    [40, 61],
  ],
};

const FISSURES: Readonly<Record<Side, readonly (readonly Point[])[]>> = {
  right: [
    [
      [-64, 32],
      [-50, 8],
      [-36, -16],
      [-25, -38],
    ],
    [
      [-49, 6],
      [-34, 7],
      [-14, 4],
    ],
  ],
  left: [
    [
      [82, 34],
      [74, 8],
      [68, -18],
      [66, -40],
    ],
  ],
};

export interface LungShape {
  readonly side: Side;
  readonly outline: readonly Point[];
  readonly fissures: readonly (readonly Point[])[];
  /** where vessels enter: the lung swells from there */
  readonly hilum: Point;
  readonly arteries: Tree;
  readonly veins: Tree;
}

/** Where a pulmonary artery enters its lung in a 5-year-old, and its width there. */
const MOUTHS: Readonly<Record<Side, Point>> = { right: [-38, 19], left: [56, 25] };
const MOUTH_WIDTH = 10;
/** Along both edges of the right one, which hides what lies behind it: no twig is to look out there. */
const WINDOW: readonly Point[] = [
  [-42, 23],
  [-40, 26],
  [-37, 28],
  [-34, 30],
  [-42, 8],
  [-38, 11],
  [-34, 13],
];
const VEIN_WIDTH = 6.2;
/** mm over which a tree's stem bends from where it was grown to where the artery ends */
const BEND = 19;
/** Steps of a stem by which its direction is taken. */
const AHEAD = 3;
/** mm from the lung's edge at which it bends in full: nothing leaves the lung */
const DEEP = 15;

interface Trees {
  /** mm from the lung's edge, negative inside */
  readonly edge: Distance;
  readonly arteries: Tree;
  readonly veins: Tree;
}

const grown = new Map<Side, Trees>();

/** The trees of a 5-year-old's lung, grown once. */
function treesOf(side: Side): Trees {
  const before = grown.get(side);
  if (before) return before;
  const outline = closedOutline(OUTLINES[side]);
  // Each leaves room to the other's limbs.
  const limbs = VEINS[side].flatMap(({ through }) => smoothLine(through, 4));
  const arteries = growTree(ARTERIES[side], outline, MOUTH_WIDTH, limbs);
  const places = [...arteries.nodes.map(({ at }) => at), ...WINDOW];
  const edge = outlineDistance(outline);
  const trees = { edge, arteries, veins: growTree(VEINS[side], outline, VEIN_WIDTH, places, FINER) };
  grown.set(side, trees);
  return trees;
}

export function lungShape(side: Side, { frame, inChest }: Placing): LungShape {
  const { centre, normal, width } = frame[side];
  const at = MOUTHS[side];
  const from = inChest(...at);
  const shift: Point = [centre[0] - from[0], centre[1] - from[1]];
  let own: Pick<Trees, "arteries" | "veins"> | null = null;
  // Where the lung lies is asked for before it is painted, and growing its trees takes long.
  const trees = () => {
    if (own) return own;
    const { edge, arteries, veins } = treesOf(side);
    const ahead = entryAt(arteries.nodes, AHEAD).at;
    const turn = Math.atan2(normal[1], normal[0]) - Math.atan2(ahead[1] - at[1], ahead[0] - at[0]);
    const bent = ([x, y]: Point): Point => {
      const [px, py] = inChest(x, y);
      const within = Math.min(1, Math.max(0, -edge(x, y) / DEEP));
      const part = within * Math.exp(-Math.hypot(x - at[0], y - at[1]) / BEND);
      const [dx, dy] = [px + part * shift[0] - centre[0], py + part * shift[1] - centre[1]];
      // The artery goes on as its window ends, and bends into its own way from there.
      const angle =
        Math.atan2(Math.sin(turn), Math.cos(turn)) * Math.exp(-Math.hypot(dx, dy) / (1.1 * width));
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      return [centre[0] + c * dx - s * dy, centre[1] + s * dx + c * dy];
    };
    own = {
      // Each stem reaches back under the vessel that it goes on from: an artery's as far as its front is closed.
      arteries: stemmed(placed(arteries, width / MOUTH_WIDTH, bent), () => {
        const behind = (mm: number): Point => [centre[0] - mm * normal[0], centre[1] - mm * normal[1]];
        const [near, far] = [OVERLAP * frame.scale, STEM * frame.scale];
        const way = (frame.arteries?.[side] ?? [behind(far)]).toReversed();
        return [
          behind(near),
          ...way.filter(([x, y]) => Math.hypot(x - centre[0], y - centre[1]) > 1.3 * near),
        ];
      }),
      veins: stemmed(
        placed(veins, frame.scale, (point) => inChest(...point)),
        ([x, y]) => [[x + (side === "left" ? -0.2 : 0.2) * STEM * frame.scale, y]],
      ),
    };
    return own;
  };
  return {
    side,
    outline: closedOutline(OUTLINES[side].map(([x, y]) => inChest(x, y < BASE && y > TIP ? y - UNDER : y))),
    fissures: FISSURES[side].map((line) => smoothLine(line.map((point) => inChest(...point)))),
    hilum: centre,
    get arteries() {
      return trees().arteries;
    },
    get veins() {
      return trees().veins;
    },
  };
}

/** The lung's base reaches under the diaphragm's edge, which lies before it: no breath opens a gap between the two. */
const BASE = -35;
const TIP = -50;
const UNDER = 4;

/** mm of a 5-year-old */
const STEM = 11;

/** With further nodes before each root, against the way outwards. */
function stemmed({ nodes, ends }: Tree, back: (root: Point) => readonly Point[]): Tree {
  const before: Tree["nodes"][number][] = [];
  const on = nodes.map((node) => {
    if (node.parent >= 0) return node;
    const first = nodes.length + before.length;
    back(node.at).forEach((at, i, way) => {
      before.push({ ...node, at, parent: i + 1 < way.length ? first + i + 1 : -1 });
    });
    return { ...node, parent: first };
  });
  return { nodes: [...on, ...before], ends };
}

const placed = ({ nodes, ends }: Tree, wider: number, place: (point: Point) => Point): Tree => ({
  nodes: nodes.map(({ at, parent, width }) => ({ at: place(at), parent, width: width * wider })),
  ends,
});
