/** The figure and its quiet organs as two pictures, painted once: behind all vessels, and what of the bowel lies before them. */
import { Container } from "pixi.js";
import { sheet } from "../anatomy/painted-sheet.ts";
import type { Theme } from "../theme/theme.ts";
import { type Laying, turned } from "./drawn-layer.ts";
import { type Emphasis, NO_EMPHASIS } from "./emphasis.ts";
import { paintFigure } from "./paint-figure.ts";
import { paintOrgansBefore, paintOrgansBehind, paintStomach } from "./paint-organs.ts";
import type { Proportions } from "./proportions.ts";

/** y up: where bowel lies before vessels. */
const BELLY: Rows = { bottom: -1064, top: -510 };
/** y up: the stomach's lower border, which stays when the dome above presses on it, and its top. */
const STOMACH: Rows = { bottom: -700, top: -525 };
interface Rows {
  readonly bottom: number;
  readonly top: number;
}

interface Stands {
  readonly proportions: Proportions;
  /** plane units by which the dome, and the stomach's with it, stands lower than at rest */
  readonly fall: number;
}

export interface PaintedBody {
  readonly behind: Container;
  readonly before: Container;
  draw(laying: Laying, stands: Stands, theme: Theme, emphasis?: Emphasis): void;
  release(): void;
}

export function paintedBody(): PaintedBody {
  const [ground, cover, stomach] = [sheet(), sheet(), sheet()];
  const [behind, before] = [turned(ground), new Container()];
  const pressed = turned(stomach);
  before.addChild(pressed, turned(cover));
  let known: readonly unknown[] = [];
  return {
    behind,
    before,
    draw(laying, { proportions, fall }, theme, emphasis = NO_EMPHASIS) {
      const kept = 1 - fall / (STOMACH.top - STOMACH.bottom);
      pressed.scale.y = -kept;
      pressed.y = -STOMACH.bottom * (1 - kept);
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
      const within = (rows: Rows) =>
        [left, Math.max(bottom, row(rows.bottom)), right, Math.min(top, row(rows.top))] as const;
      cover.paint(within(BELLY), density, [0, 0], (ink) => paintOrgansBefore(ink, theme));
      stomach.paint(within(STOMACH), density, [0, 0], (ink) => paintStomach(ink, theme));
    },
    release() {
      ground.release();
      cover.release();
      stomach.release();
    },
  };
}
