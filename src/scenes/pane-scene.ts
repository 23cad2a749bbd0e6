/** A scene that shows every state of the circulation in a box of its own: panes are made as states come, and hidden as they go. */
import { Container } from "pixi.js";
import type { Frame, Pane } from "../chain/frame.ts";
import { entryAt } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { Legend } from "./circuit/circuit-legend.ts";
import { splitBox, withAir } from "./drawing/split.ts";
import { paneTitles } from "./pane-titles.ts";
import { type Box, type Scene, type Viewport, WITH_ALL } from "./scene.ts";
import type { Theme } from "./theme/theme.ts";

/** One solved state of a frame. */
interface PaneState {
  readonly frame: Frame;
  readonly index: number;
  readonly pane: Pane;
  readonly circulation: Circulation;
}

export interface ScenePane {
  readonly view: Container;
  draw(state: PaneState, box: Box, viewport: Viewport, theme: Theme): void;
  /** the place under a point of the canvas */
  pick?(x: number, y: number): string | null;
  release(): void;
}

export interface PaneSceneOptions {
  /** CSS px between panes; 32 when left out */
  readonly gap?: number;
  /** each pane writes its own title */
  readonly titled?: boolean;
  /** along the foot of the scene */
  readonly legend?: Legend;
  /** whether a solved pane has what is drawn; all have when left out */
  readonly shows?: (pane: Pane) => boolean;
}

/** The circulations of a frame that are solved, so that panes can share their axes. */
export const solvedIn = ({ panes }: Frame): readonly Circulation[] =>
  panes.flatMap(({ circulation }) => circulation ?? []);

export function paneScene(make: () => ScenePane, options: PaneSceneOptions = {}): Scene {
  const { gap = 32, titled = false, legend, shows = () => true } = options;
  const view = new Container();
  const panes: ScenePane[] = [];
  const titles = titled ? null : paneTitles();
  if (legend) view.addChild(legend.view);
  if (titles) view.addChild(titles.view);

  const keep = (count: number) => {
    while (panes.length < count) {
      const next = make();
      panes.push(next);
      view.addChild(next.view);
    }
  };

  return {
    view,
    draw(frame, viewport, theme) {
      keep(frame.panes.length);
      const clear = withAir(viewport.clear);
      const foot = legend?.draw(clear, frame, viewport.floor, theme) ?? 0;
      const whole = splitBox({ ...clear, height: clear.height - foot }, frame.panes.length, gap);
      const boxes = titles?.draw(frame, whole, viewport, theme) ?? whole;
      panes.forEach((each, index) => {
        const pane = frame.panes[index];
        const circulation = pane?.circulation;
        each.view.visible = Boolean(pane && circulation && shows(pane));
        if (pane && circulation && each.view.visible)
          each.draw({ frame, index, pane, circulation }, entryAt(boxes, index), viewport, theme);
      });
    },
    pick(x, y) {
      for (const [pane, each] of panes.entries()) {
        const name = each.view.visible ? each.pick?.(x, y) : null;
        if (name) return { name, pane };
      }
      return null;
    },
    release() {
      // What is drawn goes before the textures that it is drawn with.
      view.destroy(WITH_ALL);
      for (const each of panes) each.release();
      legend?.release();
    },
  };
}
