/** The figure and its quiet organs as two pictures, painted once: behind all vessels, and what of the bowel lies before them. */
import { Container } from "pixi.js";
import { type Bounds, type Painted, servesAt, sheet } from "../anatomy/painted-sheet.ts";
import type { Theme } from "../theme/theme.ts";
import type { Extent } from "./arrange.ts";
import { type Emphasis, NO_EMPHASIS } from "./emphasis.ts";
import { paintFigure } from "./paint-figure.ts";
import { paintOrgansBefore, paintOrgansBehind } from "./paint-organs.ts";

/** Plane units beyond an extent that its box may show. */
const AIR = 24;
/** What of the body is painted, y up, as sheets are. */
const roomOf = ({ left, top, right, bottom }: Extent): Bounds => [
  left - AIR,
  -bottom - AIR,
  right + AIR,
  -top + AIR,
];
const BELLY: Extent = { left: 264, top: 534, right: 746, bottom: 1040 };

export interface PaintedBody {
  readonly behind: Container;
  readonly before: Container;
  /** @param extent the part in sight @param density device pixels of a plane unit */
  draw(extent: Extent, density: number, theme: Theme, emphasis?: Emphasis): void;
  release(): void;
}

/** The plane counts down. */
export const turned = ({ view }: Painted): Container => {
  const plane = new Container();
  plane.scale.set(1, -1);
  plane.addChild(view);
  return plane;
};

export function paintedBody(): PaintedBody {
  const [ground, cover] = [sheet(), sheet()];
  const [behind, before] = [turned(ground), turned(cover)];
  let [known, fine] = ["", 0];
  let shown: Extent | null = null;
  return {
    behind,
    before,
    draw(extent, density, theme, emphasis = NO_EMPHASIS) {
      before.alpha = emphasis.lit.size > 0 ? 1 - emphasis.dim * 0.8 : 1;
      if (known === theme.name && shown === extent && servesAt(fine, density)) return;
      [known, fine, shown] = [theme.name, density, extent];
      ground.paint(roomOf(extent), density, [0, 0], (ink) => {
        paintFigure(ink, theme);
        paintOrgansBehind(ink, theme);
      });
      cover.paint(
        roomOf({ ...BELLY, bottom: Math.min(BELLY.bottom, extent.bottom) }),
        density,
        [0, 0],
        (ink) => paintOrgansBefore(ink, theme),
      );
    },
    release() {
      ground.release();
      cover.release();
    },
  };
}
