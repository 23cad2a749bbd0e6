/** How the row of growing bodies shares its box: in each column a trunk, under it the body and its tube cut across, under these their words. */
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import type { Box } from "../scene.ts";
import { type ChestPlace, trunkSize } from "./chest-place.ts";
import { faceOf, PIECE, type SectionPlace } from "./cross-section.ts";
import type { FigurePlace } from "./figure-drawing.ts";

/** Linear size of a body against another: the root of the surfaces' ratio. */
export const bodyScale = (bsa: number, against: number): number => Math.sqrt(bsa / against);

/** A figure's width, hands included, in parts of its height. */
export const FIGURE = 0.38;
/** More bodies than this are too small to look into. */
const AT_ONCE = 4;

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

/** Parts of a column that the broadest trunk takes, and the cut tube at most, aslant as it lies. */
const [TRUNK, CUT] = [0.92, 0.56];
/** Part of the way across a column where the middle of the body stands, and where that of the cut tube. */
const [BODY_AT, CUT_AT] = [0.19, 0.7];
/** Height of the tallest body over that of the cut tube. */
const TALLER = 1.3;
/** In sizes of type: over the cut tube, and under it, where its widths stand. */
const [OVER, UNDER] = [0.7, 5.1];

/** Of a row of bodies with a pathway. */
export interface Column {
  readonly point: SweepPoint;
  readonly chest: ChestPlace;
  readonly figure: FigurePlace;
  readonly section: SectionPlace;
  /** CSS px of the row under the trunks */
  readonly left: number;
  readonly wide: number;
}

/** CSS px: sizes that all columns share. */
interface Measures {
  readonly step: number;
  readonly trunk: { readonly perMillimetre: number; readonly tall: number };
  readonly section: { readonly perMillimetre: number };
  /** of the tallest body, under which also the cut tubes stay */
  readonly figure: number;
}

/** @param room CSS px of height for trunk and section at most */
function measures(shown: readonly SweepPoint[], width: number, room: number): Measures {
  // Where words leave no room the columns are tiny, not inside out.
  const most = Math.max(10, room);
  const step = width / shown.length;
  const broad = Math.max(...shown.map(({ request }) => trunkSize(request)[0]));
  const tall = trunkSize(lastOf(shown).request)[1];
  const faces = shown.map(faceOf);
  const face = Math.max(...faces.map((each) => each.wide));
  const high = Math.max(...faces.map((each) => 2 * each.over + each.wide * (1 + PIECE[1])));
  const perMillimetre = Math.min((CUT * step) / (face * (1 + PIECE[0])), (0.4 * most) / (TALLER * high));
  const least = TALLER * perMillimetre * high;
  const scale = Math.max(0.01, Math.min((TRUNK * step) / broad, (most - least) / tall));
  // What the trunks leave is the bodies'.
  const figure = Math.max(least, Math.min((2 * BODY_AT * step) / FIGURE, most - scale * tall));
  return {
    step,
    section: { perMillimetre },
    figure,
    trunk: { perMillimetre: scale, tall: scale * tall },
  };
}

export function columnsOf(shown: readonly SweepPoint[], box: Box, type: number): readonly Column[] {
  const { step, trunk, section, figure } = measures(shown, box.width, box.height - (OVER + UNDER) * type);
  const largest = lastOf(shown).at;
  const face = Math.max(...shown.map((point) => faceOf(point).wide));
  const ground = box.y + box.height - UNDER * type;
  return shown.map((point, i) => {
    const left = box.x + i * step;
    const tall = trunkSize(point.request)[1] * trunk.perMillimetre;
    const under = face * section.perMillimetre * (0.5 + PIECE[1]);
    return {
      point,
      left,
      wide: step,
      chest: {
        x: left + step / 2,
        y: ground - figure - OVER * type - tall / 2,
        perMillimetre: trunk.perMillimetre,
      },
      figure: { x: left + BODY_AT * step, ground, height: figure * bodyScale(point.at, largest) },
      section: {
        x: left + CUT_AT * step - (face * section.perMillimetre * PIECE[0]) / 2,
        y: ground - under,
        perMillimetre: section.perMillimetre,
        type,
      },
    };
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
    return Math.min(box.height * 0.5, (step * BODY) / FIGURE + (LETTERS + 0.5) * type);
  const words = (OVER + UNDER) * type;
  const most = Math.max(0, Math.min(ROW * box.height, box.height - CURVES * type));
  const { trunk, figure } = measures(shown, box.width, most - words);
  return Math.min(most, trunk.tall + figure + words);
}
