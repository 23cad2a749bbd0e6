/** The grade line: pressure along the blood's way, in the picture's order, from a hepatic vein to the atrium. */
import { type Container, Graphics } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { keptPicture } from "../drawing/kept-picture.ts";
import { lettering } from "../drawing/lettering.ts";
import type { Box, Viewport } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";
import { frame, type Plot } from "./grade-frame.ts";
import { drawGradeKey } from "./grade-key.ts";
import { drawGradePlot } from "./grade-plot.ts";

export interface GradeLineLayer {
  readonly view: Container;
  draw(
    panes: readonly Pick<Pane, "circulation" | "before">[],
    box: Box,
    focus: string | null,
    sizes: Sizes,
    theme: Theme,
  ): void;
  /** It stays as drawn last: the processor may keep it as a picture. Null: it is shown as it is. */
  keep(viewport: Viewport | null): void;
  /** The element at a point of the canvas, or null off the line's box. */
  pick(x: number, y: number): string | null;
  release(): void;
}

export function gradeLineLayer(): GradeLineLayer {
  const ink = new Graphics();
  const words = lettering();
  const { view, draw: keep, release } = keptPicture(ink, words.view);
  let drawn: { plot: Plot; points: Circulation["pathway"]["gradeLine"] } | null = null;

  return {
    view,
    keep,
    release,
    draw(panes, box, focus, sizes, theme) {
      ink.clear();
      words.begin();
      drawn = null;
      const known = panes.flatMap(({ circulation }) => circulation ?? []);
      const first = known[0];
      if (first && first.pathway.gradeLine.length > 1) {
        const sheet = { ink, words, sizes, theme };
        const key = known.length > 1 ? drawGradeKey(sheet, known, box) : null;
        const plot = frame(box, key, sizes);
        drawn = { plot, points: first.pathway.gradeLine };
        drawGradePlot(sheet, { known, earlier: earlierLines(panes) }, plot, focus);
      }
      words.end();
    },
    pick(x, y) {
      if (!drawn) return null;
      const { plot, points } = drawn;
      if (x < plot.left || x > plot.left + plot.width || y < plot.top || y > plot.top + plot.height)
        return null;
      const station = (x - plot.left) / plot.width;
      return points.findLast((point) => point.station <= station)?.at ?? null;
    },
  };
}

/** The lines before the last change, where it has been answered. */
const earlierLines = (panes: readonly Pick<Pane, "circulation" | "before">[]): readonly Circulation[] =>
  panes.flatMap(({ circulation, before }) =>
    before?.circulation && before.circulation !== circulation ? before.circulation : [],
  );
