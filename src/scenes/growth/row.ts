/** How growing bodies share their box: on one ground persons, each with the lens on its chest beside it or, where there is height, beneath it; words under both. */
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import type { Box } from "../scene.ts";
import { chestOf, type LensPlace, risingIn } from "./lens-place.ts";

/** Linear size of a body against another: the root of the surfaces' ratio. */
export const bodyScale = (bsa: number, against: number): number => Math.sqrt(bsa / against);

/** CSS px: the middle of the feet, the ground, the body's height. */
export interface PersonPlace {
  readonly x: number;
  readonly ground: number;
  readonly height: number;
}

/** A person's width, hands included, in parts of the height. */
export const WIDE = 0.38;
/** More bodies than this are too small to look into. */
const AT_ONCE = 3;

/** As many as there is room for, spread over the years, first and last among them. @param need CSS px of each */
export function shownOf<T extends Shown>(points: readonly T[], width: number, need: number): readonly T[] {
  const room = Math.max(2, Math.floor(width / need));
  const pathway = points.some(({ request }) => hasPathway(request.stage));
  const count = Math.min(points.length, pathway ? AT_ONCE : points.length, room);
  return Array.from({ length: count }, (_, i) =>
    entryAt(points, Math.round((i * (points.length - 1)) / (count - 1))),
  );
}

type Shown = Pick<SweepPoint, "request">;

/** In sizes of type: under the feet the age, under a lens the widths, and the air between columns. */
const [AGE, WIDTHS, GAP] = [2, 4.2, 2];
/** A lens's width in heights of its person: at least, at most, and beneath the feet at most. */
const [MIN_LENS, MAX_LENS, BENEATH] = [0.56, 0.82, 1.05];

/** Of a row of bodies with a pathway. */
export interface Column {
  readonly point: SweepPoint;
  readonly lens: LensPlace;
  /** CSS px */
  readonly radius: number;
  readonly person: PersonPlace;
  readonly left: number;
  readonly wide: number;
  /** upper end of its widths' words */
  readonly words: number;
}

/** CSS px, of the largest body; the others' are in scale. */
interface Measures {
  readonly height: number;
  readonly lens: number;
  /** whether lenses lie under the feet, and beside persons whether words do, for which lenses are too narrow */
  readonly beneath: boolean;
  readonly low: boolean;
  /** of all bodies' sizes, the largest's being 1 */
  readonly sum: number;
  /** of the whole row */
  readonly tall: number;
}

/** @param need CSS px of a body's words */
function measures(
  shown: readonly SweepPoint[],
  { width, height: room }: Pick<Box, "width" | "height">,
  type: number,
  need: number,
): Measures {
  const largest = lastOf(shown).at;
  const sum = shown.reduce((all, { at }) => all + bodyScale(at, largest), 0);
  const gap = GAP * type;
  const across = Math.max(10, (width - shown.length * gap) / sum);
  const beside = (words: number) => {
    const height = Math.min(Math.max(10, room - words * type), across / (WIDE + MIN_LENS));
    return { height, lens: Math.min(MAX_LENS * height, across - WIDE * height), tall: height + words * type };
  };
  const smallest = bodyScale(entryAt(shown, 0).at, largest);
  const low = smallest * beside(AGE).lens < need - 2 * type;
  const aside = beside(low ? AGE + WIDTHS : AGE);
  // Under the feet: as wide as the column.
  const under = Math.min(across, (room - (AGE + WIDTHS) * type) / (1 / BENEATH + 1));
  if (under > 1.2 * aside.lens)
    return {
      height: under / BENEATH,
      lens: under,
      beneath: true,
      low: false,
      sum,
      tall: under / BENEATH + under + (AGE + WIDTHS) * type,
    };
  return { ...aside, beneath: false, low, sum };
}

export function columnsOf(
  shown: readonly SweepPoint[],
  box: Box,
  type: number,
  need: number,
): readonly Column[] {
  const { height, lens, beneath, low, sum } = measures(shown, box, type, need);
  const largest = lastOf(shown).at;
  const ground = box.y + (beneath ? height : box.height - (low ? AGE + WIDTHS : AGE) * type);
  const each = beneath ? lens : WIDE * height + lens;
  const spare = (box.width - sum * each) / shown.length;
  const scale = lens / 2 / chestOf(lastOf(shown).request).reach;
  /** CSS px from the middle of a lens up to the upper end of its tube */
  const over = (point: SweepPoint) => -risingIn(point.request, { x: 0, y: 0, perMillimetre: scale })(1).y;
  const foot = beneath ? box.y + box.height - WIDTHS * type : ground - (low ? 0 : (WIDTHS - AGE) * type);
  // All tubes begin on one level.
  const level = foot - lens / 2 - over(lastOf(shown));
  let left = box.x;
  return shown.map((point) => {
    const size = bodyScale(point.at, largest);
    const wide = size * each + spare;
    const x = left + spare / 2;
    const radius = (size * lens) / 2;
    const lensY = level + over(point);
    const column: Column = {
      point,
      lens: {
        x: beneath ? left + wide / 2 : x + WIDE * size * height + radius,
        y: lensY,
        perMillimetre: scale,
      },
      radius,
      words: low ? ground + AGE * type : lensY + radius + 0.4 * type,
      person: {
        x: beneath ? left + wide / 2 : x + (WIDE * size * height) / 2,
        ground,
        height: size * height,
      },
      left,
      wide,
    };
    left += wide;
    return column;
  });
}

/** CSS px: without a pathway the words under a body, and the part of a column that the widest body takes. */
export const LETTERS = 2;
export const BODY = 0.92;

/** In sizes of type: what the curves under the row need. */
const CURVES = 17;

/** Part of the box that the row takes at most. */
const ROW = 0.7;

/** CSS px that the row takes of the box: more than half of it, less where its width already limits it. @param need CSS px of each body */
export function rowHeight(box: Box, points: readonly SweepPoint[], type: number, need: number): number {
  const shown = shownOf(points, box.width, need);
  const step = box.width / shown.length;
  if (!hasPathway(entryAt(shown, 0).request.stage))
    return Math.min(box.height * 0.5, (step * BODY) / WIDE + (LETTERS + 0.5) * type);
  const most = Math.max(0, Math.min(ROW * box.height, box.height - CURVES * type));
  return Math.min(most, measures(shown, { width: box.width, height: most }, type, need).tall);
}
