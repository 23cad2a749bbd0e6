/** Beside a body: a look into its chest, and under that its tube or chamber cut across where a line in the chest says. */
import type { Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import type { Lettering } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { chestReach, risingIn } from "./chest-place.ts";
import { drawOwnVein, drawSection, STUB, sectionWidth } from "./cross-section.ts";
import type { FigurePlace } from "./figure-drawing.ts";
import { AIR, BESIDE, FIGURE } from "./row.ts";
import { chestOf } from "./standing-figure.ts";
import type { Tube } from "./tube-blood.ts";

export interface Pens {
  readonly ink: Graphics;
  readonly words: Lettering;
  readonly type: number;
  readonly theme: Theme;
}

/** mm: the lengths of the scale bars of chests and sections. */
const BARS = { chest: 50, section: 10 } as const;

export interface Sides {
  /** CSS px: width beside a body, middles of chest and section, px for each mm of both, and where the section's bar lies */
  readonly width: number;
  readonly chest: { readonly y: number; readonly perMillimetre: number };
  readonly section: { readonly y: number; readonly perMillimetre: number };
  readonly bar: number;
}

export function sidesOf(
  points: readonly SweepPoint[],
  step: number,
  tallest: number,
  box: Box,
  type: number,
): Sides {
  const letters = BESIDE.words * type;
  const width = Math.max(20, step * (1 - AIR) - FIGURE * tallest);
  const room = box.height - letters - BESIDE.bars * type;
  const size = Math.max(10, Math.min(width, room / (2 + STUB)));
  const bar = box.y + box.height - letters - 1.2 * type;
  return {
    width,
    chest: {
      y: box.y + 1.5 * type + size / 2,
      perMillimetre: size / (2 * chestReach(lastOf(points).at)),
    },
    section: {
      y: bar - 0.3 * type - (0.5 + STUB) * size,
      perMillimetre: size / Math.max(...points.map(sectionWidth)),
    },
    bar,
  };
}

interface Beside extends Pick<Tube, "chest" | "section"> {
  /** what of the body is looked into, CSS px */
  readonly spot: Ring;
}

/** @param right CSS px up to which there is room */
export function placeBeside(
  { at, request }: SweepPoint,
  { x: bodyX, ground, height }: FigurePlace,
  right: number,
  sides: Sides,
  type: number,
): Beside {
  const x = right - sides.width / 2;
  const { y, perMillimetre } = sides.chest;
  return {
    spot: { x: bodyX, y: ground - chestOf(request.body.ageYears) * height, radius: 0.055 * height },
    chest: { x, y, radius: chestReach(at) * perMillimetre, perMillimetre },
    section: { x, ...sides.section, type },
  };
}

export function drawSide(pens: Pens, point: SweepPoint, { spot, chest, section }: Beside, bar: number): Tube {
  const { ink, type, theme } = pens;
  const { colour } = theme;
  const { x, y, radius, perMillimetre } = chest;
  ink.circle(spot.x, spot.y, spot.radius).stroke({ color: colour.inkSoft, width: 1.6 });
  ink.circle(x, y, radius).fill({ color: mix(colour.backdrop, colour.stage, 0.25) });
  drawSection(ink, point, section, theme);
  scaleBar(pens, [x, y - radius - 1.3 * type], BARS.chest, perMillimetre);
  scaleBar(pens, [x, bar], BARS.section, section.perMillimetre);
  return { point, chest, section };
}

/** Part of the tube's way at which it is cut, and CSS px by which the mark of the cut stands out on both sides. */
const CUT_AT = 0.45;
const BEYOND = 2;

/** Over chest and section: where the one is cut to see the other. */
export function drawOver(ink: Graphics, { point, chest, section }: Tube, theme: Theme): void {
  const { colour } = theme;
  ink.circle(chest.x, chest.y, chest.radius).stroke({ color: colour.hair, width: 2.5 });
  const { x, y, wide } = risingIn(point.request, chest)(CUT_AT);
  const half = wide / 2 + BEYOND;
  const face = (section.perMillimetre * sectionWidth(point)) / 2;
  for (const side of [-1, 1]) {
    const from: Spot = [x + side * half, y];
    const to: Spot = [section.x + side * 0.93 * face, section.y - 0.37 * face];
    for (const [color, width] of [
      [colour.stage, 3.4],
      [colour.ink, 1.2],
    ] as const)
      ink
        .moveTo(...from)
        .lineTo(...to)
        .stroke({ color, width, alpha: 0.8 });
  }
  for (const [color, width, more] of [
    [colour.stage, 5.5, 1.5],
    [colour.ink, 2.5, 0],
  ] as const)
    ink
      .moveTo(x - half - more, y)
      .lineTo(x + half + more, y)
      .stroke({ color, width });
  drawOwnVein(ink, point, section, theme);
}

/** @param at CSS px: the upper end of its middle; `long`: mm */
function scaleBar(
  { ink, words, type, theme }: Pens,
  [x, y]: Spot,
  long: number,
  perMillimetre: number,
): void {
  const color = theme.colour.inkSoft;
  const line = { words: formatQuantity(long, "mm"), size: type * 0.85, colour: color };
  const letters = words.measure({ lines: [line], bare: true }, theme).width + 0.4 * type;
  const left = x - (long * perMillimetre + letters) / 2;
  const right = left + long * perMillimetre;
  const middle = y + 0.5 * type;
  for (const [a, b] of [
    [
      [left, middle],
      [right, middle],
    ],
    [
      [left, middle - 0.25 * type],
      [left, middle + 0.25 * type],
    ],
    [
      [right, middle - 0.25 * type],
      [right, middle + 0.25 * type],
    ],
  ] as const)
    ink
      .moveTo(...a)
      .lineTo(...b)
      .stroke({ color, width: 1.5 });
  words.write({ lines: [line], x: right + 0.4 * type, y: middle, anchor: [0, 0.5], bare: true }, theme);
}

interface Ring {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** From a ring on the body to the round picture: between the two lines that touch both. */
export function drawWay(ink: Graphics, from: Ring, to: Ring, { colour }: Theme): void {
  const way = Math.atan2(to.y - from.y, to.x - from.x);
  const apart = Math.hypot(to.x - from.x, to.y - from.y);
  const lean = Math.acos(Math.max(-1, Math.min(1, (from.radius - to.radius) / apart)));
  const touching = ({ x, y, radius }: Ring, turn: number): Spot => [
    x + radius * Math.cos(turn),
    y + radius * Math.sin(turn),
  ];
  const sides = [way + lean, way - lean].map((turn) => [touching(from, turn), touching(to, turn)] as const);
  ink
    .poly([...entryAt(sides, 0), ...entryAt(sides, 1).toReversed()].flat())
    .fill({ color: colour.inkSoft, alpha: 0.1 });
  for (const [a, b] of sides)
    ink
      .moveTo(...a)
      .lineTo(...b)
      .stroke({ color: colour.inkSoft, width: 1, alpha: 0.6 });
}
