/** Tube or chamber cut across and seen along its way, to scale: its wall, its blood, and the width of the body's own lower vein, dashed. */
import type { Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import type { PathwayStage } from "../../sim/parameters/request.ts";
import { fromLitresPerMinute, fromSquareMillimetre, toMillimetre } from "../../sim/units.ts";
import { roundOf, threadOf } from "../anatomy/tones.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { dashes } from "../drawing/plot.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { pathwayStage, wallOf, wallsOf } from "./pathway-walls.ts";

/** CSS px: the middle, and px for each mm. */
export interface SectionPlace {
  readonly x: number;
  readonly y: number;
  readonly perMillimetre: number;
  readonly type: number;
}

/** CSS px under which no wall is drawn. */
const MIN_WALL = 3;

/** mm: what a section takes, wall included. */
export const sectionWidth = ({ request }: SweepPoint): number => {
  const { trunk, ivc } = pathwaySizes(request);
  return Math.max(trunk + 2 * wallOf(request), ivc + 1);
};

/** CSS px: half the lumen's width, its wall, and half the width of the body's own vein. */
export function sectionLayout({ request }: SweepPoint, { perMillimetre }: SectionPlace) {
  const { trunk, ivc } = pathwaySizes(request);
  return {
    half: (trunk / 2) * perMillimetre,
    wall: Math.max(MIN_WALL, wallOf(request) * perMillimetre),
    vein: (ivc / 2) * perMillimetre,
  };
}

/** mm/s: what flows through the section that it has. */
export const speedIn = ({ request, circulation }: SweepPoint): number => {
  if (!circulation) return 0;
  const { trunk } = pathwaySizes(request);
  const area = fromSquareMillimetre((Math.PI * trunk * trunk) / 4);
  return toMillimetre(fromLitresPerMinute(circulation.flows.ivc) / area);
};

/** Of its width: how far the stub behind a section reaches below it, seen from above; and its rings. */
export const STUB = 0.2;
const RINGS = 4;

/** What is left of it behind the cut: a cloth with rings, or an atrium's smooth wall. */
function drawStub(
  ink: Graphics,
  place: SectionPlace,
  [half, wall]: Spot,
  stage: PathwayStage,
  theme: Theme,
): void {
  const { x, y } = place;
  const radius = half + wall;
  const far = 2 * STUB * radius;
  const tones = wallsOf(stage, theme);
  const ringed = stage === "extracardiac";
  const lower = (out: number, at: number, side: 0 | 1): Spot[] => {
    // The picture's left is the body's right.
    const turn: Spot = side === 0 ? [0.49 * Math.PI, Math.PI] : [0, 0.51 * Math.PI];
    return arc(x, y + at, out, turn);
  };
  for (const side of [1, 0] as const) {
    const { shade, body, light, edge } = tones[side];
    for (let k = 4 * RINGS; k > 0; k--) {
      const at = (k / (4 * RINGS)) * far;
      const valley = ringed ? 0.01 * radius * (1 - Math.cos((Math.PI * k) / 2)) : 0;
      const wide = radius - valley;
      const edgeAt: Spot = [x + (side === 0 ? -wide : wide), y];
      const smooth = mix(body, shade, 0.2 + k / (8 * RINGS));
      const tone = k % 4 === 2 ? mix(shade, edge, 0.45) : mix(body, k % 4 === 0 ? light : shade, 0.5);
      const rim = lower(wide, at, side);
      ink
        .poly([edgeAt, ...(side === 0 ? rim.reverse() : rim), [x, y]].flat())
        .fill({ color: ringed ? tone : smooth });
    }
    const rim = lower(radius, far, side);
    const top: Spot = [x + (side === 0 ? -radius : radius), y];
    line(ink, side === 0 ? [...rim, top] : [top, ...rim], edge, 1.2);
  }
}

/** Without blood in it until the state is solved. */
export function drawSection(ink: Graphics, point: SweepPoint, place: SectionPlace, theme: Theme): void {
  const { colour } = theme;
  const { x, y } = place;
  const { half, wall } = sectionLayout(point, place);
  const stage = pathwayStage(point.request);
  const { circulation } = point;
  const blood = circulation ? roundOf(circulation.saturations.ivc, theme) : null;
  drawStub(ink, place, [half, wall], stage, theme);
  ink.circle(x, y, half).fill({ color: blood ? mix(blood.body, blood.light, 0.35) : colour.lumen });
  wallsOf(stage, theme).forEach(({ shade, body, light, edge }, i) => {
    // The picture's left is the body's right.
    const turn: Spot = i === 0 ? [0.5 * Math.PI, 1.5 * Math.PI] : [-0.5 * Math.PI, 0.5 * Math.PI];
    for (const [from, to, color] of [
      [0, 1, shade],
      [0.1, 0.8, body],
      [0.25, 0.55, light],
    ] as const)
      ink.poly(band(x, y, [half + from * wall, half + to * wall], turn).flat()).fill({ color });
    for (const radius of [half, half + wall]) line(ink, arc(x, y, radius, turn), edge, 1.3);
  });
  if (stage === "lateral-tunnel") drawSeams(ink, [x, y], half, wall, theme);
}

/** Where patch and atrium meet, stitches across the seam. */
function drawSeams(ink: Graphics, [x, y]: Spot, half: number, wall: number, theme: Theme): void {
  for (const end of [-1, 1])
    for (let k = -1; k <= 1; k++) {
      const turn = end * (Math.PI / 2) + (k * (0.3 * wall)) / half;
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const at = (part: number, lean: number): Spot => [
        x + (half + part * wall) * c - lean * s,
        y + (half + part * wall) * s + lean * c,
      ];
      line(ink, [at(0.15, -1.2), at(0.85, 1.2)], threadOf(theme), 1.4);
    }
}

const STEPS = 48;
const arc = (x: number, y: number, radius: number, [from, to]: Spot): Spot[] =>
  Array.from({ length: STEPS + 1 }, (_, i): Spot => {
    const turn = from + ((to - from) * i) / STEPS;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });

/** Between two radii, over a turn. */
const band = (x: number, y: number, [inner, outer]: Spot, turn: Spot): Spot[] => [
  ...arc(x, y, outer, turn),
  ...arc(x, y, inner, turn).reverse(),
];

/** The width of the body's own vein, dashed, over the blood. */
export function drawOwnVein(ink: Graphics, point: SweepPoint, place: SectionPlace, theme: Theme): void {
  const { x, y, type } = place;
  drawDashes(ink, arc(x, y, sectionLayout(point, place).vein, [0, 2 * Math.PI]), type, theme);
}

export function drawDashes(ink: Graphics, points: readonly Spot[], type: number, { colour }: Theme): void {
  const pieces = dashes(points, [type * 0.5, type * 0.32]);
  const width = dashWidth(type);
  for (const [more, color] of [
    [2.4, colour.stage],
    [0, mix(colour.poor, colour.ink, 0.25)],
  ] as const)
    for (const piece of pieces) line(ink, piece, color, width + more);
}

/** CSS px of the dashed line. */
export const dashWidth = (type: number): number => Math.max(2, type * 0.16);

/**
 * CSS px from the middle at which a drop comes: within the lumen, none on the dashed line. 0..1 spreads them evenly.
 * @param half the lumen's; `vein` the dashed line's; `room` half of what a drop, and of what drop and line take
 */
export function awayOf(
  part: number,
  [half, vein]: readonly [number, number],
  room: { readonly drop: number; readonly line: number },
): number {
  const outer = half - room.drop;
  const inside = Math.min(outer, vein - room.line) ** 2;
  const outside = (vein + room.line) ** 2;
  const at = part * (inside + Math.max(0, outer * outer - outside));
  return Math.sqrt(at < inside ? at : at - inside + outside);
}

function line(
  ink: Graphics,
  points: readonly (readonly [number, number])[],
  color: string,
  width: number,
): void {
  ink.moveTo(...entryAt(points, 0));
  for (const point of points.slice(1)) ink.lineTo(...point);
  ink.stroke({ color, width });
}
