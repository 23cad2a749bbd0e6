/** Names beside the leg, each with a line to what it names. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import type { Lettering } from "../drawing/lettering.ts";
import type { Fit } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { ARTERY } from "./paint-vein.ts";
import { freeHalf, HALF, placeInLeg, VALVES, type ValveStands } from "./vein.ts";

interface Name {
  /** word key */
  readonly key: string;
  /** plane units: where its line ends, and where beside the leg the name stands: behind it or before it */
  readonly at: Spot;
  readonly beside: number;
}

/** Plane units: beside the knee, and behind the muscle where it is thickest. */
export const BEFORE = 460;
const BEHIND = 96;
/** CSS px of a plane unit from which there is room for names of more than what moves. */
const ROOMY = 0.5;
export const isRoomy = ({ scale }: Fit): boolean => scale > ROOMY;

/** @param stands how each valve stands, by VALVES; none where lenses say so */
const namesOf = (stands: readonly ValveStands[]): readonly Name[] => [
  { key: "further.calf.heart", at: placeInLeg(24, HALF).spot, beside: BEFORE },
  ...stands.slice(0, 2).map((each, i): Name => {
    const { at, flow } = entryAt(VALVES, i);
    const spot = placeInLeg(at - 10, freeHalf(at)).spot;
    return { key: `further.calf.${flow}.${each}`, at: spot, beside: BEFORE };
  }),
  { key: "further.calf.belly", at: [168, 300], beside: BEHIND },
];

const STILL_NAMES: readonly Name[] = [
  { key: "further.calf.artery", at: placeInLeg(376, freeHalf(376) + ARTERY.beside).spot, beside: BEFORE },
  { key: "further.calf.deepVein", at: placeInLeg(480, 0).spot, beside: BEFORE },
  { key: "further.calf.saphenous", at: [343, 596], beside: BEFORE },
  { key: "further.calf.skinVein", at: [187, 652], beside: 160 },
  { key: "further.calf.tendon", at: [217, 772], beside: 184 },
];

/** @param room CSS px that the names keep to */
export function writeNames(
  { ink, words, type }: { readonly ink: Graphics; readonly words: Lettering; readonly type: number },
  stands: readonly ValveStands[],
  fit: Fit,
  room: Box,
  theme: Theme,
): void {
  const { ink: letters, inkSoft } = theme.colour;
  const names = namesOf(stands).concat(isRoomy(fit) ? STILL_NAMES : []);
  for (const { key, at, beside: place } of names) {
    const beside = fit.x + place * fit.scale;
    const behind = place < at[0];
    const note = {
      lines: [{ words: theme.say(key), size: type, colour: letters }],
      wrap: Math.max(6 * type, behind ? beside - room.x - type : room.x + room.width - beside - type),
    };
    const { width } = words.measure(note, theme);
    // Where the room beside the leg is narrow, a name reaches over it.
    const left = behind ? Math.max(room.x, beside - width) : Math.min(beside, room.x + room.width - width);
    const [x, y] = [fit.x + at[0] * fit.scale, fit.y + at[1] * fit.scale];
    const lain = words.write({ ...note, x: left, y, anchor: [0, 0.5] }, theme);
    ink
      .moveTo(behind ? lain.x + lain.width : lain.x, y)
      .lineTo(x, y)
      .stroke({ color: inkSoft, width: 1.5 })
      .circle(x, y, 2.5)
      .fill({ color: inkSoft });
  }
}
