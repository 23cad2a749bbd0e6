/** A bed of capillaries between an artery and a vein: arterioles that branch, venules that gather and a mesh between them; a fine one is strands side by side. */

import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { roundOf } from "../anatomy/tones.ts";
import type { Brush } from "../drawing/brush.ts";
import type { Curve, Spot } from "../drawing/curve-drawing.ts";
import { GOLDEN, part } from "../drawing/even-spread.ts";
import { bloodColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationAlong } from "./circuit-blood.ts";
import { type Laid, placeBetween } from "./dots.ts";
import { dimOf, type Emphasis } from "./emphasis.ts";

/** Plane units between fine strands, of their width, by which they wind; how strong they are. */
const NET = 7;
const FINE = { width: 1.2, winds: 3, shown: 0.28 } as const;
/** Samples of one colour. */
const PIECE = 4;
/** How strong a branched bed's colours are. */
const SHOWN = 0.8;

/** Plane units from one arteriole to the next, and what lies of a branch within the vessel that it leaves. */
const APART = 30;
const ROOT = 3;
/** Of a stem, its branches and theirs: part of the way across, how far they run along and part, in plane units, and their width. */
const ORDERS = [
  { reach: 0.2, along: 15, parts: 0, width: 2.6 },
  { reach: 0.24, along: 9, parts: 11, width: 1.8 },
  { reach: 0.2, along: 5, parts: 7, width: 1.1 },
] as const;
/** Of the mesh between the last ones, in plane units. */
const MESH = 1;
/** How uneven lengths and directions are. */
const UNEVEN = 0.6;

/** In parts of the length of both lines and of the way from one to the other. */
interface Branch {
  readonly from: Spot;
  readonly to: Spot;
  readonly order: number;
}

/** Trees that grow from the first line along its way, evenly set and without chance, yet none like its neighbour. @param length plane units of the line */
function branches(length: number, root: number, seed: number): readonly Branch[] {
  const all: Branch[] = [];
  let k = seed;
  const odd = (): number => UNEVEN * (2 * part(GOLDEN * ++k * k) - 1);
  const grow = (from: Spot, order: number): void => {
    const { reach, along, parts } = entryAt(ORDERS, order);
    for (const side of order === 0 ? [0] : [-1, 1]) {
      const x = from[0] + (along + side * parts + 0.8 * (along + parts) * odd()) / length;
      const to: Spot = [Math.min(1, Math.max(0, x)), from[1] + reach * (1 + odd())];
      all.push({ from, to, order });
      if (order + 1 < ORDERS.length) grow(to, order + 1);
    }
  };
  const count = Math.max(2, Math.round(length / APART));
  for (let i = 0; i < count; i++) grow([Math.max(0, (i + 0.2 + 0.7 * odd()) / count), root], 0);
  return all;
}

export function drawBed(
  ink: Brush,
  { vessel, line, between }: Laid,
  circulation: Circulation,
  theme: Theme,
  emphasis: Emphasis,
): void {
  const { colour } = theme;
  const lit = emphasis.lit.has(vessel.name);
  const last = line.x.length - 1;
  const shown = vessel.fine ? FINE.shown : SHOWN;
  const wider = vessel.widened ?? 1;
  const tint = (fraction: number) => {
    const saturation = saturationAlong(circulation, vessel, fraction);
    // On the dark stage, and where it is branched, as the vessels it lies between.
    const blood =
      vessel.fine || theme.name === "light"
        ? bloodColour(colour, saturation)
        : roundOf(saturation, theme).light;
    return mix(mix(colour.lumen, blood, lit ? 0.95 : shown), colour.stage, dimOf(emphasis, vessel.name));
  };
  if (vessel.fine) drawStrands(ink, present(between), last, (i) => tint(i / last), FINE.width * wider);
  else drawBranches(ink, present(between), tint, wider);
}

type Sides = readonly [from: Curve, to: Curve];
const out = new Float64Array(4);

function drawBranches(ink: Brush, sides: Sides, tint: (fraction: number) => string, wider: number): void {
  const long = Math.max(sides[0].length, sides[1].length);
  placeBetween(sides, 0.5, 0, out);
  const [x, y] = [entryAt(out, 0), entryAt(out, 1)];
  placeBetween(sides, 0.5, 1, out);
  const root = ROOT / (Math.hypot(entryAt(out, 0) - x, entryAt(out, 1) - y) || 1);
  const place = ([along, across]: Spot): Spot => {
    placeBetween(sides, along, across, out);
    return [entryAt(out, 0), entryAt(out, 1)];
  };
  const placed = (all: readonly Branch[], turned: boolean) =>
    all.map(({ from, to, order }) => {
      const at = ([along, across]: Spot) => place([along, turned ? 1 - across : across]);
      return { from: at(from), to: at(to), order };
    });
  const arterioles = placed(branches(long, root, 0), false);
  const venules = placed(branches(long, root, 40), true);
  const isTip = ({ order }: Branch) => order === ORDERS.length - 1;
  for (const { to } of arterioles.filter(isTip)) {
    const far = (branch: Branch) => Math.hypot(branch.to[0] - to[0], branch.to[1] - to[1]);
    const near = venules.filter(isTip).sort((a, b) => far(a) - far(b));
    for (const other of near.slice(0, 2)) ink.moveTo(...to).lineTo(...other.to);
  }
  ink.stroke({ color: tint(0.5), width: MESH * wider, cap: "round" });
  for (const [tree, fraction] of [
    [venules, 1],
    [arterioles, 0],
  ] as const)
    ORDERS.forEach(({ width }, order) => {
      for (const { from, to } of tree.filter((branch) => branch.order === order)) {
        // Each bends a little.
        const bow = order === 0 ? 0.12 : -0.12;
        ink
          .moveTo(...from)
          .quadraticCurveTo(
            (from[0] + to[0]) / 2 - bow * (to[1] - from[1]),
            (from[1] + to[1]) / 2 + bow * (to[0] - from[0]),
            ...to,
          );
      }
      ink.stroke({ color: tint(fraction), width: width * wider, cap: "round" });
    });
}

function drawStrands(
  ink: Brush,
  sides: Sides,
  last: number,
  tint: (i: number) => string,
  width: number,
): void {
  const count = Math.max(3, Math.round(Math.max(sides[0].length, sides[1].length) / NET) + 1);
  const at = (strand: number, i: number): Spot => {
    placeBetween(sides, strand / (count - 1), i / last, out);
    const side = FINE.winds * Math.sin(Math.PI * Math.min(1, i / last)) * Math.sin(0.9 * i + 2.1 * strand);
    return [entryAt(out, 0) - entryAt(out, 3) * side, entryAt(out, 1) + entryAt(out, 2) * side];
  };
  for (let i = 0; i < last; i += PIECE) {
    const to = Math.min(i + PIECE, last);
    for (let strand = 0; strand < count; strand++) {
      ink.moveTo(...at(strand, i));
      // Each piece reaches a little into the next, so that no crack shows where they bend.
      for (let k = i + 1; k <= Math.min(to + 1, last); k++) ink.lineTo(...at(strand, k));
    }
    ink.stroke({ color: tint((i + to) / 2), width, join: "miter", cap: "butt" });
  }
}
