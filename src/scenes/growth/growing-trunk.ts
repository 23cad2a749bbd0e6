/** The trunk around a chest, from the neck to below the ribs, without arms: its outline in the chest's own mm, and its skin. */
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { type Bounds, boundsOf, type Ink, trace } from "../anatomy/painted-sheet.ts";
import { placing } from "../anatomy/placing.ts";
import { chestFrame, inChest } from "../circuit/chest-plan.ts";
import { TRUNK } from "../circuit/figure-shape.ts";
import { skinOf, upright } from "../circuit/paint-figure.ts";
import { seeThrough } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** Heights of the figure's plane, which counts down: where the neck and where the waist are cut, and from where on both fade. */
const CUT = { neck: 70, neckFrom: 120, waist: 706, waistFrom: 572 } as const;

interface Torso {
  readonly outline: readonly Point[];
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
  const outline = upright(TRUNK.filter(([, y]) => y < CUT.waist + 100))
    .filter(([, y]) => -y < CUT.waist && -y > CUT.neck)
    .map(([x, y]) => carried([x, -y]));
  const height = (y: number) => carried([0, y])[1];
  const torso: Torso = {
    outline,
    room: boundsOf([outline], 0),
    fades: [height(CUT.neckFrom), height(CUT.waistFrom)],
  };
  known.set(frame, torso);
  return torso;
}

/** mm of a 5-year-old over which its edge darkens, and its line. */
const [DEPTH, EDGE] = [9, 0.9];

/** Its skin; both cut ends are lost in the ground. */
export function paintTorso(ink: Ink, frame: ChestFrame, theme: Theme): void {
  const { outline, room, fades } = torsoOf(frame);
  paintOrgan(ink, outline, skinOf(theme), { depth: DEPTH * frame.scale, edge: EDGE * frame.scale });
  ink.globalCompositeOperation = "destination-out";
  for (const [from, to] of [
    [fades[0], room[3]],
    [fades[1], room[1]],
  ] as const)
    fillFall(ink, room, [from, to], "#000000");
}

/** Over the organs: the waist's end. */
export function paintMist(ink: Ink, frame: ChestFrame, { colour: { stage } }: Theme): void {
  const { outline, room, fades } = torsoOf(frame);
  trace(ink, outline, true);
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
