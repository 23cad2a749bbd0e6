/** What lies between the lungs behind all else: soft tissue, the windpipe and both main bronchi. */
import { lastOf } from "../../sim/checked/present.ts";
import { closedOutline, line, spotAt } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { arched } from "./paint-graft.ts";
import { paintOrgan } from "./paint-organ.ts";
import { paintTubes } from "./paint-tube.ts";
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

/** Windpipe, right and left main bronchus, x and y in the chest, with widths at both ends, mm of a 5-year-old: it divides behind the arch, and the right one is wider and steeper (common anatomy). */
const AIRWAYS: readonly (readonly [from: number, to: number, ...Point[]])[] = [
  [8.4, 7.4, [14, 40], [27, 33.4], [40, 28], [52, 25]],
  [9.6, 9, [14, 40], [4, 37], [-8, 33], [-20, 27]],
  [12, 11, [13, 90], [13.4, 66], [14, 38]],
];
/** mm of a 5-year-old from one cartilage to the next */
const PITCH = 3.6;

function paintAirways(ink: Ink, { frame }: Anatomy, theme: Theme): void {
  const { scale } = frame;
  const { shade, body, light, edge } = tissue("tendon", theme);
  const tubes = AIRWAYS.map(([from, to, ...way]) => ({
    name: "",
    line: smoothLine(way.map((point) => placing(frame).inChest(...point))),
    from: from * scale,
    to: to * scale,
  }));
  ink.globalAlpha = 0.8;
  paintTubes(ink, tubes, { wall: edge, edge: mix(shade, edge, 0.4), body: shade, light: body }, scale);
  for (const { line: way, from, to } of tubes) {
    const whole = line(way);
    const count = Math.floor(lastOf(whole.run) / (PITCH * scale));
    for (let k = 1; k < count; k++) {
      const { at, left } = spotAt(whole, k / count);
      const half = 0.47 * (from + ((to - from) * k) / count);
      const end = (side: number): Point => [at[0] + side * half * left[0], at[1] + side * half * left[1]];
      strokes(ink, arched(end(1), end(-1)), scale, [[1.7, light]]);
    }
  }
}
