/** The panes of the pathway scene: each a pathway, or heart and lungs where its blood is pumped to the lungs. */
import { Container } from "pixi.js";
import type { Frame } from "../../chain/frame.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Viewport } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import type { HeartView, WordsRoom } from "./heart-view.ts";
import { momentOf } from "./moment.ts";
import { type PaneView, paneView, type Room } from "./pane-view.ts";

interface PlaneBoxes {
  /** where each pathway lies */
  readonly planes: readonly Room[];
  /** where each heart's words lie */
  readonly hearts: readonly WordsRoom[];
}

export interface Planes {
  readonly view: Container;
  readonly panes: readonly PaneView[];
  /** a body is shown in part, down to the lower edge of its box */
  readonly cut: boolean;
  /** Makes as many panes as are needed, and lets the rest go. */
  keep(count: number): void;
  /** @param first one of the first drawings, which leave out what takes long */
  draw(frame: Frame, boxes: PlaneBoxes, viewport: Viewport, theme: Theme, first: boolean): void;
  pick(pane: number, x: number, y: number): string | null;
}

/** s after which heart and breath go on, in one pane after the other: the processor paints them in more time than all blood. */
const REST = 0.03;

/** @param makeHeart none where every pane has a pathway */
export function planes(makeHeart?: () => HeartView): Planes {
  const view = new Container();
  const panes: PaneView[] = [];
  const hearts: HeartView[] = [];
  let [turn, waited] = [0, 0];
  return {
    view,
    panes,
    get cut() {
      return hearts.some((heart) => heart.cut);
    },
    keep(count) {
      while (panes.length < count) {
        const pane = paneView();
        panes.push(pane);
        view.addChild(pane.view);
        const heart = makeHeart?.();
        if (!heart) continue;
        hearts.push(heart);
        view.addChild(heart.view);
      }
      while (panes.length > count) {
        present(panes.pop()).release();
        hearts.pop()?.release();
      }
    },
    draw(frame, boxes, viewport, theme, first) {
      const moment = momentOf(frame, viewport, first);
      waited += viewport.elapsed;
      if (waited > REST) [turn, waited] = [(turn + 1) % frame.panes.length, 0];
      const goesOn = waited === 0 ? turn : -1;
      frame.panes.forEach((pane, i) => {
        const room = entryAt(boxes.planes, i);
        entryAt(panes, i).draw(pane, room, moment, theme, i === goesOn || frame.still);
        hearts[i]?.draw(pane, room, entryAt(boxes.hearts, i), moment, theme);
      });
    },
    pick: (pane, x, y) => panes[pane]?.pick(x, y) ?? hearts[pane]?.pick(x, y) ?? null,
  };
}
