/** What drops, rings and speed mean: always on. */
import { Container } from "pixi.js";
import { lettering } from "../drawing/lettering.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { sizes } from "../theme/type.ts";

export interface Legend {
  readonly view: Container;
  /** Draws along the foot of the clear box; returns the height taken, CSS px. */
  draw(clear: Box, floor: number, theme: Theme, compared: boolean, still: boolean): number;
  release(): void;
}

export function circuitLegend(): Legend {
  const view = new Container();
  const words = lettering();
  const samples = streaks();
  samples.resize(2);
  view.addChild(words.view, samples.view);
  return {
    view,
    draw(clear, floor, theme, compared, still) {
      const type = sizes(Math.min(clear.height, clear.width), floor).axis;
      const { colour } = theme;
      words.begin();
      let x = clear.x;
      let rows = 1;
      let y = clear.y + clear.height;
      const place = (key: string, mark: { colour: string; rich: boolean; index: number } | null) => {
        const indent = mark ? type * 1.9 : 0;
        const note = {
          lines: [{ words: theme.say(key), size: type, colour: colour.inkSoft }],
          x: x + indent,
          y,
          anchor: [0, 1] as const,
          bare: true,
        };
        const lain = words.write(note, theme);
        if (mark)
          samples.set(
            mark.index,
            x + type * 0.9,
            lain.y + lain.height / 2,
            0,
            still ? type * 1.5 : type * 1.2,
            still ? type : type * 0.62,
            Number.parseInt(mark.colour.slice(1), 16),
            shapeOf(mark.rich, still),
          );
        return lain;
      };
      const keys = [
        [
          still ? "further.legend.poorStill" : "further.legend.poor",
          { colour: colour.poor, rich: false, index: 0 },
        ],
        [
          still ? "further.legend.richStill" : "further.legend.rich",
          { colour: colour.rich, rich: true, index: 1 },
        ],
        [still ? "further.legend.still" : "further.legend.motion", null],
        ...(compared ? [["further.legend.level", null] as const] : []),
      ] as const;
      // Rows are filled from the foot upward.
      const narrow = clear.width < type * (compared ? 84 : 46);
      for (const [key, mark] of keys) {
        const lain = place(key, mark);
        if (narrow) {
          y -= lain.height * 1.1;
          rows++;
        } else x = lain.x + lain.width + type * 1.6;
      }
      words.end();
      return narrow ? (rows - 1) * type * 1.45 + type * 0.4 : type * 1.9;
    },
    release: () => samples.release(),
  };
}
