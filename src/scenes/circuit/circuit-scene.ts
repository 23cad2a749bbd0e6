/** The whole circulation at a glance; beside each other, two or three states of it. */
import { Container } from "pixi.js";
import { splitBox, withAir } from "../drawing/split.ts";
import { type MakeScene, WITH_ALL } from "../scene.ts";
import { BODY } from "./arrange.ts";
import { circuitLegend } from "./circuit-legend.ts";
import { type Pane, pane } from "./circuit-pane.ts";

export const makeCircuit: MakeScene = () => {
  const view = new Container();
  const legend = circuitLegend();
  const panes: Pane[] = [];
  view.addChild(legend.view);
  return {
    view,
    draw(frame, viewport, theme) {
      const clear = withAir(viewport.clear);
      const foot = legend.draw(clear, viewport.floor, theme, frame.panes.length > 1, frame.still);
      const area = { ...clear, height: clear.height - foot };
      const solved = frame.panes.map((each) => each.circulation);
      while (panes.length < solved.length) {
        const next = pane();
        panes.push(next);
        view.addChild(next.view);
      }
      const boxes = splitBox(area, solved.length);
      panes.forEach((each, i) => {
        const circulation = solved[i];
        each.view.visible = Boolean(circulation);
        if (!circulation) return;
        const contents = {
          circulation,
          against: i > 0 ? (solved[0] ?? null) : null,
          compared: solved.length > 1,
          time: frame.time,
          still: frame.still,
          labels: frame.state.view.labels,
          focus: frame.state.view.focus,
          extent: BODY,
          titled: true,
        };
        each.draw(contents, boxes[i]!, viewport.floor, viewport.elapsed, theme);
      });
    },
    pick(x, y) {
      for (let i = 0; i < panes.length; i++) {
        const name = panes[i]!.view.visible ? panes[i]!.pick(x, y) : null;
        if (name) return { name, pane: i };
      }
      return null;
    },
    release() {
      // What is drawn goes before the textures that it is drawn with.
      view.destroy(WITH_ALL);
      for (const each of panes) each.release();
      legend.release();
    },
  };
};
