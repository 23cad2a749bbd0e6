/** What lies between the lungs behind all else: soft tissue, the windpipe and both main bronchi. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { paintOrgan } from "./paint-organ.ts";
import { boundsOf, eraseAlong, type Ink, strokes } from "./painted-sheet.ts";
import { placing, smoothLine } from "./placing.ts";
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
  paintAirways(ink, anatomy, theme);
}

/** Left and right main bronchus and windpipe: widths in mm of a 5-year-old, x and y in the chest. It divides behind the arch, and the right one is wider and steeper (common anatomy). */
const AIRWAYS: readonly (readonly [width: number, ...way: Point[]])[] = [
  [7.4, [15.6, 52], [18.6, 45], [27, 36], [40, 29], [52, 25]],
  [8.6, [12.6, 52], [10.4, 45], [2, 37], [-9, 31.4], [-20, 26]],
  [11.4, [13, 90], [13.4, 66], [14, 49]],
];

function paintAirways(ink: Ink, { frame }: Anatomy, theme: Theme): void {
  const { shade, body, light, edge } = tissue("tendon", theme);
  const ways = AIRWAYS.map(
    ([width, ...way]) =>
      [width * frame.scale, smoothLine(way.map((point) => placing(frame).inChest(...point)))] as const,
  );
  ink.globalAlpha = 0.8;
  for (const [part, colour] of [
    [1.12, edge],
    [1, shade],
  ] as const)
    for (const [width, way] of ways) strokes(ink, way, width, [[part, colour]]);
  // Hoops of cartilage, in the light along its middle.
  for (const [part, colour] of [
    [0.86, mix(shade, body, 0.5)],
    [0.5, mix(body, light, 0.4)],
  ] as const) {
    ink.setLineDash([2 * frame.scale, 1.2 * frame.scale]);
    ink.lineCap = "butt";
    for (const [width, way] of ways) strokes(ink, way.slice(8), width, [[part, colour]]);
  }
}
