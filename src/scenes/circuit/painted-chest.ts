/** The one anatomy in the whole circulation's plane: lungs and liver beneath the vessels, the heart among them, its valves over all. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { anatomyLayer } from "../anatomy/anatomy-layer.ts";
import "../anatomy/stages/index.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { servesAt } from "../anatomy/painted-sheet.ts";
import { standingAt } from "../anatomy/standing.ts";
import { drawnLarger } from "../breathing/larger.ts";
import type { Theme } from "../theme/theme.ts";
import { carriedOf } from "../theme/unsolved.ts";
import { CHEST_AT, chestFrame, onPlane } from "./chest-plan.ts";
import { type Emphasis, NO_EMPHASIS } from "./emphasis.ts";
import { drawHeartLight } from "./heart.ts";
import { sewnAtrium } from "./sewn-atrium.ts";
import { descentAt, HEART, heartHung, lungHeight, sink, sunkAt } from "./sinking.ts";
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
  /** heart and roots of the lungs go down with the dome, as far as that falls */
  readonly sinks?: boolean;
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
  blood: { readonly behind: Container; readonly front: Container; readonly fine?: Container },
  vessels: { readonly behind: Container; readonly front: Container },
): readonly Container[] => [
  vessels.behind,
  blood.behind,
  chest.heart,
  vessels.front,
  chest.rightHeart,
  blood.front,
  ...(blood.fine ? [blood.fine] : []),
  chest.sewn,
  chest.valves,
  chest.rightValves,
];

const AROUND = ["rightLung", "leftLung", "abdomen"] as const;
const HEARTS = ["atrium", "bed", "cavity", "muscle", "rightAtrium", "remains", "graft"] as const;

/** A container that can go down with the dome. */
function sinking(view: Container): Container {
  const outer = new Container();
  outer.addChild(view);
  return outer;
}

export function paintedChest(): PaintedChest {
  const layer = anatomyLayer([...AROUND, ...HEARTS]);
  const { rightLung, leftLung, abdomen, atrium, rightAtrium, remains, graft } = layer.pieces;
  const light = new Graphics();
  const placed = (...parts: readonly Container[]): Container => {
    const view = new Container();
    view.position.set(CHEST_AT.x, CHEST_AT.y);
    view.scale.set(CHEST_AT.scale, -CHEST_AT.scale);
    view.addChild(...parts);
    return view;
  };
  const [whole, joined] = [twoVentricles(), sewnAtrium()];
  const [organs, underDiaphragm] = [new Container(), new Container()];
  const [deep, rear] = [sinking(placed(whole.deep)), sinking(placed(whole.rear))];
  organs.addChild(placed(rightLung, leftLung), underDiaphragm, deep, placed(abdomen), rear);
  const painted = placed(atrium, layer.ventricle, rightAtrium);
  const stump = placed(remains);
  const sewn = new Container();
  sewn.addChild(placed(graft), stump);
  const valves = sinking(placed(layer.valves));
  const [rightHeart, rightValves] = [
    sinking(placed(whole.chambers, joined.view)),
    sinking(placed(whole.valves)),
  ];
  const heart = new Container();
  heart.addChild(painted, light);
  let known = "";
  let fine = 0;
  return {
    organs,
    underDiaphragm,
    heart,
    sewn,
    valves,
    rightHeart,
    rightValves,
    draw(
      { circulation, time, still, close = false, larger = 1, sinks = false },
      density,
      theme,
      emphasis = NO_EMPHASIS,
    ) {
      const { stage } = circulation.request;
      const key = `${stage} ${close} ${theme.name} ${carriedOf(circulation)}`;
      if (key !== known || !servesAt(fine, density)) {
        known = key;
        fine = density;
        // A heart with two ventricles is painted apart.
        const only = stage === "two-ventricle" ? { only: AROUND } : {};
        const surface = { seen: [], density: density * CHEST_AT.scale, ...only };
        layer.set(chestFrame(stage, close), circulation, surface, theme);
      }
      // A whole conduit has its rings on the vessel: it isn't cut open here.
      graft.visible = stage !== "extracardiac";
      painted.visible = stump.visible = valves.visible = light.visible = stage !== "two-ventricle";
      const standing = standingAt(circulation, time, still);
      const size = drawnLarger(standing.lungs, larger);
      layer.move({ ...standing, lungs: size });
      const fall = sinks ? descentAt(size) : 0;
      // Beside vessels that stay, the heart lengthens down to the dome.
      const hung = heartHung(stage, sinks || close ? 1 : size);
      layer.sink(sinks || close ? 1 : size);
      light.scale.y = 1 + hung.part;
      light.y = -hung.part * hung.hinge;
      for (const part of [deep, rear, heart, sewn, valves, rightHeart, rightValves]) sink(part, HEART, fall);
      if (sinks)
        for (const { side, hilum } of anatomyOf(chestFrame(stage)).lungs) {
          const lung = layer.pieces[`${side}Lung`];
          lung.y = hilum[1] - sunkAt(onPlane(hilum), fall) / CHEST_AT.scale;
          lung.scale.y = lungHeight(size);
        }
      joined.draw({ circulation, time, still }, density * CHEST_AT.scale, theme, emphasis);
      // The hole for the lower vein goes down with the dome, whether or not the heart does.
      const down = sinks ? 0 : descentAt(size) / CHEST_AT.scale;
      whole.draw({ circulation, time, still, close, down }, density * CHEST_AT.scale, theme, emphasis);
      drawHeartLight(light, stage, emphasis.lit, theme);
      const dim = 1 - emphasis.dim * 0.8;
      for (const part of [organs, painted, sewn, valves]) part.alpha = emphasis.lit.size > 0 ? dim : 1;
    },
    release() {
      layer.release();
      whole.release();
      joined.release();
    },
  };
}
