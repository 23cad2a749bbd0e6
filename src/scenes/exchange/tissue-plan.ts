/**
 * Where a piece of tissue has its parts, on a plane 1000 wide (y down) that is as tall as its room asks for. About twelve
 * plane units a micrometre in the capillary: lumen 5 to 10 um across, in which red cells of 7 to 8 um go one by one, bent
 * to bullets (textbooks of histology). Lymph vessels, several times as wide in life, are drawn smaller to have room.
 */
import { entryAt } from "../../sim/checked/present.ts";
import { type Curve, curve, GOLDEN, type Spot, spots } from "../drawing/curve-drawing.ts";
import { cellAround } from "./packed-cells.ts";

export const WIDTH = 1000;
/** Heights between which the plan stretches. */
const LOW = 620;
const TALL = 1240;
/** Where the stretch begins, for the capillary keeps its place, and the height in which the places are given. */
const FROM = 110;
const GIVEN = 760;

export const CAPILLARY = curve(spots("-30 102, 180 98, 420 116, 640 110, 840 98, 1030 104"));
/** Half the capillary's lumen, and the thickness of its wall. */
export const LUMEN = 38;
export const WALL = 8;
/** Half the collecting lymph vessel, and half an initial one, which is wider. */
export const LYMPH_HALF = 25;
export const INITIAL_HALF = 31;

interface Cell {
  readonly at: Spot;
  /** its corners, from its middle */
  readonly around: readonly Spot[];
}

interface Cavity {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A lymph vessel that begins blind, and the part of the collecting one's length at which it runs into that. */
interface Initial {
  readonly line: Curve;
  readonly joins: number;
}

export interface TissuePlan {
  readonly height: number;
  /** where a place of a plan 760 high lies */
  readonly down: (y: number) => number;
  /** the collecting lymph vessel */
  readonly lymph: Curve;
  readonly initial: readonly Initial[];
  /** serous: pleura or peritoneum */
  readonly cavity: Cavity;
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
  const lymph = course("668 486, 560 502, 440 488, 300 486, 160 452, 60 370, -40 268");
  const initial = [
    "876 336, 856 390, 800 440, 730 474, 660 488",
    "560 318, 568 380, 548 440, 506 494",
    "300 346, 318 400, 300 446, 250 480",
  ].map((text): Initial => {
    const line = course(text);
    return {
      line,
      joins: nearest(lymph, [entryAt(line.x, line.x.length - 1), entryAt(line.y, line.y.length - 1)]),
    };
  });
  const bottom = tall - 18;
  const cavity = { left: 470, right: 880, top: bottom - 150 * Math.min(1.4, factor), bottom };
  const drain = curve(
    spots("862 708, 930 716, 985 736, 1030 770").map(([x, y]): Spot => [x, y + bottom - 744]),
  );
  return { height: tall, down, lymph, initial, cavity, drain, cells: cellsIn(tall), fibres: fibresIn(tall) };
}

/** Part of the line's length at which it comes nearest to a spot. */
function nearest({ x, y }: Curve, [px, py]: Spot): number {
  const away = Array.from(x, (each, i) => Math.hypot(each - px, entryAt(y, i) - py));
  return away.indexOf(Math.min(...away)) / (x.length - 1);
}

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
