/** A short piece of tube or chamber, cut and seen aslant, to scale: in its lumen the width of the body's own lower vein, and what there is beyond that. */
import type { Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import { roundOf, type Tissue, threadOf } from "../anatomy/tones.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { dashes } from "../drawing/plot.ts";
import { mix } from "../theme/colour.ts";
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

/** mm: the face of the cut, wall included, and by how much an own vein wider than the lumen stands over it. */
export const faceOf = ({ request }: SweepPoint): { readonly wide: number; readonly over: number } => {
  const { trunk, ivc } = pathwaySizes(request);
  return { wide: trunk + 2 * wallOf(request), over: Math.max(0, ivc - trunk - wallOf(request)) };
};

/** CSS px: half the lumen's width, its wall, half the width of the body's own vein, and the height of that one's middle over the lumen's: it lies on the lumen's floor. */
export function sectionLayout(
  { request }: SweepPoint,
  { perMillimetre }: Pick<SectionPlace, "perMillimetre">,
) {
  const { trunk, ivc } = pathwaySizes(request);
  const half = (trunk / 2) * perMillimetre;
  const vein = (ivc / 2) * perMillimetre;
  return { half, wall: Math.max(MIN_WALL, wallOf(request) * perMillimetre), vein, raised: vein - half };
}

/** The piece behind the cut, in widths of its face: across and down. */
export const PIECE: Spot = [0.4, 0.2];
/** Strips of which its round is made, and the parts of its length at which a conduit has rings. */
const STRIPS = 28;
const RINGS = [0.3, 0.62] as const;
/** Where light comes from, y down. */
const LIGHT: Spot = [-0.45, -0.9];

const toneAt = ({ shade, body, light }: Tissue, turn: number): string => {
  const lit = Math.cos(turn) * LIGHT[0] + Math.sin(turn) * LIGHT[1];
  return lit > 0 ? mix(body, light, lit) : mix(body, shade, Math.min(1, -1.1 * lit));
};

/** What is seen of the piece behind the cut: its side towards us, and there the rings of a conduit. */
function drawPiece(ink: Graphics, { x, y }: Spot2, radius: number, sides: Sides, ringed: boolean): void {
  const [across, down] = [2 * radius * PIECE[0], 2 * radius * PIECE[1]];
  const way = Math.atan2(down, across);
  const from = way - Math.PI / 2;
  const at = (turn: number, part: number): Spot => [
    x + radius * Math.cos(turn) + across * part,
    y + radius * Math.sin(turn) + down * part,
  ];
  const turns = Array.from({ length: STRIPS + 1 }, (_, i) => from + (Math.PI * i) / STRIPS);
  turns.slice(1).forEach((turn, i) => {
    const before = entryAt(turns, i);
    const side = sideOf(sides, (turn + before) / 2);
    // A little wider than its part: no ground between strips.
    const over = before - 0.02;
    ink
      .poly([at(over, 0), at(turn, 0), at(turn, 1), at(over, 1)].flat())
      .fill({ color: toneAt(side, (turn + before) / 2) });
  });
  for (const part of ringed ? RINGS : [])
    for (const [shift, share, width] of [
      [0, 0.55, 2.2],
      [0.05, 0, 1.4],
    ] as const) {
      const { edge, light, body } = sides[1];
      line(
        ink,
        turns.map((turn) => at(turn, part + shift)),
        share ? mix(body, edge, share) : light,
        width,
      );
    }
  const { edge } = sides[1];
  line(ink, [at(from, 0), ...turns.map((turn) => at(turn, 1)), at(from + Math.PI, 0)], edge, 1.3);
}

type Spot2 = Pick<SectionPlace, "x" | "y">;
type Sides = readonly [Tissue, Tissue];
/** The picture's left is the body's right. */
const sideOf = (sides: Sides, turn: number): Tissue => sides[Math.cos(turn) < 0 ? 0 : 1];

/** Without blood in it until the state is solved. */
export function drawSection(ink: Graphics, point: SweepPoint, place: SectionPlace, theme: Theme): void {
  const { x, y } = place;
  const { half, wall, vein, raised } = sectionLayout(point, place);
  const stage = pathwayStage(point.request);
  const { circulation } = point;
  const sides = wallsOf(stage, theme);
  const blood = circulation ? roundOf(circulation.saturations.ivc, theme) : null;
  const fill = blood ? mix(blood.body, blood.light, 0.2) : theme.colour.lumen;
  const own = { x, y: y - raised, radius: vein };
  if (raised > 0) drawBeyond(ink, own, { x, y, radius: half + wall }, theme);
  drawPiece(ink, place, half + wall, sides, stage === "extracardiac");
  ink.circle(x, y, half).fill({ color: fill });
  if (raised < 0) drawBeyond(ink, { x, y, radius: half }, own, theme);
  if (raised < 0) ink.circle(x, own.y, vein).fill({ color: fill });
  sides.forEach(({ shade, body, light, edge }, i) => {
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
  drawDashes(ink, arc(x, own.y, vein, [0, 2 * Math.PI]), place.type, theme);
  drawGap(ink, x, [y - half, own.y - vein], place.type, theme);
}

interface Disc extends Spot2 {
  readonly radius: number;
}

/** CSS px from one line of the hatching to the next. */
const HATCH = 6;

/** What of one disc lies outside another one that touches it from within or lies over it: tinted and hatched. */
function drawBeyond(ink: Graphics, outer: Disc, inner: Disc, theme: Theme): void {
  const { stage, origin } = theme.colour;
  const color = mix(stage, origin[1], 0.6);
  // Amber, unlike blood and wall.
  ink.circle(outer.x, outer.y, outer.radius).fill({ color: mix(stage, origin[1], 0.17) });
  const slant = Math.SQRT1_2;
  const chord = ({ x, y, radius }: Disc, off: number): Spot | null => {
    const away = off - (x - y) * slant;
    const long = radius * radius - away * away;
    if (long <= 0) return null;
    const middle = (x + y) * slant;
    return [middle - Math.sqrt(long), middle + Math.sqrt(long)];
  };
  const first = (outer.x - outer.y) * slant - outer.radius;
  for (let off = first + HATCH / 2; off < first + 2 * outer.radius; off += HATCH) {
    const whole = chord(outer, off);
    if (!whole) continue;
    const hidden = chord(inner, off);
    const pieces: readonly Spot[] = hidden
      ? [
          [whole[0], Math.min(whole[1], hidden[0])],
          [Math.max(whole[0], hidden[1]), whole[1]],
        ]
      : [whole];
    for (const [a, b] of pieces.filter(([from, to]) => to - from > 1))
      line(
        ink,
        [a, b].map((along): Spot => [(along + off) * slant, (along - off) * slant]),
        color,
        1,
      );
  }
}

/** CSS px under which a gap has no room for its measure. */
const MEASURED = 7;

/** Upright between the tops of tube and own vein. */
function drawGap(ink: Graphics, x: number, tops: Spot, type: number, { colour }: Theme): void {
  const [from, to] = [Math.min(...tops), Math.max(...tops)];
  if (to - from < MEASURED) return;
  const tick = 0.28 * type;
  for (const [more, color] of [
    [2.4, colour.stage],
    [0, colour.ink],
  ] as const) {
    const width = 1.5 + more;
    line(
      ink,
      [
        [x, from],
        [x, to],
      ],
      color,
      width,
    );
    for (const y of [from + 0.75, to - 0.75])
      line(
        ink,
        [
          [x - tick, y],
          [x + tick, y],
        ],
        color,
        width,
      );
  }
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

/** As the own vein is drawn: dashed. */
export function drawDashes(ink: Graphics, points: readonly Spot[], type: number, { colour }: Theme): void {
  const pieces = dashes(points, [type * 0.5, type * 0.32]);
  const width = Math.max(2, type * 0.16);
  for (const [more, color] of [
    [2.4, colour.stage],
    [0, mix(colour.poor, colour.ink, 0.25)],
  ] as const)
    for (const piece of pieces) line(ink, piece, color, width + more);
}

function line(ink: Graphics, points: readonly Spot[], color: string, width: number): void {
  ink.moveTo(...entryAt(points, 0));
  for (const point of points.slice(1)) ink.lineTo(...point);
  ink.stroke({ color, width });
}
