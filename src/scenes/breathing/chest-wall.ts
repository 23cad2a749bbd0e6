/** What of the chest moves with the breath but the lungs: trunk and rib cage, painted once; its ribs rise and swing outwards as the lungs widen. */
import { Container, Graphics, Matrix } from "pixi.js";
import { present } from "../../sim/checked/present.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { servesAt, sheet } from "../anatomy/painted-sheet.ts";
import { CHEST_AT, chestFrame, inChest } from "../circuit/chest-plan.ts";
import type { Theme } from "../theme/theme.ts";
import { cageBounds, paintRibs, paintWall } from "./rib-cage.ts";
import { skinWidth, swingOf } from "./swing.ts";
import { COLLAR_BOUNDS, fillTorso, MIDLINE, paintCollarBones, paintTorso, TORSO_BOUNDS } from "./torso.ts";

/** The collar bones lie before the veins to the arms, which are seen through them. */
const COLLAR_SEEN = 0.55;

export interface ChestWall {
  /** the trunk with the cut wall of the chest */
  readonly view: Container;
  /** seen through the lungs, over which they lie */
  readonly ribs: Container;
  /** over all vessels */
  readonly collar: Container;
  /** for what lies within the trunk */
  readonly mask: Graphics;
  /** @param density device pixels a plane unit */
  paint(density: number, theme: Theme): void;
  /** @param size of the lungs against rest */
  move(size: number): void;
  release(): void;
}

/** What is painted in the chest's millimetres, y up, on the circuit's plane. */
export function inMillimetres(...parts: readonly Container[]): Container {
  const view = new Container();
  view.position.set(CHEST_AT.x, CHEST_AT.y);
  view.scale.set(CHEST_AT.scale, -CHEST_AT.scale);
  view.addChild(...parts);
  return view;
}

export function chestWall(): ChestWall {
  const view = new Container();
  const mask = fillTorso(new Graphics());
  const [skin, bones] = [sheet(), sheet()];
  const [cages, hoops] = [
    [sheet(), sheet()],
    [sheet(), sheet()],
  ] as const;
  const [middle] = inChest([MIDLINE, 0]);
  /** of both sides: what swings with the ribs of one */
  const swings = [cages, hoops].map((pair) =>
    pair.map(({ view: painted }) => {
      const swing = new Container();
      swing.addChild(painted);
      return swing;
    }),
  );
  const [ofWall = [], ofRibs = []] = swings;
  view.addChild(inMillimetres(skin.view, ...ofWall));
  const [ribs, collar] = [inMillimetres(...ofRibs), inMillimetres(bones.view)];
  let painted: { readonly theme: Theme; readonly density: number } | null = null;

  return {
    view,
    ribs,
    collar,
    mask,
    paint(density, theme) {
      if (painted?.theme === theme && servesAt(painted.density, density)) return;
      painted = { theme, density };
      const fine = density * CHEST_AT.scale;
      skin.paint(TORSO_BOUNDS, fine, [middle, 0], (ink) => paintTorso(ink, theme));
      bones.view.alpha = COLLAR_SEEN;
      bones.paint(COLLAR_BOUNDS, fine, [middle, 0], (ink) => paintCollarBones(ink, theme));
      anatomyOf(chestFrame("extracardiac")).lungs.forEach((lung, i) => {
        present(cages[i]).paint(cageBounds(lung), fine, [0, 0], (ink) => paintWall(ink, lung, theme));
        present(hoops[i]).paint(cageBounds(lung), fine, [0, 0], (ink) => paintRibs(ink, lung, theme));
      });
    },
    move(size) {
      const wide = skinWidth(size);
      for (const { view: painted } of [skin, bones]) painted.scale.set(wide, 1);
      mask.setFromMatrix(new Matrix(wide, 0, 0, 1, MIDLINE * (1 - wide), 0));
      for (const [i, sign] of [-1, 1].entries()) {
        const { a, b, tx, ty } = swingOf(sign, size);
        for (const pair of swings) present(pair[i]).setFromMatrix(new Matrix(a, b, 0, 1, tx, ty));
      }
    },
    release() {
      for (const each of [skin, bones, ...cages, ...hoops]) each.release();
    },
  };
}
