/** What lies about a right atrium that is the pathway: its own outside, and towards the ventricle the groove with its fat, the right coronary artery and no valve. */
import { closedOutline } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { HeartShape } from "../heart-shape.ts";
import { paintOrgan } from "../paint-organ.ts";
import { paintTube } from "../paint-tube.ts";
import { type Ink, trace } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { type Round, tissue } from "../tones.ts";
import { type Chambered, onOval } from "./chamber-shape.ts";

/** Its edge on the right ventricle, along and across in the ventricle's own lengths, from the aorta's root down to the diaphragm's side. */
const ON_VENTRICLE: readonly Point[] = [
  [-7, 14],
  [-4, 18],
  [-3.4, 24],
  [-5, 30],
  [-3.4, 36],
  [-4, 40],
  [-9, 44],
];
/** degrees from the patient's left along the atrium, from the septum down to the lower vein */
const [FROM, TO] = [-13, -74];
/** mm of a 5-year-old: where the artery runs, beyond the atrium's lumen, from the aorta's root on */
const COURSE: readonly (readonly [degrees: number, out: number])[] = [
  [-18, 9],
  [-29, 9.4],
  [-41, 10],
  [-53, 10.6],
  [-63, 12.4],
  [-69, 16],
  [-73, 24],
];
const WIDTH = 2;

/** Beyond its lumen, degrees from the patient's left and mm of a 5-year-old: its free wall bulges to the patient's right; its appendage lies over the groove. */
const FREE: readonly (readonly [degrees: number, out: number])[] = [
  [142, 1],
  [153, 4.4],
  [168, 6.2],
  [186, 6.9],
  [206, 6.8],
  [226, 6.4],
  [244, 6.2],
  [256, 7.4],
  [263, 12],
];
const APPENDAGE: readonly (readonly [degrees: number, out: number])[] = [
  [-24, 3],
  [-27, 9],
  [-31, 12],
  [-35, 11.6],
  [-37, 14],
  [-42, 14.4],
  [-45, 11.6],
  [-49, 12.4],
  [-53, 9.6],
  [-52, 6],
  [-46, 3],
];

/** Around the window that is cut into its front its outside turns away. */
export function paintOutsideOf(ink: Ink, { chamber, scale: size }: Placed, theme: Theme): void {
  const on = onOval(chamber);
  const place = ([degrees, out]: readonly [number, number]) => on(degrees, out * size);
  const look = tissue("atrium", theme);
  const free = smoothLine(FREE.map(place));
  paintOrgan(ink, free, look, { depth: 5 * size, edge: 0.5 * size, walled: free });
  paintOrgan(ink, closedOutline(APPENDAGE.map(place)), look, { depth: 2.4 * size, edge: 0.5 * size });
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
