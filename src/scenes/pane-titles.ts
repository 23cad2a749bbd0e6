/** Titles over panes that stand side by side and say nothing of their own of whose they are. */
import type { Frame } from "../chain/frame.ts";
import { entryAt } from "../sim/checked/present.ts";
import { namesIn } from "./drawing/apart.ts";
import { lettering } from "./drawing/lettering.ts";
import type { Box, Viewport } from "./scene.ts";
import type { Theme } from "./theme/theme.ts";
import { sizesIn } from "./theme/type.ts";

export function paneTitles() {
  const words = lettering();
  let last = "";
  let height = 0;
  return {
    view: words.view,
    /** What the titles leave of the boxes. */
    draw(frame: Frame, boxes: readonly Box[], { clear, floor }: Viewport, theme: Theme): readonly Box[] {
      const requests = frame.panes.map(({ circulation }) => circulation?.request);
      const names = boxes.length > 1 ? namesIn(requests, theme.say) : [];
      const next = JSON.stringify([names, boxes, floor, theme.name]);
      if (next !== last) {
        last = next;
        height = 0;
        const { label, axis } = sizesIn(clear, floor);
        words.begin();
        names.forEach((name, i) => {
          if (!name) return;
          const { x, y, width } = entryAt(boxes, i);
          const lines = [{ words: name, size: label, colour: theme.colour.ink, bold: true }];
          const lain = words.write(
            { lines, x: x + width / 2, y, anchor: [0.5, 0], wrap: width - label },
            theme,
          );
          height = Math.max(height, lain.height + 0.6 * axis);
        });
        words.end();
      }
      return boxes.map((box) => ({ ...box, y: box.y + height, height: Math.max(1, box.height - height) }));
    },
  };
}
