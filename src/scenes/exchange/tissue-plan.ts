/**
 * Where a piece of tissue has its parts, on a plane 1000 wide (y down) that is as tall as its room asks for, in three scales with a tear
 * between: the capillary's lumen 5 to 10 um across, in which red cells of 7 to 8 um go one by one, bent to bullets; initial lymph vessels 10
 * to 60 um across and a first collecting one of 60 (to 200 further on; textbooks of histology); and the body's own.
 */
import { entryAt, present } from "../../sim/checked/present.ts";
import { type Curve, curve, type Spot, spots } from "../drawing/curve-drawing.ts";
import { GOLDEN } from "../drawing/even-spread.ts";
import { beside } from "./tube.ts";

export const WIDTH = 1000;
/** Plane units of a micrometre at the capillary, and at the lymph vessels. */
export const MICROMETRE = 12;
export const LYMPH_MICROMETRE = 2;
/** Heights between which the plan stretches. */
const LOW = 880;
const TALL = 1240;
/** Where the stretch begins, for the capillary keeps its place, and the height in which the places are given. */
const FROM = 230;
const GIVEN = 1000;

export const CAPILLARY = curve(spots("-30 176, 180 172, 420 190, 640 184, 840 172, 1030 178"));
/** Half the capillary's lumen, and the thickness of its wall. */
export const LUMEN = 34;
export const WALL = 9;
/** Cells on each side of the capillary's wall, long and thin; those on one side lie against the clefts of the other. */
export const WALL_CELLS = 5;
/** Clefts between them along the capillary: part of its length, and the side, 1 below. */
export const CLEFTS = Array.from({ length: 2 * WALL_CELLS - 1 }, (_, i) => ({
  at: (i + 1) / (2 * WALL_CELLS),
  side: i % 2 === 0 ? -1 : 1,
}));
/** Half the collecting lymph vessel, an initial one, and a bud of that. */
export const LYMPH_HALF = 62;
export const INITIAL_HALF = 29;
export const BUD_HALF = 23;
/** Plane units of the body's wall under the cavity and of the cavity, in the height in which the places are given. */
const BODY_WALL = 66;
const CAVITY = 164;
/** Plane units: where the picture goes over to the lymph vessels' scale, how far under the lining to the body's own, and the gap that says so. */
export const TORN_AT = 286;
const FILM = 34;
export const BREAK = 28;
/** Half the drain's width, and plane units of a centimetre beneath the gap: the drain is one of 18 Fr, 6 mm thick. */
export const DRAIN = 14;
export const CENTIMETRE = (2 * DRAIN) / 0.6;

/** Of loose connective tissue: most cells make its fibres. */
export type CellKind = "fibroblast" | "macrophage";

export interface Cell {
  readonly kind: CellKind;
  readonly at: Spot;
  /** half its length and half its breadth, and the turn of its length, radians */
  readonly half: Spot;
  readonly turn: number;
}

/** The space around lungs and bowel, between the tissue's lower edge and the body's wall; it goes on beyond the picture. */
interface Cavity {
  /** flat cells along the tissue's edge, and the parts of its length at which water passes between two of them */
  readonly lining: Curve;
  readonly gaps: readonly number[];
  /** y of the lining's lowest place; of the gap from the tissue's scale to the body's; and of the body's wall */
  readonly top: number;
  readonly gap: number;
  readonly bottom: number;
}

/** A lymph vessel that begins blind. */
export interface Blind {
  readonly line: Curve;
  /** plane units: half its width, and half of that of the vessel that it runs into */
  readonly half: number;
  readonly into: number;
}

/** One with doors, and the part of the collecting one's length at which it runs into that. */
interface Initial extends Blind {
  readonly joins: number;
}

export interface TissuePlan {
  readonly height: number;
  /** where a place of a plan 760 high lies */
  readonly down: (y: number) => number;
  /** the collecting lymph vessel */
  readonly lymph: Curve;
  readonly initial: readonly Initial[];
  /** of initial ones */
  readonly buds: readonly Blind[];
  readonly cavity: Cavity;
  /** from its tip in the cavity through the body's wall */
  readonly drain: Curve;
  readonly cells: readonly Cell[];
  /** of collagen, between the cells and before them */
  readonly fibres: readonly Curve[];
}

/** @param height plane units, as its room has for the plane's width */
export function tissuePlan(height: number): TissuePlan {
  const tall = Math.min(TALL, Math.max(LOW, height));
  const factor = (tall - FROM) / (GIVEN - FROM);
  const down = (y: number) => (y < FROM ? y : FROM + (y - FROM) * factor);
  const course = (text: string) => curve(spots(text).map(([x, y]): Spot => [x, down(y)]));
  const lymph = course("822 500, 792 558, 714 598, 610 606, 480 604, 330 598, 200 586, 80 560, -120 496");
  const initial = [
    "876 358, 868 400, 862 444, 846 476, 822 504, 792 558, 714 598",
    "452 358, 462 402, 460 446, 448 486, 420 530, 376 570, 318 598",
  ].map((text): Initial => {
    const line = course(text);
    return {
      line,
      half: INITIAL_HALF,
      into: LYMPH_HALF,
      joins: nearest(lymph, [entryAt(line.x, line.x.length - 1), entryAt(line.y, line.y.length - 1)]),
    };
  });
  const buds = [
    "744 352, 764 392, 802 428, 856 452",
    "612 446, 676 452, 748 470, 834 494",
    "586 356, 562 394, 520 432, 456 464",
    "324 366, 348 408, 386 446, 440 492",
  ].map(
    (text): Blind => ({
      line: course(text),
      half: BUD_HALF,
      into: BUD_HALF,
    }),
  );
  const vessels = [
    ...[...initial, ...buds].map(({ line, half }) => [line, half] as const),
    [lymph, LYMPH_HALF] as const,
  ];
  const bottom = tall - BODY_WALL * Math.min(1, factor);
  const top = bottom - CAVITY * Math.min(1.4, factor);
  const cavity = { lining: liningAt(top), gaps: GAPS, top, gap: top + FILM, bottom };
  const drain = curve(
    spots("560 -22, 650 -21.5, 730 -20, 796 -7, 846 28, 890 76, 930 130").map(
      ([x, y]): Spot => [x, y + bottom],
    ),
  );
  return {
    height: tall,
    down,
    lymph,
    initial,
    buds,
    cavity,
    drain,
    cells: cellsIn(tall, down, vessels),
    fibres: fibresIn(tall),
  };
}

/** Part of the line's length at which it comes nearest to a spot. */
export function nearest({ x, y }: Curve, [px, py]: Spot): number {
  const away = Array.from(x, (each, i) => Math.hypot(each - px, entryAt(y, i) - py));
  return away.indexOf(Math.min(...away)) / (x.length - 1);
}

/** Plane units: thickness of the cavity's lining. */
export const LINING = 10;
/** Flat cells that line the picture's width, and those of them before which water passes. */
export const LINING_CELLS = 10;
const GAPS = [5, 6, 7].map((cell) => cell / LINING_CELLS);
/** Plane units by which the tissue's edge heaves. */
const HEAVE = 7;

const liningAt = (top: number): Curve =>
  curve(Array.from({ length: 7 }, (_, i): Spot => [-60 + (i * 1120) / 6, top - HEAVE * (i % 2 ? 2 : 0.3)]));

/** Between -1 and 1, the same at each call. */
const scatter = (seed: number): number => 2 * ((seed * GOLDEN) % 1) - 1;
const ACROSS = 188;
const ROWS = 104;
/** Half the length and breadth of each kind, plane units, and up to which part of all cells it is of that kind. */
const KINDS: readonly (readonly [CellKind, half: Spot, upTo: number])[] = [
  ["macrophage", [34, 25], 0.36],
  ["fibroblast", [74, 13], 1],
];
/** Plane units that stay free for the water: across and down under a cleft, and around a lymph vessel. */
const UNDER = [80, 110] as const;
const AROUND = 46;

/** Plane units across, and down in the height in which the places are given: a way on the right of all lymph vessels, and what it needs. */
export const PAST_LYMPH = { x: 958, from: 330, to: 600 } as const;
const NEEDS = 80;

/** In rows, each shifted against the next, and none quite in line; some beyond the borders, to be there when the tissue shrinks. */
function cellsIn(
  height: number,
  down: (y: number) => number,
  vessels: readonly (readonly [Curve, half: number])[],
): readonly Cell[] {
  const free = ([x, y]: Spot): boolean =>
    !(Math.abs(x - PAST_LYMPH.x) < NEEDS && y > down(PAST_LYMPH.from) && y < down(PAST_LYMPH.to)) &&
    CLEFTS.every(({ at, side }) => {
      const [cx, cy] = beside(CAPILLARY, at, side * LUMEN);
      return Math.abs(x - cx) > UNDER[0] || side * (y - cy) < 0 || side * (y - cy) > UNDER[1];
    }) &&
    vessels.every(([line, half]) =>
      line.x.every((each, i) => Math.hypot(each - x, entryAt(line.y, i) - y) > half + AROUND),
    );
  const found: Cell[] = [];
  for (let row = 0; 30 + row * ROWS < height + ROWS; row++)
    for (let column = -1; (column - 1) * ACROSS < WIDTH + ACROSS; column++) {
      const seed = 17 * row + 5 * column + 41;
      const at: Spot = [
        (column + (row % 2) / 2) * ACROSS + 22 * scatter(seed),
        30 + row * ROWS + 18 * scatter(seed * 3),
      ];
      const [kind, half] = present(KINDS.find(([, , upTo]) => (scatter(seed * 11) + 1) / 2 < upTo));
      if (free(at)) found.push({ kind, half, at, turn: 0.42 * scatter(seed * 7) });
    }
  return found;
}

/** Plane units from one bundle to the next, and of its waves. */
const BUNDLES = 40;
const WAVES = { high: 5, long: 90 } as const;

const fibresIn = (height: number): readonly Curve[] =>
  Array.from({ length: Math.round(height / BUNDLES) + 3 }, (_, i) => {
    const y = i * BUNDLES;
    const tilt = 170 * scatter(i + 1);
    return curve(
      Array.from({ length: 36 }, (_, k): Spot => {
        const x = -30 + 31 * k;
        const wave = WAVES.high * Math.sin((2 * Math.PI * x) / WAVES.long + 3 * i);
        return [x, y + 24 * Math.sin(x / 210 + 5 * i) + tilt * (x / WIDTH - 0.5) + wave];
      }),
      8,
    );
  });
