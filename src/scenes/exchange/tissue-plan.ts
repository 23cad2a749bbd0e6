/** Where a piece of tissue has its parts, on a plane 1000 wide (y down) that is as tall as its room asks for. */
import { entryAt } from "../../sim/checked/present.ts";
import { type Curve, curve, GOLDEN, type Spot, spots } from "../drawing/curve-drawing.ts";

export const WIDTH = 1000;
/** Heights between which the plan stretches. */
const LOW = 620;
const TALL = 1240;
/** Where the stretch begins, for the capillary keeps its place, and the height in which the places are given. */
const FROM = 110;
const GIVEN = 760;

export const CAPILLARY = curve(spots("-20 96, 160 92, 340 120, 520 108, 700 124, 860 96, 1020 100"));
/** Half the capillary's lumen, and the thickness of its wall. */
export const LUMEN = 36;
export const WALL = 13;
/** Half the lymph vessel. */
export const LYMPH_HALF = 17;

interface Cell {
  readonly at: Spot;
  readonly turned: number;
  readonly kind: number;
}

interface Cavity {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface TissuePlan {
  readonly height: number;
  /** where a place of a plan 760 high lies */
  readonly down: (y: number) => number;
  /** the collecting lymph vessel, and the initial ones, which begin blind and run into it */
  readonly lymph: Curve;
  readonly initial: readonly Curve[];
  /** serous: pleura or peritoneum */
  readonly cavity: Cavity;
  readonly drain: Curve;
  readonly cells: readonly Cell[];
  /** of collagen, between the cells */
  readonly fibres: readonly Curve[];
}

/** @param height plane units, as its room has for the plane's width */
export function tissuePlan(height: number): TissuePlan {
  const tall = Math.min(TALL, Math.max(LOW, height));
  const factor = (tall - FROM) / (GIVEN - FROM);
  const down = (y: number) => (y < FROM ? y : FROM + (y - FROM) * factor);
  const course = (text: string) => curve(spots(text).map(([x, y]): Spot => [x, down(y)]));
  const lymph = course("720 470, 560 500, 380 482, 220 470, 90 420, 20 330, -20 240");
  const initial = ["850 404, 800 440, 720 470", "770 548, 700 540, 640 490", "480 400, 470 440, 420 486"].map(
    course,
  );
  const bottom = tall - 16;
  const cavity = { left: 520, right: 900, top: bottom - 134 * Math.min(1.4, factor), bottom };
  const drain = curve(
    spots("880 716, 950 726, 1000 744, 1030 770").map(([x, y]): Spot => [x, y + bottom - 744]),
  );
  const taken = [lymph, ...initial];
  const free = ([x, y]: Spot) =>
    away(CAPILLARY, x, y) > LUMEN + WALL + 52 &&
    taken.every((line) => away(line, x, y) > LYMPH_HALF + 46) &&
    (x < cavity.left - 72 || y < cavity.top - 52);
  const cells = places(tall).filter(({ at }) => free(at));
  return { height: tall, down, lymph, initial, cavity, drain, cells, fibres: fibresIn(tall) };
}

const away = ({ x, y }: Curve, px: number, py: number): number =>
  x.reduce((least, each, i) => Math.min(least, Math.hypot(each - px, entryAt(y, i) - py)), 1e9);

/** Between -1 and 1, the same at each call. */
const scatter = (seed: number): number => 2 * ((seed * GOLDEN) % 1) - 1;
const ACROSS = 142;
const ROWS = 92;

/** In rows, each shifted against the next, and none quite in line. */
function places(height: number): readonly Cell[] {
  const cells: Cell[] = [];
  for (let row = 0; 190 + row * ROWS < height - 20; row++)
    for (let column = -1; column * ACROSS < WIDTH + ACROSS; column++) {
      const seed = 17 * row + 5 * column + 41;
      cells.push({
        at: [
          (column + (row % 2) / 2) * ACROSS + 40 + 16 * scatter(seed),
          190 + row * ROWS + 12 * scatter(seed * 3),
        ],
        turned: 0.35 * scatter(seed * 7),
        kind: cells.length,
      });
    }
  return cells;
}

const fibresIn = (height: number): readonly Curve[] =>
  Array.from({ length: Math.round(height / 52) }, (_, i) => {
    const y = 150 + i * 52;
    const sway = (k: number) => y + 24 * scatter(7 * i + 3 * k + 2) + 60 * scatter(i + 1) * (k / 4 - 0.5);
    return curve(
      [0, 1, 2, 3, 4].map((k): Spot => [-30 + 265 * k, sway(k)]),
      14,
    );
  });
