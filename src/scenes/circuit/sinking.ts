/**
 * What lies in the chest goes down with the diaphragm: the pericardium has grown to its central tendon, the heart hangs on the great vessels,
 * which stretch. Between the heart's base and the dome it lengthens a little, as it does in a deep breath. The base's share is from memory: of
 * the dome's way the heart goes some 60 % (magnetic resonance).
 */
import type { Container } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Stage } from "../../sim/parameters/request.ts";
import { DESCENT, sinksFrom } from "../anatomy/standing.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { CHEST_AT, chestFrame, onPlane } from "./chest-plan.ts";

/** Plane units, from above: where vessels of neck and arms stay, the heart's base, and the floor on which it lies; and the part of the dome's way that each goes. */
const LEVELS = [204, 296, 484] as const;
const PARTS = [0, 0.6, 1] as const;
/** Plane units: beyond, as low as the heart's floor, lie the arms. */
export const BETWEEN_ARMS = { left: 262, right: 738 } as const;

/** Plane units by which the dome stands lower than at rest. @param size of the lungs against rest, as drawn */
export const descentAt = (size: number): number => (size - 1) * DESCENT * CHEST_AT.scale;

/** Pieces of the plane, from above, in which all goes down evenly: y' = y + fall (part + slope (y - from)), for a dome that falls so far. */
export const PIECES: readonly {
  readonly from: number;
  readonly to: number;
  readonly part: number;
  readonly slope: number;
}[] = [
  { from: Number.NEGATIVE_INFINITY, to: LEVELS[0], part: 0, slope: 0 },
  ...[0, 1].map((i) => {
    const [from, to] = [entryAt(LEVELS, i), entryAt(LEVELS, i + 1)];
    const part = entryAt(PARTS, i);
    return { from, to, part, slope: (entryAt(PARTS, i + 1) - part) / (to - from) };
  }),
  { from: LEVELS[2], to: Number.POSITIVE_INFINITY, part: 1, slope: 0 },
];

/** Plane units by which a spot stands lower. @param fall of the dome */
export function sunkAt([x, y]: Spot, fall: number): number {
  const inArm = y < LEVELS[2] && (x < BETWEEN_ARMS.left || x > BETWEEN_ARMS.right);
  if (fall === 0 || inArm) return 0;
  const { from, part, slope } = entryAt(
    PIECES,
    PIECES.findIndex(({ to }) => y < to),
  );
  return fall * (slope === 0 ? part : part + slope * (y - from));
}

/** Lets a container in the plane go down as its piece does. */
export function sink(view: Container, piece: number, fall: number): void {
  const { from, part, slope } = entryAt(PIECES, piece);
  view.scale.y = 1 + fall * slope;
  view.position.y = fall * (slope === 0 ? part : part - slope * from);
}

/** Part of its widening by which a lung lengthens below its root, which goes down itself: so its base keeps to the dome. */
const LENGTHENS = 0.45;
export const lungHeight = (size: number): number => 1 + LENGTHENS * (size - 1);

/** Of PIECES: the heart's. */
export const HEART = 2;

/** A heart with one ventricle beside vessels that stay: below a height of the plane it lengthens by a part. */
export interface Hung {
  readonly hinge: number;
  readonly part: number;
}

/** @param lungs linear size against rest, as drawn */
export function heartHung(stage: Stage, lungs: number): Hung {
  const frame = chestFrame(stage);
  const { hinge, height } = sinksFrom(frame);
  const part = stage === "two-ventricle" ? 0 : ((lungs - 1) * DESCENT * frame.scale) / height;
  return { hinge: onPlane([0, hinge])[1], part };
}
