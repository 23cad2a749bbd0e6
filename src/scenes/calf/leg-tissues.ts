/** What of a leg is painted: parts that stand still, and muscles in strips that the squeeze bends. */
import { Container } from "pixi.js";
import { type Bounds, eraseAlong, type Ink, sheet } from "../anatomy/painted-sheet.ts";
import type { Theme } from "../theme/theme.ts";
import { footTurn, JOINT, turnAbout } from "./foot.ts";
import { FASCIA, SKIN, TIBIA } from "./leg-parts.ts";
import { muscleStrips } from "./muscle-strips.ts";
import { paintBehindVein, paintCalfMuscles, paintDeepMuscles } from "./paint-leg.ts";
import { paintNearHead } from "./paint-muscles.ts";
import { beforeVein, behindVein } from "./strip-ends.ts";

/** Room that the leg takes, plane units. */
export const LEG = { left: 44, top: 0, right: 726, bottom: 1052 } as const;
/** Plane units, in the middle of the vein: from here to the skin behind, the leg bulges. */
const STAYS = 250;

/** From back to front; the vein lies between `deep` and `near`. */
export interface LegTissues
  extends Readonly<Record<"behind" | "skin" | "calf" | "deep" | "near", Container>> {
  /** Anew. @param saturation percent, of the blood in the veins. @param density device pixels a plane unit */
  paint(saturation: number, density: number, theme: Theme): void;
  /** @param pressed 0..1: how far the vein is flattened */
  bend(pressed: number): void;
  release(): void;
}

/** A part of the leg that stays, over a part of the foot that turns: they go over into each other about the ankle. */
function jointed(bounds: Bounds) {
  const [above, below] = [sheet(), sheet()];
  const [view, foot] = [new Container(), new Container()];
  foot.addChild(below.view);
  view.addChild(foot, above.view);
  // Sheets are painted with y up.
  for (const each of [above, below]) each.view.scale.y = -1;
  return {
    view,
    paint(density: number, paint: (ink: Ink) => void): void {
      for (const [part, [from, to]] of [
        [above, [JOINT.from, JOINT.to]],
        [below, [JOINT.from - 4, JOINT.from - 14]],
      ] as const)
        part.paint(bounds, density, [0, 0], (ink) => {
          ink.scale(1, -1);
          paint(ink);
          wipe(ink, from, to);
        });
    },
    turn: (by: number) => turnAbout(foot, by),
    release() {
      for (const each of [above, below]) each.release();
    },
  };
}

/** Takes away what lies beyond the second height (y down), bit by bit from the first on. */
const wipe = (ink: Ink, from: number, to: number): void =>
  eraseAlong(ink, [0, from], [0, to], [-BEYOND, from, 2 * BEYOND, from + Math.sign(to - from) * BEYOND]);
const BEYOND = 1200;

export function legTissues(): LegTissues {
  const behind = jointed([LEG.left, -LEG.bottom, LEG.right, -LEG.top]);
  const skin = muscleStrips({ left: LEG.left, right: STAYS }, behindVein(SKIN, STAYS));
  const calf = muscleStrips({ left: 80, right: 330, rises: true }, behindVein(FASCIA));
  const near = muscleStrips({ left: 80, right: 330, rises: true }, behindVein(FASCIA));
  const deep = muscleStrips({ left: 250, right: 440 }, beforeVein(TIBIA));
  return {
    behind: behind.view,
    skin: skin.view,
    calf: calf.view,
    deep: deep.view,
    near: near.view,
    paint(saturation, density, theme) {
      behind.paint(density, (ink) => paintBehindVein(ink, saturation, theme));
      skin.paint(density, (ink) => {
        paintBehindVein(ink, saturation, theme);
        wipe(ink, JOINT.from - 50, JOINT.from);
      });
      calf.paint(density, (ink) => paintCalfMuscles(ink, theme));
      near.paint(density, (ink) => paintNearHead(ink, theme));
      deep.paint(density, (ink) => paintDeepMuscles(ink, theme));
    },
    bend(pressed) {
      for (const each of [skin, calf, deep, near]) each.bend(pressed);
      behind.turn(footTurn(pressed));
    },
    release() {
      for (const each of [behind, skin, calf, deep, near]) each.release();
    },
  };
}
