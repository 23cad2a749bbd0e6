/** A short piece of tube or chamber, cut and seen aslant, to scale and full of blood: on it the width of the body's own lower vein, and what there is beyond that. */
import type { Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import type { Ink } from "../anatomy/painted-sheet.ts";
import { type Round, roundOf, type Tissue, threadOf } from "../anatomy/tones.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { dashes } from "../drawing/plot.ts";
import { mix, seeThrough } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { pathwayStage, wallOf, wallsOf } from "./pathway-walls.ts";

/** CSS px: the middle of the cut face, and px for each mm. */
export interface SectionPlace {
  readonly x: number;
  readonly y: number;
  readonly perMillimetre: number;
  readonly type: number;
}

/** CSS px under which no wall is drawn. */
const MIN_WALL = 2.2;

/** mm: the face of the cut, wall included, and by how much an own vein wider than that stands out around it. */
export const faceOf = ({ request }: SweepPoint): { readonly wide: number; readonly over: number } => {
  const { trunk, ivc } = pathwaySizes(request);
  return { wide: trunk + 2 * wallOf(request), over: Math.max(0, (ivc - trunk) / 2 - wallOf(request)) };
};

/** CSS px: half the lumen's width, its wall, and half the width of the body's own vein, around the same middle. */
export function sectionLayout(
  { request }: SweepPoint,
  { perMillimetre }: Pick<SectionPlace, "perMillimetre">,
) {
  const { trunk, ivc } = pathwaySizes(request);
  const half = (trunk / 2) * perMillimetre;
  const vein = (ivc / 2) * perMillimetre;
  return { half, wall: Math.max(MIN_WALL, wallOf(request) * perMillimetre), vein };
}

/** The piece behind the cut, in widths of its face: across and down. */
export const PIECE: Spot = [0.62, 0.34];
/** CSS px around all that is painted of it. */
const AIR = 4;

/** CSS px from the middle of the face: the room that it takes, y up. */
export function sectionRoom(point: SweepPoint, place: SectionPlace) {
  const { half, wall, vein } = sectionLayout(point, place);
  const side = Math.max(half + wall, vein) + AIR;
  const [across, down] = PIECE.map((part) => 2 * (half + wall) * part) as [number, number];
  return [-side, -side - down, side + across, side] as const;
}

type Sides = readonly [Tissue, Tissue];

/** Around the middle of its face, y down. Without blood in it until the state is solved. */
export function paintSection(ink: Ink, point: SweepPoint, place: SectionPlace, theme: Theme): void {
  const { half, wall, vein } = sectionLayout(point, place);
  const stage = pathwayStage(point.request);
  const { circulation } = point;
  const sides = wallsOf(stage, theme);
  paintPiece(ink, half + wall, sides, stage === "extracardiac" ? place.perMillimetre : null);
  const blood = circulation ? roundOf(circulation.saturations.ivc, theme) : null;
  const { origin, stage: ground } = theme.colour;
  // Amber, unlike blood and wall.
  if (vein > half) hatch(ink, vein, half + wall, mix(ground, origin[1], 0.17), mix(ground, origin[1], 0.6));
  disc(ink, half, blood ? roundFill(ink, half, blood) : theme.colour.lumen);
  if (vein < half && blood)
    hatch(ink, half, vein, seeThrough(blood.light, 0.4), mix(blood.light, "#ffffff", HATCHED[theme.name]));
  paintWall(ink, half, wall, sides);
  if (stage === "lateral-tunnel") paintSeams(ink, half, wall, theme);
}

/** Where light comes from, y down. */
const LIGHT: Spot = [-0.45, -0.9];
const toneAt = ({ shade, body, light }: Tissue, turn: number): string => {
  const lit = Math.cos(turn) * LIGHT[0] + Math.sin(turn) * LIGHT[1];
  return lit > 0 ? mix(body, light, lit) : mix(body, shade, Math.min(1, -1.3 * lit));
};

/** Tones across its round. */
const TONES = 24;
/** mm: from ring to ring of a conduit and how wide one is, as in the chests; the part of the radius by which it stands out. */
const RINGS = { apart: 2.2, wide: 0.95, out: 0.022 } as const;
/** The part of its length from which on it is lost, in so many steps, and what each takes. */
const LOST = { from: 0.5, steps: 20, each: 0.19 } as const;

/** What is seen of the piece behind the cut: its side towards us, lost where it goes on. @param ringed CSS px for each mm of a conduit with rings */
function paintPiece(ink: Ink, radius: number, sides: Sides, ringed: number | null): void {
  const [across, down] = [2 * radius * PIECE[0], 2 * radius * PIECE[1]];
  const [long, way] = [Math.hypot(across, down), Math.atan2(down, across)];
  const { edge, shade, light } = sides[1];
  const round = ink.createLinearGradient(0, -radius, 0, radius);
  for (let i = 0; i <= TONES; i++) {
    const turn = Math.PI * (i / TONES - 0.5);
    round.addColorStop((Math.sin(turn) + 1) / 2, toneAt(sideOf(sides, turn + way), turn + way));
  }
  const stroke = (along: number, out: number, width: number, colour: string) => {
    ink.beginPath();
    ink.arc(along, 0, out, -Math.PI / 2, Math.PI / 2);
    ink.lineWidth = width;
    ink.strokeStyle = colour;
    ink.stroke();
  };
  ink.save();
  ink.rotate(way);
  tube(ink, [0, long], radius);
  ink.fillStyle = round;
  ink.fill();
  ink.lineWidth = 1.3;
  ink.strokeStyle = edge;
  ink.stroke();
  ink.lineCap = "butt";
  const [apart, wide] = [RINGS.apart, RINGS.wide].map((mm) => mm * (ringed ?? 0)) as [number, number];
  for (let along = apart; ringed && along < long; along += apart) {
    const out = radius * (1 + RINGS.out);
    stroke(along + wide * 0.62, radius, wide * 0.5, seeThrough(shade, 0.75));
    tube(ink, [along - wide / 2, along + wide / 2], out);
    ink.fill();
    stroke(along + wide / 2, out, 0.8, seeThrough(edge, 0.75));
    stroke(along - wide / 4, out, 0.9, seeThrough(light, 0.8));
    stroke(along - wide / 2, out, 0.6, seeThrough(edge, 0.5));
  }
  ink.globalCompositeOperation = "destination-out";
  ink.fillStyle = seeThrough("#000000", LOST.each);
  for (let k = 0; k < LOST.steps; k++) {
    const from = long * (LOST.from + ((1 - LOST.from) * k) / LOST.steps);
    tube(ink, [from, long + radius], 1.2 * radius);
    ink.fill();
  }
  ink.restore();
}

/** Lays a stretch of tube along the x axis, round towards its far end as towards the near one. */
function tube(ink: Ink, [from, to]: Spot, radius: number): void {
  const quarter = Math.PI / 2;
  ink.beginPath();
  ink.arc(from, 0, radius, quarter, -quarter, true);
  ink.arc(to, 0, radius, -quarter, quarter);
  ink.closePath();
}

/** The picture's left is the body's right. */
const sideOf = (sides: Sides, turn: number): Tissue => sides[Math.cos(turn) < 0 ? 0 : 1];

/** Darker towards the wall. */
function roundFill(ink: Ink, half: number, { edge, body }: Round): CanvasGradient {
  const pool = ink.createRadialGradient(-0.2 * half, -0.25 * half, 0.2 * half, 0, 0, half);
  pool.addColorStop(0, body);
  pool.addColorStop(0.8, mix(body, edge, 0.35));
  pool.addColorStop(1, mix(body, edge, 0.9));
  return pool;
}

function disc(ink: Ink, radius: number, fill: string | CanvasGradient): void {
  ink.beginPath();
  ink.arc(0, 0, radius, 0, 2 * Math.PI);
  ink.fillStyle = fill;
  ink.fill();
}

/** CSS px from one line of the hatching to the next. */
const HATCH = 6;
/** How white its lines are. */
const HATCHED = { dark: 0.1, light: 0.6 } as const;

/** What of one disc lies outside another one around the same middle, or would without it: tinted and hatched. */
function hatch(ink: Ink, outer: number, inner: number, tint: string, lines: string): void {
  ink.save();
  ink.beginPath();
  for (const radius of [outer, Math.min(outer, inner)]) {
    ink.moveTo(radius, 0);
    ink.arc(0, 0, radius, 0, 2 * Math.PI);
  }
  ink.clip("evenodd");
  disc(ink, outer, tint);
  ink.beginPath();
  for (let off = HATCH / 2 - 2 * outer; off < 2 * outer; off += HATCH * Math.SQRT2) {
    ink.moveTo(off - outer, -outer);
    ink.lineTo(off + outer, outer);
  }
  ink.lineWidth = 1.2;
  ink.strokeStyle = lines;
  ink.stroke();
  ink.restore();
}

/** Its cut face. */
function paintWall(ink: Ink, half: number, wall: number, sides: Sides): void {
  sides.forEach(({ shade, body, light, edge }, i) => {
    const [from, to] = i === 0 ? [0.5 * Math.PI, 1.5 * Math.PI] : [-0.5 * Math.PI, 0.5 * Math.PI];
    const round = (part: number, width: number, colour: string) => {
      ink.beginPath();
      ink.arc(0, 0, half + part * wall, from, to);
      ink.lineWidth = width;
      ink.strokeStyle = colour;
      ink.stroke();
    };
    round(0.5, wall, shade);
    round(0.45, 0.7 * wall, body);
    round(0.4, 0.3 * wall, light);
    for (const part of [0, 1]) round(part, 1.3, edge);
  });
}

/** Where patch and atrium meet, stitches across the seam. */
function paintSeams(ink: Ink, half: number, wall: number, theme: Theme): void {
  ink.lineWidth = 1.4;
  ink.strokeStyle = threadOf(theme);
  for (const end of [-1, 1])
    for (let k = -1; k <= 1; k++) {
      ink.save();
      ink.rotate(end * (Math.PI / 2) + (k * (0.3 * wall)) / half);
      ink.beginPath();
      ink.moveTo(half + 0.15 * wall, -1.2);
      ink.lineTo(half + 0.85 * wall, 1.2);
      ink.stroke();
      ink.restore();
    }
}

const STEPS = 48;
/** The own vein's width. */
export function drawOwn(ink: Graphics, point: SweepPoint, place: SectionPlace, theme: Theme): void {
  const { vein } = sectionLayout(point, place);
  const { x, y, type } = place;
  const ring = Array.from({ length: STEPS + 1 }, (_, i): Spot => {
    const turn = (2 * Math.PI * i) / STEPS;
    return [x + vein * Math.cos(turn), y + vein * Math.sin(turn)];
  });
  drawDashes(ink, ring, type, theme);
}

/** As the own vein is drawn: dashed. */
export function drawDashes(ink: Graphics, points: readonly Spot[], type: number, { colour }: Theme): void {
  const pieces = dashes(points, [type * 0.5, type * 0.32]);
  const width = Math.max(2, type * 0.16);
  for (const [more, color] of [
    [2.4, colour.stage],
    [0, mix(colour.poor, colour.ink, 0.25)],
  ] as const)
    for (const piece of pieces) {
      ink.moveTo(...entryAt(piece, 0));
      for (const point of piece.slice(1)) ink.lineTo(...point);
      ink.stroke({ color, width: width + more });
    }
}
