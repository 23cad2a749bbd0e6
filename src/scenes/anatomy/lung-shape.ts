/** The lungs: outline, fissures between the lobes, and trees of pulmonary arteries and veins that fill them. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Opening, Point } from "../../sim/geometry/geometry.ts";
import { VEIN_ROOTS } from "./great-vessels.ts";
import { type Placing, smoothLine } from "./placing.ts";
import { growTree, type Tree } from "./tree.ts";

export type Side = "left" | "right";

/** Three lobes on the right, two and a notch for the heart on the left; x, y in the chest. */
const OUTLINES: Readonly<Record<Side, readonly Point[]>> = {
  right: [
    [-30, 70],
    [-42, 66],
    [-56, 48],
    [-67, 20],
    [-74, -14],
    [-77, -44],
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
    [76, 48],
    [87, 20],
    [94, -14],
    [97, -44],
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

export function lungShape(side: Side, { frame, inChest }: Placing): LungShape {
  const outline = closedOutline(OUTLINES[side].map((point) => inChest(...point)));
  const mouth: Opening = frame[side];
  const s = frame.scale;
  const { centre, normal, width } = mouth;
  const ahead: Point = [centre[0] + 5 * s * normal[0], centre[1] + 5 * s * normal[1]];
  const arteries = growTree([[centre, ahead]], outline, { size: s, width, seed: 11 });
  const roots = VEIN_ROOTS[side].map(([x, y]): readonly [Point, Point] => {
    const at = inChest(x, y);
    const away = side === "left" ? 1 : -1;
    return [at, [at[0] + away * 4 * s, at[1] + 0.5 * s]];
  });
  const veins = growTree(roots, outline, { size: s, width: 6.4 * s, seed: 29 });
  return {
    side,
    outline,
    fissures: FISSURES[side].map((line) => smoothLine(line.map((point) => inChest(...point)))),
    hilum: centre,
    arteries,
    veins,
  };
}
