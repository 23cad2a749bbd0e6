/**
 * What the calf muscle does to heel and belly as it shortens: its tendon lifts the heel about the ankle, and its belly grows fatter, for it
 * keeps its volume.
 */
import { smoothStep } from "../../sim/geometry/centreline.ts";
import type { Spot } from "../drawing/curve-drawing.ts";

/** Plane units (half millimetres): where the foot turns, and from there to the tendon; the tendon's moment arm, 4 to 6 cm (Maganaris, J Biomech 2004, from memory). */
const ANKLE: Spot = [340, 826];
const ARM = 122;
/** Plane units by which the tendon rises while the muscle presses its hardest: 12 mm, by which the foot turns some 11 degrees, half of what a step takes (from memory). */
const RISES = 24;
/** Heights between which pictures of leg and foot go over into each other, and between which vessels bend. */
export const JOINT = { from: 786, to: 816 } as const;
const BENDS = { from: 784, to: 850 } as const;

/** Plane units by which the tendon stands higher. @param pressed 0..1: how far the vein is flattened */
export const tendonRise = (pressed: number): number => RISES * pressed;
/** Radians by which the foot points down. */
export const footTurn = (pressed: number): number => tendonRise(pressed) / ARM;

/** Lets what is drawn in the plane turn as a foot does. */
export function turnAbout(view: { pivot: Setter; position: Setter; rotation: number }, turn: number): void {
  view.pivot.set(...ANKLE);
  view.position.set(...ANKLE);
  view.rotation = turn;
}
interface Setter {
  set(x: number, y: number): void;
}

/** Where a place of leg or foot goes as the foot turns (radians): less the nearer it is to the leg. */
export function turned([x, y]: Spot, turn: number): Spot {
  const part = turn * smoothStep(BENDS.from, BENDS.to, y);
  if (part === 0) return [x, y];
  const [dx, dy] = [x - ANKLE[0], y - ANKLE[1]];
  const [cos, sin] = [Math.cos(part), Math.sin(part)];
  return [ANKLE[0] + cos * dx - sin * dy, ANKLE[1] + sin * dx + cos * dy];
}

/** Heights: where the muscle springs from the bone, where its fibres pass into the tendon, and between which its belly is thickest. */
const MUSCLE = { top: 90, ends: 540 } as const;
const THICKEST = [290, 370] as const;
const THIN = 590;

/** Plane units by which a place at a height of muscle or tendon stands higher, once that has risen. */
export const riseAt = (y: number, pressed: number): number =>
  tendonRise(pressed) * smoothStep(MUSCLE.top, MUSCLE.ends, y);

/** Part of its thickness by which the belly is thicker at a height. */
export function fattening(y: number, pressed: number): number {
  const rise = tendonRise(pressed);
  const whole = rise / (MUSCLE.ends - MUSCLE.top - rise);
  return whole * smoothStep(MUSCLE.top, THICKEST[0], y) * (1 - smoothStep(THICKEST[1], THIN, y));
}
