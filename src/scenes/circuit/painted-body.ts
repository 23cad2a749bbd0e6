/** The figure and its quiet organs as two pictures, painted once: behind all vessels, and what of the bowel lies before them. */
import type { Container } from "pixi.js";
import { sheet } from "../anatomy/painted-sheet.ts";
import type { Theme } from "../theme/theme.ts";
import { type Laying, turned } from "./drawn-layer.ts";
import { type Emphasis, NO_EMPHASIS } from "./emphasis.ts";
import { paintFigure } from "./paint-figure.ts";
import { paintOrgansBefore, paintOrgansBehind } from "./paint-organs.ts";
import type { Proportions } from "./proportions.ts";

/** y up: where bowel lies before vessels. */
const BELLY = { bottom: -1064, top: -510 } as const;

export interface PaintedBody {
  readonly behind: Container;
  readonly before: Container;
  draw(laying: Laying, proportions: Proportions, theme: Theme, emphasis?: Emphasis): void;
  release(): void;
}

export function paintedBody(): PaintedBody {
  const [ground, cover] = [sheet(), sheet()];
  const [behind, before] = [turned(ground), turned(cover)];
  let known: readonly unknown[] = [];
  return {
    behind,
    before,
    draw(laying, proportions, theme, emphasis = NO_EMPHASIS) {
      before.alpha = emphasis.lit.size > 0 ? 1 - emphasis.dim * 0.8 : 1;
      if (known[0] === laying && known[1] === theme.name) return;
      known = [laying, theme.name];
      const { room, density } = laying;
      const [left, bottom, right, top] = room;
      ground.paint(room, density, [0, 0], (ink) => {
        paintFigure(ink, proportions, theme);
        paintOrgansBehind(ink, proportions, theme);
      });
      // Cut on whole pixels, as the rest is.
      const row = (y: number) => top - Math.round((top - y) * density) / density;
      const belly = [
        left,
        Math.max(bottom, row(BELLY.bottom)),
        right,
        Math.min(top, row(BELLY.top)),
      ] as const;
      cover.paint(belly, density, [0, 0], (ink) => paintOrgansBefore(ink, theme));
    },
    release() {
      ground.release();
      cover.release();
    },
  };
}
