/** Diaphragm and what lies right under it: the liver with its portal vein, and the stomach's dome. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Tube } from "./great-vessels.ts";
import { type Placing, smoothLine } from "./placing.ts";

/** From the patient's right wall over both domes to the left; the heart lies on the part between. */
const DIAPHRAGM: readonly Point[] = [
  [-88, -96],
  [-87, -78],
  [-83, -63],
  [-76, -53],
  [-65, -44],
  [-50, -37],
  [-38, -33],
  [-24, -32.4],
  [-8, -34.6],
  [8, -38],
  [20, -42],
  [30, -47.6],
  [46, -52.5],
  [60, -49],
  [74, -43.4],
  [86, -46.5],
  [96, -55.5],
  [104, -66],
  [108, -80],
  [109, -96],
];

/** Close beneath it but on the left. */
const LIVER: readonly Point[] = [
  [-76, -60],
  ...DIAPHRAGM.slice(4, 13).map(([x, y]): Point => [x, y - 2.4]),
  [57, -55.5],
  [52, -60],
  [36, -66],
  [18, -71],
  [0, -76],
  [-20, -83],
  [-44, -89],
  [-66, -88],
  [-76, -76],
];

export interface AbdomenShape {
  readonly diaphragm: readonly Point[];
  readonly liver: readonly Point[];
  /** portal vein and its two branches within the liver */
  readonly portal: readonly Tube[];
}

export function abdomenShape({ frame, inChest }: Placing): AbdomenShape {
  const s = frame.scale;
  const vein = (name: string, [from, to]: readonly [number, number], ...line: readonly Point[]): Tube => ({
    name,
    line: smoothLine(line.map((point) => inChest(...point))),
    from: from * s,
    to: to * s,
  });
  return {
    diaphragm: smoothLine(DIAPHRAGM.map((point) => inChest(...point))),
    liver: closedOutline(LIVER.map((point) => inChest(...point))),
    portal: [
      vein("leftPortalBranch", [4.6, 1], [-8, -72.6], [6, -67.5], [22, -62.4], [36, -60.2]),
      {
        ...vein(
          "portalVein",
          [7.4, 1.2],
          [27, -96],
          [18, -86],
          [6, -77.5],
          [-8, -72.6],
          [-26, -71.5],
          [-42, -72],
          [-60, -66],
        ),
        fades: "start",
        over: 0.2,
      },
    ],
  };
}
