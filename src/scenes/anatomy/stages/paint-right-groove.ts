/** Between a right atrium that is the pathway and the ventricle: the groove with its fat and the right coronary artery, no valve. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { HeartShape } from "../heart-shape.ts";
import { paintOrgan } from "../paint-organ.ts";
import { paintTube } from "../paint-tube.ts";
import type { Ink } from "../painted-sheet.ts";
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
  [-70, 17],
];
const WIDTH = 2;

export function paintRightGroove(
  ink: Ink,
  { chamber, scale: size }: Pick<Chambered, "chamber" | "scale">,
  heart: HeartShape,
  arterial: Round,
  theme: Theme,
): void {
  const fat = tissue("sac", theme);
  const on = onOval(chamber);
  const inner = Array.from({ length: 31 }, (_, i) => on(TO + ((FROM - TO) * i) / 30));
  const outer = smoothLine(ON_VENTRICLE.map((point) => heart.at(...point)));
  paintOrgan(ink, [...inner, ...outer], { ...fat, light: fat.body }, { depth: 3 * size, edge: 0.5 * size });
  const line = smoothLine(COURSE.map(([degrees, out]) => on(degrees, out * size)));
  // So narrow that the aorta's own light would be most of it.
  const narrow = { ...arterial, light: arterial.body, body: mix(arterial.body, arterial.edge, 0.6) };
  paintTube(ink, { name: "", line, from: WIDTH * size, to: 0.7 * WIDTH * size }, narrow, 0.4 * size);
}
