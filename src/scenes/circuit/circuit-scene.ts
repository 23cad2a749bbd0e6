/** The whole circulation at a glance; beside each other, two or three states of it. */
import { paneScene, type ScenePane } from "../pane-scene.ts";
import type { MakeScene } from "../scene.ts";
import { BODY } from "./arrange.ts";
import { circuitLegend } from "./circuit-legend.ts";
import { pane } from "./circuit-pane.ts";

function circuitOf(): ScenePane {
  const { view, draw, pick, release } = pane();
  return {
    view,
    draw({ frame, index, circulation }, box, viewport, theme) {
      const contents = {
        circulation,
        against: index > 0 ? (frame.panes[0]?.circulation ?? null) : null,
        compared: frame.panes.length > 1,
        time: frame.time,
        still: frame.still,
        labels: frame.state.view.labels,
        focus: frame.state.view.focus,
        extent: BODY,
        titled: true,
      };
      draw(contents, box, viewport.floor, viewport.elapsed, theme);
    },
    pick,
    release,
  };
}

export const makeCircuit: MakeScene = () => paneScene(circuitOf, { gap: 16, legend: circuitLegend(true) });
