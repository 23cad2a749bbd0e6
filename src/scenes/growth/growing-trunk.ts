/** The trunk around a chest, from the neck to below the ribs, with shoulders and upper arms: outlines in the chest's own mm, and skin. */
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { type Bounds, boundsOf, type Ink, trace } from "../anatomy/painted-sheet.ts";
import { placing } from "../anatomy/placing.ts";
import { CHEST_AT, chestFrame, inChest } from "../circuit/chest-plan.ts";
import { mirrored, TRUNK } from "../circuit/figure-shape.ts";
import { skinOf, upright } from "../circuit/paint-figure.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { seeThrough } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** Heights of the figure's plane, which counts down: where the neck and where the waist are cut, and from where on both fade. */
const CUT = { neck: 70, neckFrom: 120, waist: 706, waistFrom: 572 } as const;

/**
 * mm from shoulder to shoulder over their muscle: at five years (from memory), and grown, of the scale that a chest then has (British men 465 and
 * women 395; their shoulder bones 400 and 355: estimates in a course's online table of body measures).
 */
const SHOULDERS = { five: 275, grown: 430, scale: 1.537 } as const;
/** The figure's plane: shoulder and arm down their outer side, counted across from the shoulder's full breadth, and up their inner one to the flank. */
const OUTER = spots("-216 152, -134 172, -70 204, -24 256, -2 326, 0 400, -6 490, -14 590, -22 680, -28 770");
const INNER = spots("816 770, 814 680, 812 580, 808 480, 801 400, 793 352");
/** Its neck and flank, either end where an arm is joined on. */
const NECK = spots("566 40, 567 84, 578 112, 614 134");
const FLANK = spots("788 356, 788 430, 789 500, 788 600, 778 690, 758 770");
const MIDDLE = 500;

interface Torso {
  /** without the arms, where what lies inside ends */
  readonly outline: readonly Point[];
  /** with them */
  readonly skin: readonly Point[];
  readonly room: Bounds;
  /** heights at which it begins to fade */
  readonly fades: readonly [neck: number, waist: number];
}

const known = new WeakMap<ChestFrame, Torso>();

/** mm, y up. */
export function torsoOf(frame: ChestFrame): Torso {
  const before = known.get(frame);
  if (before) return before;
  const drawn = chestFrame("extracardiac");
  const [there, here] = [placing(drawn), placing(frame)];
  const [up, down] = [1, -1].map((way) => Math.abs(there.inChest(0, way)[1] - drawn.level)) as [
    number,
    number,
  ];
  /** Carried with the chest from the figure's plane; both frames count from the superior vena cava's axis. */
  const carried = (spot: Point): Point => {
    const [x, y] = inChest(spot);
    const above = y - drawn.level;
    return here.inChest(x, above / (above < 0 ? down : up));
  };
  const within = (points: readonly Spot[]) =>
    upright(points)
      .filter(([, y]) => -y < CUT.waist && -y > CUT.neck)
      .map(([x, y]) => carried([x, -y]));
  const outline = within(TRUNK.filter(([, y]) => y < CUT.waist + 100));
  const { five, grown, scale } = SHOULDERS;
  const broad = five + ((grown - five) * (frame.scale - 1)) / (scale - 1);
  const edge = MIDDLE + ((broad / 2) * CHEST_AT.scale) / frame.scale;
  const arm = [...NECK, ...OUTER.map(([x, y]): Spot => [edge + x, y])];
  const [right, left] = [(points: readonly Spot[]) => points, mirrored].map((way) =>
    [arm, INNER, FLANK].flatMap((part) => within(way(part))),
  ) as [Point[], Point[]];
  const skin = [...right, ...left.toReversed()];
  const height = (y: number) => carried([0, y])[1];
  const torso: Torso = {
    outline,
    skin,
    room: boundsOf([skin], 0),
    fades: [height(CUT.neckFrom), height(CUT.waistFrom)],
  };
  known.set(frame, torso);
  return torso;
}

/** mm of a 5-year-old over which its edge darkens, and its line. */
const [DEPTH, EDGE] = [9, 0.9];

/** Its skin; both cut ends are lost in the ground. */
export function paintTorso(ink: Ink, frame: ChestFrame, theme: Theme): void {
  const { skin, room, fades } = torsoOf(frame);
  paintOrgan(ink, skin, skinOf(theme), { depth: DEPTH * frame.scale, edge: EDGE * frame.scale });
  ink.globalCompositeOperation = "destination-out";
  for (const [from, to] of [
    [fades[0], room[3]],
    [fades[1], room[1]],
  ] as const)
    fillFall(ink, room, [from, to], "#000000");
}

/** Over the organs: the waist's end. */
export function paintMist(ink: Ink, frame: ChestFrame, { colour: { stage } }: Theme): void {
  const { skin, room, fades } = torsoOf(frame);
  trace(ink, skin, true);
  ink.clip();
  fillFall(ink, room, [fades[1], room[1]], stage);
}

/** From nothing at one height to all of a colour a little before another, and on beyond that. */
function fillFall(
  ink: Ink,
  [left, , right]: Bounds,
  [from, to]: readonly [number, number],
  colour: string,
): void {
  const fall = ink.createLinearGradient(0, from, 0, to);
  fall.addColorStop(0, seeThrough(colour, 0));
  fall.addColorStop(0.95, colour);
  ink.fillStyle = fall;
  const past = to + (to - from) * 0.2;
  ink.fillRect(left - 9, Math.min(from, past), right - left + 18, Math.abs(past - from));
}
