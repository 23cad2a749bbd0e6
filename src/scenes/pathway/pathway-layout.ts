/** Where plane, grade line and key go, at any size: pure arithmetic. */
import type { Frame } from "../../chain/frame.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { PathwayGeometry } from "../../sim/geometry/geometry.ts";
import { lungsOf } from "../anatomy/chest-anatomy.ts";
import { splitBox } from "../drawing/split.ts";
import { type LegendPlace, LINE } from "../layers/legend.ts";
import type { Box, Divider, Viewport } from "../scene.ts";
import { type Sizes, sizesIn } from "../theme/type.ts";

/** How a drawing is laid out. */
export interface Laid {
  readonly at: Layout;
  readonly keyAt: LegendPlace;
  /** null before the first drawing */
  readonly key: Box | null;
  readonly sizes: Sizes;
  /** what is seen of each pathway, where they lie one over the other */
  readonly over?: {
    readonly sides: readonly Box[];
    readonly sight: Sight;
    readonly divider: Divider;
  };
}

export interface Layout {
  readonly planes: readonly Box[];
  /** one above each plane where several are compared, else none */
  readonly titles: readonly Box[];
  /** null when the view does not ask for it */
  readonly grade: Box | null;
  readonly narrow: boolean;
}

/** @param key the room that the key took in the last drawing. @param rows of words under the titles */
export function layOut({ panes, state }: Frame, { clear, floor }: Viewport, key: Box | null, rows = 0): Laid {
  const sizes = sizesIn(clear, floor);
  const keyAt = keyPlace(clear, panes.length, sizes);
  const taken = key ?? { ...keyAt, height: keyAt.inline ? LINES * LINE * sizes.axis : 0 };
  const at = layout(clear, panes.length, state.view.gradeLine, taken, sizes);
  const more = Math.round(rows * 1.25 * sizes.axis);
  return { at: more > 0 ? underTitles(at, more) : at, keyAt, key, sizes };
}

/** What a key along the top takes in most windows: the planes then lie from the first drawing where they will with the key. */
const LINES = 2;

/** Where the key goes: down the side of a wide scene with one pane, else along its top. */
export function keyPlace(clear: Box, panes: number, sizes: Sizes): LegendPlace {
  const pad = padding(sizes);
  const inline = panes > 1 || crowded(clear, sizes);
  return {
    x: clear.x + pad,
    y: clear.y + pad,
    width: inline ? clear.width - 2 * pad : Math.min(clear.width * 0.26, sizes.axis * 14),
    inline,
  };
}

const padding = (sizes: Sizes): number => Math.round(sizes.axis * 0.8);

/** Too narrow or too low for a key beside the vessels. */
const crowded = (clear: Box, sizes: Sizes): boolean =>
  clear.width < 36 * sizes.axis ||
  clear.width < 0.9 * clear.height ||
  clear.height < 29 * sizes.axis ||
  clear.width - PICTURE * clear.height < 2 * ASIDE * sizes.axis;

/** Width of a body over the height that it has above a grade line and under a title, and that of the whole. */
const WIDE = 1.22;
const PICTURE = 0.74 * WIDE;
/** Widths of type that a key needs beside a body. */
const ASIDE = 6;

/** Heights of type that vessels need at least above the grade line; a wide box with less sets it beside them. */
const MIN_PLANE = 20;
/** Share of the width that the grade line then takes. */
const BESIDE = 0.46;

/** With titles that are higher by `more`, CSS px. */
const underTitles = (at: Layout, more: number): Layout => ({
  ...at,
  planes: at.planes.map((box) => ({ ...box, y: box.y + more, height: Math.max(1, box.height - more) })),
  titles: at.titles.map((box) => ({ ...box, height: box.height + more })),
});

/** `key`: the room that the key has taken. */
export function layout(clear: Box, panes: number, gradeLine: boolean, key: Box, sizes: Sizes): Layout {
  const pad = padding(sizes);
  const narrow = clear.width < 36 * sizes.axis || clear.height < 16 * sizes.axis;
  const top = keyPlace(clear, panes, sizes).inline ? key.y + key.height - clear.y : 0;
  // In a narrow box the key of three lines stands above them.
  const keyed = panes > 2 && clear.width < 46 * sizes.axis ? 1.4 * sizes.label * panes : 0;
  const height = gradeLine
    ? Math.max(sizes.axis * 8.5, Math.min(clear.height * 0.26, sizes.axis * 13)) + keyed
    : 0;
  const low =
    gradeLine && clear.height - height - top < MIN_PLANE * sizes.axis && clear.width > 1.6 * clear.height;
  const across = low ? clear.width * BESIDE : clear.width;
  const grade = gradeLine
    ? {
        x: clear.x + clear.width - across + pad,
        y: low ? clear.y + top : clear.y + clear.height - height,
        width: across - 2 * pad,
        height: low ? Math.max(1, clear.height - top) : height - pad / 2,
      }
    : null;
  const boxes = inBoxes(
    {
      x: clear.x,
      y: clear.y + top,
      width: low ? clear.width - across : clear.width,
      height: Math.max(1, clear.height - (low ? 0 : height) - top),
    },
    panes,
    pad,
  );
  const titled = panes > 1 ? Math.round(sizes.label * 1.9) : 0;
  return {
    planes: boxes.map((box) => ({ ...box, y: box.y + titled, height: Math.max(1, box.height - titled) })),
    titles: titled > 0 ? boxes.map((box) => ({ ...box, height: titled })) : [],
    grade,
    narrow,
  };
}

/** Boxes in a row, one above another, or of three two above the third: whichever leaves the pictures largest. */
export function inBoxes(box: Box, count: number, pad: number): readonly Box[] {
  const plain = splitBox(box, count, pad);
  if (count !== 3) return plain;
  const [width, height] = [(box.width - pad) / 2, (box.height - pad) / 2];
  const cell = (x: number, y: number): Box => ({ x: box.x + x, y: box.y + y, width, height });
  const pyramid = [cell(0, 0), cell(width + pad, 0), cell((box.width - width) / 2, height + pad)];
  return pictureIn(entryAt(pyramid, 0)) > pictureIn(entryAt(plain, 0)) ? pyramid : plain;
}

const pictureIn = ({ width, height }: Box): number => Math.min(width / WIDE, height);

/** mm of a 5-year-old below the lower opening: liver and hepatic veins show */
const BEYOND = 26;
/** mm of a 5-year-old above the upper one: the branches of the arch and the veins from head and arms show */
const ABOVE = 21;

/** [left, bottom, right, top] mm */
export type Extent = readonly [number, number, number, number];

/** What a camera looks at. */
export interface Sight {
  /** of what is seen whole */
  readonly extent: Extent;
  readonly places: PathwayGeometry["places"];
}

/** What has to be seen whole: the blood, the heart, and the lungs to their sides; veins and lung bases may run out of the picture. */
export function extent({ bounds, chest }: Pick<PathwayGeometry, "bounds" | "chest">): Extent {
  const [left, , right] = bounds;
  const s = chest.scale;
  const xs = lungsOf(chest).flatMap(({ outline }) => outline.map(([x]) => x));
  return [
    Math.min(left, ...xs),
    chest.ivc.centre[1] - BEYOND * s,
    Math.max(right, ...xs),
    chest.svc.centre[1] + ABOVE * s,
  ];
}

/** mm -> CSS px, y turned over. */
export interface Projection {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** Fits [left, bottom, right, top] mm into a box, centred. */
export function project(box: Box, [left, bottom, right, top]: Extent): Projection {
  const scale = Math.min(box.width / (right - left), box.height / (top - bottom));
  return {
    scale,
    x: box.x + box.width / 2 - (scale * (left + right)) / 2,
    y: box.y + box.height / 2 + (scale * (bottom + top)) / 2,
  };
}

export const onScreen = (
  { scale, x, y }: Projection,
  [px, py]: readonly [number, number],
): readonly [number, number] => [x + scale * px, y - scale * py];

export const onPlane = ({ scale, x, y }: Projection, sx: number, sy: number): readonly [number, number] => [
  (sx - x) / scale,
  (y - sy) / scale,
];
