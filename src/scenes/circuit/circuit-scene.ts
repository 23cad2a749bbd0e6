/** The whole circulation at a glance; beside each other, two or three states of it. */
import { Container } from "pixi.js";
import { apartIn } from "../drawing/apart.ts";
import { paneScene, type ScenePane } from "../pane-scene.ts";
import type { MakeScene } from "../scene.ts";
import { shownIn } from "./arrange.ts";
import { circuitLegend } from "./circuit-legend.ts";
import { pane } from "./circuit-pane.ts";
import { closeLook, halvesOf } from "./close-look.ts";
import { proportionsOf } from "./proportions.ts";

function circuitOf(): ScenePane {
  const whole = pane();
  const look = closeLook();
  const view = new Container();
  view.addChild(look.way, whole.view, look.from, look.view);
  return {
    view,
    draw({ frame, index, circulation }, box, viewport, theme) {
      const compared = frame.panes.length > 1;
      const proportions = proportionsOf(circulation);
      const requests = frame.panes.map((each) => each.circulation?.request);
      const halves = compared
        ? { body: box, look: null }
        : halvesOf(box, proportions, frame.state.view.labels);
      const contents = {
        circulation,
        against: index > 0 ? (frame.panes[0]?.circulation ?? null) : null,
        compared,
        time: frame.time,
        still: frame.still,
        labels: frame.state.view.labels,
        focus: frame.state.view.focus,
        extent: shownIn(halves.body, proportions),
        titled: true,
        apart: apartIn(requests, theme.say)[index],
      };
      const fit = whole.draw(contents, halves.body, viewport, theme);
      look.draw(contents, { fit, box: halves.look }, viewport, theme);
    },
    pick: whole.pick,
    release() {
      whole.release();
      look.release();
    },
  };
}

export const makeCircuit: MakeScene = () =>
  paneScene(circuitOf, { gap: 16, titled: true, legend: circuitLegend({ levels: true }) });
