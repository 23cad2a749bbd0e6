/** Marks of blood in heart and lungs where these fill the picture: by origin and as fine as in the planes of the other stages. */
import { Container } from "pixi.js";
import type { Circulation } from "../../../sim/circulation/answer/answer.ts";
import type { Colouring } from "../../../state/scene-state.ts";
import { sideFlow } from "../../anatomy/side-streams.ts";
import { lungsAt, sectionOf } from "../../anatomy/standing.ts";
import { fadeAtOpenings } from "../../layers/fade-tracers.ts";
import { tint, tintRich } from "../../layers/tint.ts";
import { headSize, TAIL, tracerView } from "../../layers/tracer-view.ts";
import type { Viewport } from "../../scene.ts";
import type { Theme } from "../../theme/theme.ts";
import { CHEST_AT, chestFrame } from "../chest-plan.ts";
import { heartStreams } from "./heart-streams.ts";

/** What they are drawn by. */
export interface Marks {
  readonly colouring: Colouring;
  readonly viewport: Viewport;
}

export function heartMarks() {
  const view = new Container();
  view.position.set(CHEST_AT.x, CHEST_AT.y);
  view.scale.set(CHEST_AT.scale, -CHEST_AT.scale);
  const layer = tracerView(view);
  const sides = sideFlow(heartStreams);
  return {
    view,
    /** @param fit how the body's plane lies on the page */
    draw(
      circulation: Circulation,
      time: number,
      { colouring, viewport }: Marks,
      fit: { readonly x: number; readonly y: number; readonly scale: number },
      theme: Theme,
    ): void {
      const frame = chestFrame("two-ventricle", true);
      const side = sides.at(frame, circulation, time, lungsAt(circulation, time, false), {
        sections: {
          ventricle: sectionOf(circulation, "ventricle", time),
          rightVentricle: sectionOf(circulation, "rightVentricle", time),
        },
      });
      if (!side) return;
      const at = {
        scale: fit.scale * CHEST_AT.scale,
        x: fit.x + fit.scale * CHEST_AT.x,
        y: fit.y + fit.scale * CHEST_AT.y,
      };
      const half = headSize(viewport, at);
      const tinting = { colouring, circulation, dyeing: false };
      const brush = {
        half,
        longest: TAIL * half,
        share: 1,
        alpha: 1,
        at,
        seen: viewport.full,
        dense: viewport.dense,
      };
      layer.draw(
        side.marks,
        (moved, colours) => {
          tint(moved, tinting, theme, colours);
          tintRich(side, 0, tinting, theme, colours);
          fadeAtOpenings(moved, { taken: 0, shown: side.shown, openings: [] }, colours);
        },
        brush,
        viewport,
      );
    },
    release: () => layer.release(),
  };
}
