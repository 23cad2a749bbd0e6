/** Soft tissue between the lungs, behind all that lies there. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { paintOrgan } from "./paint-organ.ts";
import { boundsOf, eraseAlong, type Ink } from "./painted-sheet.ts";
import { placing } from "./placing.ts";
import { tissue } from "./tones.ts";

/** x and y in the chest: under both lungs' inner borders, down to the diaphragm. */
const OUTLINE: readonly Point[] = [
  [-17, 62],
  [-20, 46],
  [-21, 20],
  [-22, -10],
  [-26, -46],
  [20, -52],
  [74, -50],
  [72, -30],
  [62, -10],
  [50, 8],
  [46, 30],
  [40, 62],
  [10, 70],
];
/** Part of its height over which it clears upwards, half of that wholly: beside the upper vein no edge of it is to show; and how much of it is seen. */
const CLEARS = 0.56;
const SEEN = 0.75;

export const mediastinum = ({ frame }: Anatomy): readonly Point[] =>
  closedOutline(OUTLINE.map((point) => placing(frame).inChest(...point)));

export function paintMediastinum(ink: Ink, anatomy: Anatomy, theme: Theme): void {
  const [lung, sac] = [tissue("lung", theme), tissue("sac", theme)];
  const outline = mediastinum(anatomy);
  const look = { ...lung, shade: mix(lung.shade, sac.shade, 0.5), body: mix(lung.body, sac.body, 0.35) };
  paintOrgan(ink, outline, look, { depth: 9 * anatomy.frame.scale, alpha: SEEN });
  const room = boundsOf([outline], 0);
  const clear = CLEARS * (room[3] - room[1]);
  eraseAlong(ink, [0, room[3] - clear], [0, room[3] - clear / 2], room);
}
