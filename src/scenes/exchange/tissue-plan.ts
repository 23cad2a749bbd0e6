/**
 * Where a piece of tissue has its parts, on a plane 1000 wide (y down) that is as tall as its room asks for. About twelve
 * plane units a micrometre: capillary's lumen 5 to 10 um across, in which red cells of 7 to 8 um go one by one, bent to
 * bullets; initial lymph vessels 10 to 60 um across (textbooks of histology). The collecting vessel, several times as wide
 * as those in life, is drawn as wide to have room.
 */
import { entryAt } from "../../sim/checked/present.ts";
import { type Curve, curve, GOLDEN, type Spot, spots } from "../drawing/curve-drawing.ts";
import { cellAround } from "./packed-cells.ts";

export const WIDTH = 1000;
/** Heights between which the plan stretches. */
const LOW = 800;
const TALL = 1240;
/** Where the stretch begins, for the capillary keeps its place, and the height in which the places are given. */
const FROM = 230;
const GIVEN = 1000;

export const CAPILLARY = curve(spots("-30 176, 180 172, 420 190, 640 184, 840 172, 1030 178"));
/** Half the capillary's lumen, and the thickness of its wall. */
export const LUMEN = 34;
export const WALL = 9;
/** Cells on each side of the capillary's wall, long and thin, and the clefts between them on its lower side. */
export const WALL_CELLS = 5;
export const CLEFTS = Array.from({ length: WALL_CELLS - 1 }, (_, i) => (i + 1) / WALL_CELLS);
/** Half the collecting lymph vessel, and half an initial one. */
export const LYMPH_HALF = 78;
export const INITIAL_HALF = 82;
/** Plane units of the body's wall under the cavity, and of the cavity in the height in which the places are given. */
const BODY_WALL = 50;
const CAVITY = 150;

interface Cell {
  readonly at: Spot;
  /** its corners, from its middle */
  readonly around: readonly Spot[];
}

/** The space around lungs and bowel, between the tissue's lower edge and the body's wall; it goes on beyond the picture. */
interface Cavity {
  /** flat cells along the tissue's edge, and the parts of its length at which water passes between two of them */
  readonly lining: Curve;
  readonly gaps: readonly number[];
  /** y of the lining's lowest place; y of the body's wall */
  readonly top: number;
  readonly bottom: number;
}

/** A lymph vessel that begins blind, and the part of the collecting one's length at which it runs into that. */
interface Initial {
  readonly line: Curve;
  readonly joins: number;
  /** parts of the capillary's length: the clefts nearest to its blind end, from the left */
  readonly clefts: readonly number[];
}

export interface TissuePlan {
  readonly height: number;
  /** where a place of a plan 760 high lies */
  readonly down: (y: number) => number;
  /** the collecting lymph vessel */
  readonly lymph: Curve;
  readonly initial: readonly Initial[];
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
  const lymph = course("800 580, 714 630, 610 641, 480 640, 330 628, 200 600, 80 560, -120 490");
  const initial = [
    "850 350, 862 420, 850 500, 800 580, 714 630",
    "452 346, 470 420, 462 500, 424 574, 330 628",
  ].map((text): Initial => {
    const line = course(text);
    return {
      line,
      joins: nearest(lymph, [entryAt(line.x, line.x.length - 1), entryAt(line.y, line.y.length - 1)]),
      clefts: cleftsNear(entryAt(line.x, 0)),
    };
  });
  const bottom = tall - BODY_WALL;
  const top = bottom - CAVITY * Math.min(1.4, factor);
  const cavity = { lining: liningAt(top), gaps: GAPS, top, bottom };
  const drain = curve(
    spots("560 -28, 660 -26, 760 -24, 840 -12, 920 26, 1040 96").map(([x, y]): Spot => [x, y + bottom]),
  );
  return { height: tall, down, lymph, initial, cavity, drain, cells: cellsIn(tall), fibres: fibresIn(tall) };
}

/** Part of the line's length at which it comes nearest to a spot. */
function nearest({ x, y }: Curve, [px, py]: Spot): number {
  const away = Array.from(x, (each, i) => Math.hypot(each - px, entryAt(y, i) - py));
  return away.indexOf(Math.min(...away)) / (x.length - 1);
}

const cleftsNear = (x: number): readonly number[] => {
  const away = (cleft: number) =>
    Math.abs(entryAt(CAPILLARY.x, Math.round(cleft * (CAPILLARY.x.length - 1))) - x);
  return CLEFTS.toSorted((a, b) => away(a) - away(b))
    .slice(0, 2)
    .sort();
};

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
const ACROSS = 148;
const ROWS = 96;
/** Plane units between two cells at rest. */
const APART = 5;

/** In rows, each shifted against the next, and none quite in line; some beyond the borders, to be there when the tissue shrinks. */
function cellsIn(height: number): readonly Cell[] {
  const middles: Spot[] = [];
  for (let row = 0; 30 + row * ROWS < height + ROWS; row++)
    for (let column = -1; (column - 1) * ACROSS < WIDTH + ACROSS; column++) {
      const seed = 17 * row + 5 * column + 41;
      middles.push([
        (column + (row % 2) / 2) * ACROSS + 26 * scatter(seed),
        30 + row * ROWS + 20 * scatter(seed * 3),
      ]);
    }
  return middles.map((at) => ({ at, around: cellAround(at, middles, APART) }));
}

const fibresIn = (height: number): readonly Curve[] =>
  Array.from({ length: Math.round(height / 46) }, (_, i) => {
    const y = 180 + i * 46;
    const sway = (k: number) => y + 26 * scatter(7 * i + 3 * k + 2) + 130 * scatter(i + 1) * (k / 4 - 0.5);
    return curve(
      [0, 1, 2, 3, 4].map((k): Spot => [-30 + 265 * k, sway(k)]),
      14,
    );
  });
