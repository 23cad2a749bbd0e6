/** The same person at each effort of the curves' axis: standing, walking, running. The one of the state on the stage moves. */
import { Container, Graphics } from "pixi.js";
import { drawFigure, going } from "../drawing/figure.ts";
import type { Plotted } from "../drawing/plot.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** Steps' rounds a second when walking, and what running at the greatest effort adds. */
const WALKING = 0.8;
const FASTER = 0.65;
/** Where a step is widest. */
const STRIDE = 1.2;

export interface Runners {
  readonly view: Container;
  /** @param now effort of the state on the stage, times rest; `time` s of the running clock */
  draw(
    state: {
      readonly efforts: readonly number[];
      readonly now: number;
      readonly time: number;
      readonly still: boolean;
    },
    axis: Plotted,
    box: Box,
    theme: Theme,
  ): void;
}

export function runners(): Runners {
  const view = new Container();
  const ink = new Graphics();
  view.addChild(ink);
  return {
    view,
    draw({ efforts, now, time, still }, { toX }, box, { colour }) {
      ink.clear();
      const most = Math.max(...efforts);
      const paceOf = (effort: number) => Math.max(0, (effort - 1) / Math.max(1, most - 1));
      const nearest = efforts.reduce((a, b) => (Math.abs(b - now) < Math.abs(a - now) ? b : a), 1);
      const step = Math.abs(toX(2) - toX(1));
      const height = Math.min(0.94 * box.height, 1.5 * step);
      const ground = box.y + box.height;
      for (const effort of efforts) {
        const own = effort === nearest;
        const pace = paceOf(own ? now : effort);
        const phase = own && !still && pace > 0 ? 2 * Math.PI * time * (WALKING + FASTER * pace) : STRIDE;
        drawFigure(
          ink,
          going(pace, phase),
          { x: toX(own ? now : effort), ground, height },
          own ? colour.accent : mix(colour.stage, colour.hair, 0.5),
        );
      }
      ink
        .moveTo(toX(1) - step / 2, ground)
        .lineTo(toX(most) + step / 3, ground)
        .stroke({ color: colour.hair, width: 1.5, alpha: 0.6 });
    },
  };
}
