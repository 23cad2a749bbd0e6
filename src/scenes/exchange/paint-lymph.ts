/** Lymph vessels: initial ones, whose wall cells overlap as flaps that let water in, and the collecting one with its valves. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import type { Curve, Spot } from "../drawing/curve-drawing.ts";
import { slicesOf } from "../drawing/cusp-sheet.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { paintWalls, type Walled } from "./lymph-wall.ts";
import { type Blind, BUD_HALF, INITIAL_HALF, LYMPH_HALF, nearest, type TissuePlan } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";
import { beside, fillTube, headingAt, traceTube } from "./tube.ts";

/** Where along the collecting vessel its valves spring from the wall, plane units that their leaflets reach, the part of its half width that these leave open, and where on the wall they meet. */
const VALVES = [0.24, 0.66] as const;
const LEAFLET = 104;
const OPEN = 0.4;
const MEET = 70;
/** Plane units along the wall from one cell to the next, by which each overlaps it, and how far its free end stands inward. */
const CELL = 66;
const OVERLAP = 30;
const FLAP = 17;
const THICK = 8;
/** From outside through a door to the vessel's inside, plane units: along the wall from where its lower cell begins, and outward from it. */
const THROUGH: readonly Spot[] = [
  [-26, 40],
  [-9, 6],
  [10, -6],
  [40, -22],
];
/** Plane units from a vessel's blind end to its first cell, and part of its way along which its wall has such doors. */
const FIRST = 16;
const DOORS = 0.72;
const doorsOf = ({ length }: Curve): number => Math.floor((DOORS * length - 20) / CELL);
/** Plane units that an anchoring filament reaches into the tissue, and how many hold a door. */
const FILAMENT = 44;
const FAN = 4;

type Width = (part: number) => number;

/** Part of a vessel's way over which it goes over into the next one. */
const JOINED = 0.3;

/** Round at its blind end, uneven on, as wide as the next vessel where it joins that. @param share of the width, as round */
const blindWidth =
  ({ line: { length }, half, into }: Blind, share = 1): Width =>
  (part) => {
    const from = (part * length - (1 - share) * half) / (share * half);
    const joined = Math.max(0, (part - 1 + JOINED) / JOINED);
    const round = Math.sqrt(1 - (1 - Math.min(1, Math.max(0, from))) ** 2);
    const swollen = 0.1 * Math.exp(-((part * length - 1.3 * half) ** 2) / half ** 2);
    const uneven = swollen + 0.05 * Math.sin((part * length) / 24 + half);
    return share * (half * (1 + uneven * (1 - joined)) + (into - half) * joined) * round;
  };

/** Part of its way over which it is as narrow as the vessel that it begins as. */
const BEGINS = 0.16;
/** It bulges behind the leaflets of each valve: at once from where they spring, gently on beyond their edges. */
const collectingWidth: Width = (part) =>
  LYMPH_HALF -
  (LYMPH_HALF - INITIAL_HALF) * Math.max(0, 1 - part / BEGINS) +
  VALVES.reduce((sum, at) => {
    const past = part - at - 0.055;
    return sum + 17 * Math.exp(-((past / (past < 0 ? 0.034 : 0.075)) ** 2));
  }, 0);

/** Half the width that is free there: between the leaflets of a valve little. */
export const channel: Width = (part) =>
  LYMPH_HALF *
  VALVES.reduce((free, at) => free - (1 - OPEN) * Math.exp(-(((part - at - 0.1) / 0.06) ** 2)), 1);

const BANDS = 9;

export function paintLymph(ink: Ink, { lymph, initial, buds }: TissuePlan, theme: Theme): void {
  const { shade, body, light } = tissueTone("lymph", theme);
  const blind = [...initial, ...buds];
  for (const each of blind) paintFilaments(ink, each, tissueTone("ground", theme).edge);
  const pass = (share: number, more: number, colour: string) => {
    for (const each of blind) {
      const width = blindWidth(each, share);
      fillTube(ink, each.line, (part) => Math.max(0, width(part) + more), colour);
    }
    fillTube(ink, lymph, (part) => share * collectingWidth(part) + more, colour);
  };
  paintWalls(
    ink,
    [
      ...blind.map((each) => closedIn(each, each.half < INITIAL_HALF ? [] : buds)),
      {
        line: lymph,
        half: collectingWidth,
        closed: () => 1,
        muscle: (part) => Math.min(1, part / (0.4 * BEGINS)),
      },
    ],
    theme,
  );
  pass(1, 0, shade);
  for (let k = 1; k <= BANDS; k++) {
    const lit = k / BANDS;
    pass(1 - 0.78 * lit, -2, lit < 0.6 ? mix(shade, body, lit / 0.6) : mix(body, light, lit - 0.6));
  }
  for (const each of blind) paintWall(ink, each, each.half < INITIAL_HALF ? [] : buds, theme);
  ink.save();
  // A leaflet springs from the wall: what of it reaches into that is not seen.
  traceTube(ink, lymph, collectingWidth);
  ink.clip();
  for (const at of VALVES) paintValve(ink, lymph, at, theme);
  ink.restore();
}

/** Filaments hold the outer lip of each door to the fibres around, so that swelling pulls it open. */
function paintFilaments(ink: Ink, blind: Blind, colour: string): void {
  const { line } = blind;
  const width = blindWidth(blind);
  ink.lineWidth = 2.2;
  ink.strokeStyle = colour;
  ink.beginPath();
  for (let k = 0; k < doorsOf(line); k++)
    for (const side of [-1, 1])
      for (let n = 0; n < FAN; n++) {
        const lip = FIRST + k * CELL + 7 * n;
        const reach = FILAMENT * (0.75 + 0.25 * Math.sin(5 * k + 3 * n + side));
        const [x, y] = beside(line, lip / line.length, side * width(lip / line.length));
        const far = Math.max(0, lip + 15 * (n - 1.6)) / line.length;
        const [tx, ty] = beside(line, far, side * (width(far) + reach));
        ink.moveTo(x, y);
        ink.quadraticCurveTo((x + tx) / 2 + 4, (y + ty) / 2 - 4, tx, ty);
      }
  ink.stroke();
}

/** Plane units over which a wall that opens in doors goes over into a closed one, part of the way from which on that has muscle, and beyond a bud's width where it is closed beside that. */
const CLOSES = 22;
const MUSCLED = 0.86;
const BESIDE = 26;

/** Where a blind vessel's wall is closed: past its doors, and beside the buds that open into it. */
function closedIn(blind: Blind, buds: readonly Blind[]): Walled {
  const { line, half } = blind;
  const from = FIRST + doorsOf(line) * CELL - 6;
  const within = (at: number) => Math.min(1, Math.max(0, at / CLOSES));
  const mouths = buds.flatMap((bud) => {
    const end: Spot = [lastOf(Array.from(bud.line.x)), lastOf(Array.from(bud.line.y))];
    const before = beside(bud.line, 0.7, 0);
    const at = nearest(line, end);
    const away = ([x, y]: Spot) => Math.hypot(before[0] - x, before[1] - y);
    if (Math.hypot(beside(line, at, 0)[0] - end[0], beside(line, at, 0)[1] - end[1]) > 2 * half) return [];
    return [
      { at: at * line.length, side: away(beside(line, at, half)) < away(beside(line, at, -half)) ? 1 : -1 },
    ];
  });
  return {
    line,
    half: blindWidth(blind),
    closed: (part, side) =>
      Math.max(
        within(part * line.length - from),
        ...mouths.map((mouth) =>
          mouth.side === side
            ? within(BUD_HALF + BESIDE + CLOSES - Math.abs(part * line.length - mouth.at))
            : 0,
        ),
      ),
    muscle: (part) => (half < INITIAL_HALF ? 0 : within((part - MUSCLED) * line.length)),
  };
}

/** Cells like shingles: the end of each stands a little inward of where the next begins, as a door that opens inward only. */
function paintWall(ink: Ink, blind: Blind, buds: readonly Blind[], theme: Theme): void {
  const { line } = blind;
  const width = blindWidth(blind);
  const lymph = tissueTone("lymph", theme);
  const cell = tissueTone("endothelium", theme);
  const nucleus = tissueTone("nucleus", theme);
  const fill = (points: readonly Spot[]) => {
    trace(ink, points, true);
    ink.fillStyle = mix(cell.body, lymph.light, 0.3);
    ink.fill();
    ink.lineWidth = 1.8;
    ink.strokeStyle = mix(cell.edge, lymph.edge, 0.4);
    ink.stroke();
  };
  const flap = (FLAP * blind.half) / INITIAL_HALF;
  // One cell over the blind end.
  const cap = Array.from({ length: 21 }, (_, i) => (i / 10 - 1) * (FIRST + 12));
  const onCap = (off: number) =>
    cap.map((along): Spot => {
      const part = Math.abs(along) / line.length;
      return beside(line, part, Math.sign(along) * (width(part) + off));
    });
  fill([...onCap(2 + THICK / 2), ...onCap(2 - THICK / 2).reverse()]);
  for (const side of [-1, 1])
    for (let k = doorsOf(line) - 1; k >= 0; k--) {
      const [from, to] = [(FIRST + k * CELL) / line.length, (FIRST + (k + 1) * CELL + OVERLAP) / line.length];
      const at = (share: number, off: number): Spot => {
        const part = from + (to - from) * share;
        const inward = flap * Math.max(0, (share - 0.5) / 0.5) ** 1.3;
        return beside(line, part, side * (width(part) + 2 - inward + off));
      };
      // A bud opens here.
      if (buds.some((bud) => near(bud, at(0.4, 0)) || near(bud, at(0.8, 0)))) continue;
      const shares = Array.from({ length: 17 }, (_, i) => i / 16);
      const thick = (share: number) => (THICK / 2) * Math.min(1, 5 * share + 0.3, 4 * (1 - share) + 0.25);
      fill([
        ...shares.map((share) => at(share, thick(share))),
        ...shares.toReversed().map((share) => at(share, -thick(share))),
      ]);
      ink.beginPath();
      ink.ellipse(...at(0.34, 1), 14, 6, headingAt(line, from + (to - from) * 0.34), 0, 2 * Math.PI);
      ink.fillStyle = nucleus.body;
      ink.fill();
      ink.lineWidth = 1.2;
      ink.strokeStyle = nucleus.edge;
      ink.stroke();
    }
}

const near = ({ line, half }: Blind, [x, y]: Spot): boolean =>
  line.x.some((each, i) => Math.hypot(each - x, entryAt(line.y, i) - y) < half);

const SLICES = 5;
const STEPS = 18;

/** Two leaflets, cut along their middle: thin sheets that leave the wall and run with the stream; behind each its pocket, in shade. */
function paintValve(ink: Ink, line: Curve, at: number, theme: Theme): void {
  const { body, edge } = tissue("valve", theme);
  const lymph = tissueTone("lymph", theme);
  const wall = (along: number) => collectingWidth(at + along / line.length);
  const [root, tip] = [wall(0), OPEN * LYMPH_HALF];
  const cut = (t: number): Spot => {
    const s = 1 - t;
    const [a, b, c, d] = [s ** 3, 3 * t * s * s, 3 * t * t * s, t ** 3];
    return [a * root + b * root + c * (tip + 0.1 * root) + d * tip, LEAFLET * (0.24 * b + 0.58 * c + d)];
  };
  const fill = (spots: readonly Spot[], colour: string) => {
    trace(ink, spots, true);
    ink.fillStyle = colour;
    ink.fill();
  };
  for (const side of [-1, 1]) {
    const lay = ([across, along]: Spot): Spot => beside(line, at + along / line.length, side * across);
    const slices = slicesOf({ cut, wall, meets: MEET }, SLICES, STEPS).map((slice) => slice.map(lay));
    const shares = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);
    const onWall = shares.toReversed().map((share) => lay([wall(share * LEAFLET), share * LEAFLET]));
    ink.globalAlpha = 0.45;
    fill([...entryAt(slices, 0), ...onWall], lymph.shade);
    ink.globalAlpha = 1;
    for (let k = SLICES; k > 0; k--)
      fill(
        [...entryAt(slices, k), ...entryAt(slices, k - 1).toReversed()],
        mix(body, mix(lymph.body, lymph.shade, 0.5), 0.25 + (0.5 * (k - 1)) / (SLICES - 1)),
      );
    ink.lineWidth = 1.6;
    ink.strokeStyle = mix(edge, lymph.edge, 0.5);
    for (const end of [0, STEPS]) {
      trace(
        ink,
        slices.map((slice) => entryAt(slice, end)),
      );
      ink.stroke();
    }
    // Thick at the wall, thin at the free edge.
    const face = (way: number) =>
      shares.map((share): Spot => {
        const [x, y] = cut(share);
        return lay([x + way * (2 + 2 * (1 - share) ** 2 + 8 * Math.exp(-share / 0.05)), y]);
      });
    const outline = [...face(1), ...face(-1).toReversed()];
    trace(ink, outline);
    ink.lineWidth = 3.6;
    ink.stroke();
    fill(outline, body);
  }
}

/** How drops enter an initial vessel: between two cells of its wall. @param index any whole number */
export function doorOf(
  blind: Blind,
  index: number,
): { readonly side: 1 | -1; readonly through: readonly Spot[]; readonly part: number } {
  const { line } = blind;
  const count = doorsOf(line);
  const door = FIRST + (1 + (Math.floor(index / 2) % Math.max(1, count - 1))) * CELL;
  const side = index % 2 === 1 ? 1 : -1;
  const width = blindWidth(blind);
  const through = THROUGH.map(([along, out]): Spot => {
    const part = (door + along) / line.length;
    return beside(line, part, side * (width(part) + out));
  });
  return { side, through, part: (door + lastOf(THROUGH)[0]) / line.length };
}

/** Plane units from the middle of an initial vessel to where a drop has come through a door. */
export const INSIDE = INITIAL_HALF + lastOf(THROUGH)[1];
