/** The ventricle's muscle: outside, cut in a window, and inside. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type HeartShape, PAPILLARY } from "./heart-shape.ts";
import { paintOrgan } from "./paint-organ.ts";
import { paintGroove, paintOutside } from "./paint-outside.ts";
import { type Ink, strokes, trace } from "./painted-sheet.ts";
import { smoothLine } from "./placing.ts";
import { type Round, tissue } from "./tones.ts";

/**
 * In the ventricle's own lengths: the closed heart's outside with the rudimentary right ventricle and its arteries, and in the window cut into it
 * the wall with its fibres, the ridges inside, the papillary muscles.
 */
export function paintMuscle(ink: Ink, heart: HeartShape, arterial: Round, theme: Theme): void {
  const { outer, inner } = heart;
  const look = tissue("muscle", theme);
  paintOutside(ink, heart, arterial, theme);
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  trace(ink, [...outer, [-9, 14], [-9, -19]], true);
  ink.fill();
  ink.restore();
  paintPapillary(ink, theme);
  paintRidges(ink, inner, theme);
  const cut = { ...look, light: look.body, body: mix(look.body, look.shade, 0.55) };
  paintOrgan(ink, [...outer, ...[...inner].reverse()], cut, { depth: 1.6 });
  // Fibres follow the wall.
  for (const part of [0.2, 0.35, 0.5, 0.65, 0.8])
    strokes(
      ink,
      outer.map(([x, y], i): Point => {
        const [ix, iy] = entryAt(inner, i);
        return [x + part * (ix - x), y + part * (iy - y)];
      }),
      0.28,
      [[1, part < 0.6 ? look.body : look.shade]],
    );
  const fat = tissue("fat", theme);
  strokes(ink, outer, 1, [
    [1.1, fat.edge],
    [0.7, fat.body],
  ]);
  strokes(ink, inner, 1, [
    [0.9, look.edge],
    [0.4, look.light],
  ]);
  paintGroove(ink, arterial, theme);
}

/** Trabeculae: ridges that run along the inner wall towards the apex and cross there. */
function paintRidges(ink: Ink, inner: readonly Point[], theme: Theme): void {
  const look = tissue("muscle", theme);
  inner.forEach(([x, y], i) => {
    if (i % 3 !== 0 || x < 22) return;
    const deep = 3.4 + ((i * 7) % 5) * 0.8;
    const [far, aside] = x > 30 ? [0.8, 0.5] : [0.3, 0.9];
    const tip: Point = [x - deep * far - 1, y - Math.sign(y - 0.5) * deep * aside];
    strokes(ink, [[x + 1, y], tip], 1, [
      [1.8, mix(look.shade, look.body, 0.3)],
      [1.1, look.body],
    ]);
  });
}

function paintPapillary(ink: Ink, theme: Theme): void {
  const look = tissue("muscle", theme);
  for (const [x, y] of PAPILLARY)
    strokes(
      ink,
      smoothLine([
        [x, y],
        [x + 5, y + (y > 0 ? 0.6 : -0.4)],
        [x + 10, y + (y > 0 ? 2.5 : -1)],
      ]),
      1,
      [
        [5.6, look.edge],
        [4.9, look.shade],
        [3.9, look.body],
        [1.4, look.light],
      ],
    );
}
