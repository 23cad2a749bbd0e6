/** What of a leg is painted: parts that stand still, and muscles in strips that the squeeze bends. */
import type { Container } from "pixi.js";
import { sheet } from "../anatomy/painted-sheet.ts";
import type { Theme } from "../theme/theme.ts";
import { FASCIA, SKIN, TIBIA } from "./leg-parts.ts";
import { muscleStrips } from "./muscle-strips.ts";
import { paintBehindVein, paintCalfMuscles, paintDeepMuscles, paintNear } from "./paint-leg.ts";
import { paintNearHead } from "./paint-muscles.ts";
import { beforeVein, behindVein } from "./strip-ends.ts";

export type Room = Readonly<Record<"left" | "top" | "right" | "bottom", number>>;
/** Room that the leg takes, plane units. */
export const LEG: Room = { left: 70, top: 0, right: 726, bottom: 1000 };
/** Plane units, in the middle of the vein: from here to the skin behind, the leg bulges. */
const STAYS = 250;

/** From back to front; the vein lies between `deep` and `near`. */
export interface LegTissues
  extends Readonly<Record<"behind" | "skin" | "calf" | "deep" | "near" | "before", Container>> {
  /** Anew. @param saturation percent, of the blood in the veins. @param density device pixels a plane unit */
  paint(saturation: number, density: number, theme: Theme): void;
  /** @param pressed 0..1: how far the vein is flattened */
  bend(pressed: number): void;
  release(): void;
}

/** @param room what of the leg is shown. @param step of a strip of muscle; both in plane units */
export function legTissues({ left, top, right, bottom }: Room, step: number): LegTissues {
  const [behind, before] = [sheet(), sheet()];
  const skin = muscleStrips({ left: LEG.left, right: STAYS, step }, behindVein(SKIN, STAYS));
  const calf = muscleStrips({ left: 80, right: 330, step }, behindVein(FASCIA));
  const near = muscleStrips({ left: 80, right: 330, step }, behindVein(FASCIA));
  const deep = muscleStrips({ left: 250, right: 440, step }, beforeVein(TIBIA));
  // Sheets are painted with y up.
  for (const each of [behind, before]) each.view.scale.y = -1;
  return {
    behind: behind.view,
    skin: skin.view,
    calf: calf.view,
    deep: deep.view,
    near: near.view,
    before: before.view,
    paint(saturation, density, theme) {
      behind.paint([left, -bottom, right, -top], density, [0, 0], (ink) => {
        ink.scale(1, -1);
        paintBehindVein(ink, saturation, theme);
      });
      before.paint([140, -900, 580, -top], density, [0, 0], (ink) => {
        ink.scale(1, -1);
        paintNear(ink, saturation, theme);
      });
      skin.paint(density, (ink) => paintBehindVein(ink, saturation, theme));
      calf.paint(density, (ink) => paintCalfMuscles(ink, theme));
      near.paint(density, (ink) => paintNearHead(ink, theme));
      deep.paint(density, (ink) => paintDeepMuscles(ink, theme));
    },
    bend(pressed) {
      for (const each of [skin, calf, deep, near]) each.bend(pressed);
    },
    release() {
      for (const each of [behind, before, skin, calf, deep, near]) each.release();
    },
  };
}
