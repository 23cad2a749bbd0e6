/** A pane whose blood reaches the lungs through a pump: heart and lungs of the whole circulation in the pathway's place. */
import type { Pane } from "../../chain/frame.ts";
import { present } from "../../sim/checked/present.ts";
import { hasPlane } from "../../sim/parameters/request.ts";
import { BODY, CHEST } from "../circuit/arrange.ts";
import { pane as circuitPane } from "../circuit/circuit-pane.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { sizesIn } from "../theme/type.ts";
import type { Moment } from "./moment.ts";

/** Width over height from which heart and lungs alone fill a box better than the whole body. */
const WIDE = 0.95;

/** A stage without a plane of its own, once it is solved. */
const pumped = ({ circulation }: Pane): boolean =>
  circulation !== null && !hasPlane(circulation.request.stage);

export function heartView() {
  const drawn = circuitPane();
  let cut = false;
  return {
    view: drawn.view,
    /** the body is shown in part, down to the lower edge of its box */
    get cut() {
      return cut && drawn.view.visible;
    },
    draw(pane: Pane, box: Box, { view, time, still, viewport }: Moment, theme: Theme): void {
      drawn.view.visible = pumped(pane) && pane.geometry === null;
      if (!drawn.view.visible) return;
      cut = box.width > WIDE * box.height;
      const contents = {
        circulation: present(pane.circulation),
        against: null,
        compared: false,
        time,
        still,
        labels: view.labels,
        focus: view.focus,
        extent: cut ? CHEST : BODY,
        titled: false,
      };
      // In type as large as beside the planes of the other stages.
      const floor = sizesIn(viewport.clear, viewport.floor).axis;
      drawn.draw(contents, box, { ...viewport, floor }, theme);
    },
    pick: (x: number, y: number): string | null => (drawn.view.visible ? drawn.pick(x, y) : null),
    release(): void {
      drawn.view.destroy({ children: true, context: true });
      drawn.release();
    },
  };
}

export type HeartView = ReturnType<typeof heartView>;
