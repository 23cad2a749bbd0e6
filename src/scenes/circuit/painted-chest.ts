/** The one anatomy in the whole circulation's plane: lungs and liver beneath the vessels, the heart among them, its valves over all. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { anatomyLayer } from "../anatomy/anatomy-layer.ts";
import "../anatomy/stages/index.ts";
import { servesAt } from "../anatomy/painted-sheet.ts";
import { standingAt } from "../anatomy/standing.ts";
import { drawnLarger } from "../breathing/larger.ts";
import type { Theme } from "../theme/theme.ts";
import { CHEST_AT, chestFrame } from "./chest-plan.ts";
import { type Emphasis, NO_EMPHASIS } from "./emphasis.ts";
import { drawHeart, drawHeartLight } from "./heart.ts";
import { twoVentricles } from "./two-ventricles/two-ventricles.ts";

interface Moved {
  readonly circulation: Circulation;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
  /** heart and lungs fill the picture */
  readonly close?: boolean;
  /** by which the lungs' movement is drawn */
  readonly larger?: number;
}

export interface PaintedChest {
  readonly organs: Container;
  /** within the organs, in the plane: behind liver and diaphragm, before the lungs */
  readonly underDiaphragm: Container;
  readonly heart: Container;
  /** over the vessels */
  readonly sewn: Container;
  readonly valves: Container;
  /** over the vessels that open into it, and its valves over its blood */
  readonly rightHeart: Container;
  readonly rightValves: Container;
  /** @param density device pixels of a plane unit */
  draw(moved: Moved, density: number, theme: Theme, emphasis?: Emphasis): void;
  release(): void;
}

/** All that lies over the organs, from below: the one order in which vessels, their blood and the heart cross. */
export const overOrgans = (
  chest: Omit<PaintedChest, "organs" | "underDiaphragm" | "draw" | "release">,
  blood: { readonly behind: Container; readonly front: Container },
  vessels: { readonly behind: Container; readonly front: Container },
): readonly Container[] => [
  vessels.behind,
  blood.behind,
  chest.heart,
  vessels.front,
  chest.rightHeart,
  blood.front,
  chest.sewn,
  chest.valves,
  chest.rightValves,
];

const AROUND = ["rightLung", "leftLung", "abdomen"] as const;

export function paintedChest(): PaintedChest {
  const layer = anatomyLayer([...AROUND, "atrium", "bed", "cavity", "muscle", "remains", "graft"]);
  const { rightLung, leftLung, abdomen, atrium, remains, graft } = layer.pieces;
  const [chambers, light] = [new Graphics(), new Graphics()];
  const placed = (...parts: readonly Container[]): Container => {
    const view = new Container();
    view.position.set(CHEST_AT.x, CHEST_AT.y);
    view.scale.set(CHEST_AT.scale, -CHEST_AT.scale);
    view.addChild(...parts);
    return view;
  };
  const whole = twoVentricles();
  const [organs, underDiaphragm] = [new Container(), new Container()];
  organs.addChild(placed(rightLung, leftLung), underDiaphragm, placed(whole.deep, abdomen, whole.rear));
  const painted = placed(atrium, layer.ventricle);
  const stump = placed(remains);
  const sewn = new Container();
  sewn.addChild(placed(graft), stump);
  const valves = placed(layer.valves);
  const heart = new Container();
  heart.addChild(chambers, painted, light);
  let known = "";
  let fine = 0;
  return {
    organs,
    underDiaphragm,
    heart,
    sewn,
    valves,
    rightHeart: placed(whole.chambers),
    rightValves: placed(whole.valves),
    draw({ circulation, time, still, close = false, larger = 1 }, density, theme, emphasis = NO_EMPHASIS) {
      const { stage } = circulation.request;
      const carried = Object.values(circulation.saturations).map(Math.round);
      const key = `${stage} ${theme.name} ${carried}`;
      if (key !== known || !servesAt(fine, density)) {
        known = key;
        fine = density;
        // A heart with two ventricles is painted apart.
        const only = stage === "two-ventricle" ? { only: AROUND } : {};
        const surface = { seen: [], density: density * CHEST_AT.scale, ...only };
        layer.set(chestFrame(stage), circulation, surface, theme);
      }
      // A whole conduit has its rings on the vessel: it isn't cut open here.
      graft.visible = stage !== "extracardiac";
      painted.visible = stump.visible = valves.visible = light.visible = stage !== "two-ventricle";
      const standing = standingAt(circulation, time, still);
      layer.move({ ...standing, lungs: drawnLarger(standing.lungs, larger) });
      drawHeart(chambers, circulation, time, theme, emphasis);
      whole.draw({ circulation, time, still, close }, density * CHEST_AT.scale, theme, emphasis);
      drawHeartLight(light, stage, emphasis.lit, theme);
      const dim = 1 - emphasis.dim * 0.8;
      for (const part of [organs, painted, sewn, valves]) part.alpha = emphasis.lit.size > 0 ? dim : 1;
    },
    release() {
      layer.release();
      whole.release();
    },
  };
}
