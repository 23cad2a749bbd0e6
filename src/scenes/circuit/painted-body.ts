/** The figure and its quiet organs as two pictures, painted once: behind all vessels, and what of the bowel lies before them. */
import { Container } from "pixi.js";
import { type Bounds, type Painted, servesAt, sheet } from "../anatomy/painted-sheet.ts";
import type { Theme } from "../theme/theme.ts";
import { BODY } from "./arrange.ts";
import { type Emphasis, NO_EMPHASIS } from "./emphasis.ts";
import { paintFigure } from "./paint-figure.ts";
import { paintOrgansBefore, paintOrgansBehind } from "./paint-organs.ts";

/** y up, as sheets are painted */
const ROOM: Bounds = [BODY.left - 6, -BODY.bottom, BODY.right + 6, -BODY.top];
const BELLY: Bounds = [240, -1064, 770, -510];

export interface PaintedBody {
  readonly behind: Container;
  readonly before: Container;
  /** @param density device pixels of a plane unit */
  draw(density: number, theme: Theme, emphasis?: Emphasis): void;
  release(): void;
}

/** The plane counts down. */
const turned = ({ view }: Painted): Container => {
  const plane = new Container();
  plane.scale.set(1, -1);
  plane.addChild(view);
  return plane;
};

export function paintedBody(): PaintedBody {
  const [ground, cover] = [sheet(), sheet()];
  const [behind, before] = [turned(ground), turned(cover)];
  let known = "";
  let fine = 0;
  return {
    behind,
    before,
    draw(density, theme, emphasis = NO_EMPHASIS) {
      before.alpha = emphasis.lit.size > 0 ? 1 - emphasis.dim * 0.8 : 1;
      if (known === theme.name && servesAt(fine, density)) return;
      known = theme.name;
      fine = density;
      ground.paint(ROOM, density, [0, 0], (ink) => {
        paintFigure(ink, theme);
        paintOrgansBehind(ink, theme);
      });
      cover.paint(BELLY, density, [0, 0], (ink) => paintOrgansBefore(ink, theme));
    },
    release() {
      ground.release();
      cover.release();
    },
  };
}
