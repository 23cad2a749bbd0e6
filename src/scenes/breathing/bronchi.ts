import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { LungShape } from "../anatomy/lung-shape.ts";
import { underArtery } from "../anatomy/paint-lung.ts";
import { type Ink, strokes } from "../anatomy/painted-sheet.ts";
import type { Side } from "../anatomy/segments.ts";
import type { Tree } from "../anatomy/tree.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { CHEST_AT, inChest } from "../circuit/chest-plan.ts";
import { curve, placeOn, spots } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type LungSheets, lungSheets } from "./lung-sheets.ts";

/**
 * Plane units: the way of each and its width at both ends. The right upper one leaves above its lung's artery, the left artery rides over the
 * left one (common anatomy); lobes' bronchi are half as wide as the main one, segments' a third (textbook sizes, from memory).
 */
const WAYS: Readonly<Record<Side, readonly (readonly [way: string, from: number, to: number])[]>> = {
  right: [
    ["478 266, 452 282, 430 302, 414 326, 404 350", 20, 14],
    ["470 268, 446 254, 420 242, 394 236, 374 232", 15, 11],
    ["392 236, 382 222, 380 206", 9, 2],
    ["380 233, 352 228, 326 230, 302 240", 9, 2],
    ["376 232, 362 218, 344 208", 8, 2],
    ["404 348, 392 364, 372 380, 352 392", 10, 7],
    ["358 388, 330 400, 306 402", 7, 2],
    ["362 386, 352 408, 350 432", 6, 2],
    ["404 350, 394 376, 380 400, 364 424, 348 448, 336 474", 13, 2],
    ["396 372, 418 388, 430 404", 7, 2],
    ["376 406, 386 430, 394 460", 7, 2],
    ["360 430, 330 440, 298 456", 7, 2],
    ["350 446, 316 472, 284 492", 6, 2],
  ],
  left: [
    ["522 264, 556 290, 594 310, 626 322, 640 334", 18, 14],
    ["622 320, 646 312, 664 298, 668 280", 13, 10],
    ["668 280, 668 256, 662 232, 656 212", 9, 2],
    ["668 276, 688 256, 704 238", 8, 2],
    ["656 306, 684 312, 712 340, 724 366", 9, 2],
    ["700 324, 726 328, 746 340", 6, 2],
    ["640 334, 656 358, 672 384, 690 414, 704 446, 712 476", 13, 2],
    ["652 352, 676 354, 700 356", 7, 2],
    ["676 392, 700 402, 724 428", 7, 2],
    ["690 414, 686 444, 690 466", 6, 2],
    ["702 440, 728 462, 748 488", 6, 2],
  ],
};

/** Parts of the width from outside to the light, and plane units from one ring of cartilage to the next, in bronchi at least so wide. */
const LAYERS = [1.28, 1, 0.66, 0.36] as const;
const RINGS = { apart: 9, least: 8 } as const;

const lines: Readonly<
  Record<
    Side,
    readonly { readonly line: ReturnType<typeof curve>; readonly half: (part: number) => number }[]
  >
> = {
  right: WAYS.right.map(laid),
  left: WAYS.left.map(laid),
};

function laid([way, from, to]: readonly [string, number, number]) {
  return { line: curve(spots(way), 6), half: (part: number) => (from + (to - from) * part) / 2 };
}

export const bronchi = (): LungSheets => lungSheets(40, paintBronchi);

const out = new Float64Array(4);

/** mm: vessels so wide lie before the bronchi, twigs all around them. */
const BEFORE = 2.4;
const coarse = (node: Tree["nodes"][number]) => (node.width < BEFORE ? { ...node, parent: -1 } : node);

function paintBronchi(ink: Ink, lung: LungShape, theme: Theme): void {
  const { shade, body, light, edge } = legTissue("tendon", theme);
  const wall = mix(shade, edge, 0.35);
  const tones = [edge, wall, mix(wall, body, 0.45), mix(body, light, 0.2)];
  const ways = lines[lung.side];
  for (const [k, part] of LAYERS.entries())
    for (const { line, half } of ways) {
      const last = line.x.length - 1;
      for (let i = 0; i < last; i++)
        strokes(ink, [spotOf(line, i), spotOf(line, i + 1)], 1, [
          [(2 * part * half(i / last)) / CHEST_AT.scale, entryAt(tones, k)],
        ]);
    }
  for (const { line, half } of ways) {
    const count = Math.floor(line.length / RINGS.apart);
    for (let k = 1; k < count; k++) {
      const wide = half(k / count);
      if (2 * wide < RINGS.least) continue;
      placeOn(line, k / count, out);
      const [x, y, dx, dy] = [entryAt(out, 0), entryAt(out, 1), entryAt(out, 2), entryAt(out, 3)];
      const bow = ([-0.86, 0, 0.86] as const).map((across): Point => {
        const along = 0.3 * wide * (1 - across * across);
        return inChest([x - dy * across * wide + dx * along, y + dx * across * wide + dy * along]);
      });
      strokes(ink, bow, 1, [[(0.3 * wide) / CHEST_AT.scale, mix(body, light, 0.5)]]);
    }
  }
  ink.save();
  for (const { nodes, ends } of [lung.arteries, lung.veins])
    underArtery(ink, { ...lung, arteries: { ends, nodes: nodes.map(coarse) } }, 1);
  ink.restore();
}

const spotOf = ({ x, y }: ReturnType<typeof curve>, i: number): Point =>
  inChest([entryAt(x, i), entryAt(y, i)]);
