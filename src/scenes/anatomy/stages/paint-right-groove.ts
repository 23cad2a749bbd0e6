/** What lies about a right atrium that is the pathway: its own outside, and towards the ventricle the groove with its fat, the right coronary artery and no valve. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { HeartShape } from "../heart-shape.ts";
import { paintOrgan } from "../paint-organ.ts";
import { paintTube } from "../paint-tube.ts";
import { type Ink, strokes, trace } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { type Round, type Tissue, tissue } from "../tones.ts";
import { type Chambered, onOval } from "./chamber-shape.ts";

/** Its edge on the right ventricle, along and across in the ventricle's own lengths, from the aorta's root down to where it runs out beside the lower vein. */
const ON_VENTRICLE: readonly Point[] = [
  [-7, 14],
  [-4, 18],
  [-3.4, 24],
  [-5, 29.5],
  [-5.9, 34.3],
  [-5.9, 38.8],
  [-4.7, 42.9],
  [-6.4, 46.5],
];
/** degrees from the patient's left along the atrium, from the septum down to the lower vein */
const [FROM, TO] = [-13, -74];
/** mm of a 5-year-old: where the artery runs, beyond the atrium's lumen, from the aorta's root on */
const COURSE: readonly (readonly [degrees: number, out: number])[] = [
  [-18, 9],
  [-29, 9.4],
  [-41, 10],
  [-53, 10.6],
  [-62, 11.6],
  [-67, 14],
  [-70, 18],
];
const WIDTH = 2;

type Around = readonly (readonly [degrees: number, out: number])[];
/** Beyond its lumen, degrees from the patient's left and mm of a 5-year-old: distended, its free wall bulges to the patient's right, notched where the terminal groove comes round. */
const FREE: Around = [
  [97, 2.6],
  [108, 2.8],
  [120, 3.4],
  [133, 4.8],
  [146, 6.4],
  [158, 7.8],
  [170, 9.6],
  [182, 11.2],
  [196, 12],
  [209, 12],
  [220, 11.6],
  [232, 11.6],
  [244, 12],
  [254, 12.6],
  [261, 14.4],
  [267, 18],
];
/** Between upper vein and aorta. */
const ROOF: Around = [
  [79, 3],
  [69, 3.6],
  [57, 4.4],
  [46, 4.2],
  [34, 3],
  [20, 2],
];
const placed =
  (chamber: Point, size: number) =>
  (around: Around): readonly Point[] => {
    const on = onOval(chamber);
    return around.map(([degrees, out]) => on(degrees, out * size));
  };

/** Its right border, from the upper vein down. */
export const freeEdge = ({ chamber, scale }: Placed): readonly Point[] =>
  smoothLine(placed(chamber, scale)(FREE));

/** Around the window that is cut into its front its outside turns away. */
export function paintOutsideOf(ink: Ink, { chamber, scale: size }: Placed, theme: Theme): void {
  const at = placed(chamber, size);
  const look = tissue("atrium", theme);
  const { body, light } = look;
  const thin = { ...look, body: mix(body, light, 0.3) };
  for (const around of [FREE, ROOF]) {
    const side = smoothLine(at(around));
    paintOrgan(ink, [...side, [0, 0]], thin, { depth: 3.4 * size, walled: side });
    strokes(ink, side, size, [[0.5, look.edge]]);
  }
  // Its wall is so thin that the muscles within show through it.
  ink.save();
  ink.globalCompositeOperation = "source-atop";
  for (let k = 0; k < 14; k++) {
    const from = 142 + 8.2 * k;
    // As far as the wall bulges there.
    const reach = Math.min(1, 0.5 + k / 8);
    const [tip, fork] = [from + 3.4 * (k % 3) - 4, from + 0.6];
    for (const way of [
      [
        [from, 1.6],
        [fork, 5.4 * reach],
        [tip, (10 + (k % 2)) * reach],
      ],
      [
        [fork, 5.4 * reach],
        [from + 3.6, 9.4 * reach],
      ],
    ] as const)
      showThrough(ink, at(way), size, look);
  }
  ink.restore();
}

/** A muscle that shows through a thin wall. */
function showThrough(ink: Ink, way: readonly Point[], size: number, { light, edge }: Tissue): void {
  ink.globalAlpha = 0.26;
  strokes(ink, smoothLine(way), size, [
    [1.5, light],
    [0.5, mix(light, edge, 0.5)],
  ]);
  ink.globalAlpha = 1;
}

type Placed = Pick<Chambered, "chamber" | "scale">;

export function paintRightGroove(
  ink: Ink,
  { chamber, scale: size }: Placed,
  heart: HeartShape,
  arterial: Round,
  theme: Theme,
): void {
  const fat = tissue("sac", theme);
  const on = onOval(chamber);
  const inner = Array.from({ length: 31 }, (_, i) => on(TO + ((FROM - TO) * i) / 30));
  const outer = smoothLine(ON_VENTRICLE.map((point) => heart.at(...point)));
  const groove = [...inner, ...outer];
  paintOrgan(ink, groove, { ...fat, light: fat.body }, { depth: 3 * size, edge: 0.5 * size });
  const line = smoothLine(COURSE.map(([degrees, out]) => on(degrees, out * size)));
  // So narrow that the aorta's own light would be most of it.
  const narrow = { ...arterial, light: arterial.body, body: mix(arterial.body, arterial.edge, 0.6) };
  ink.save();
  trace(ink, groove, true);
  ink.clip();
  paintTube(ink, { name: "", line, from: WIDTH * size, to: 0.7 * WIDTH * size }, narrow, 0.4 * size);
  ink.restore();
}
