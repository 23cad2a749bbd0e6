/** How much the panel of a wash-out shows: as much as every pane has room for, so that what is compared looks alike. */
import type { Pane } from "../../chain/frame.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { roomFor } from "../layers/keep-off.ts";
import type { Box } from "../scene.ts";
import type { Sizes } from "../theme/type.ts";
import { coverIn } from "./named.ts";
import type { PaneView } from "./pane-view.ts";
import { washOutPlots } from "./wash-out-later.ts";

/** Index into the panels of `washOutPanels`. */
export function washOutForm(
  panes: readonly Pane[],
  drawn: readonly PaneView[],
  boxes: readonly Box[],
  taken: readonly Box[],
  sizes: Sizes,
): number {
  const forms = panes.map(({ washOut }, i) => {
    if (!washOut) return 0;
    const { occupied, projection } = entryAt(drawn, i);
    const plots = washOutPlots();
    if (!plots || !occupied || !projection) return 0;
    const covers = coverIn(occupied, projection);
    return plots
      .washOutPanels(entryAt(boxes, i), sizes)
      .findIndex((panel) => roomFor([panel], entryAt(boxes, i), taken, (each) => covers(each, "washOut")));
  });
  return Math.max(0, ...forms);
}
