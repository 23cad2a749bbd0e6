/** What drops, rings and speed mean: always on. */
import { Container } from "pixi.js";
import type { Frame } from "../../chain/frame.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { lettering, type Note } from "../drawing/lettering.ts";
import { rowsOf } from "../drawing/split.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import type { Box } from "../scene.ts";
import { markColour, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { sizes } from "../theme/type.ts";
import { saturationsOf } from "../theme/unsolved.ts";

export interface Legend {
  readonly view: Container;
  /** Draws along the foot of the clear box; returns the height taken, CSS px. */
  draw(clear: Box, frame: Frame, floor: number, theme: Theme): number;
  release(): void;
}

interface Entry {
  readonly key: string;
  readonly mark?: { readonly colour: string; readonly rich: boolean };
}

/** part of the clear height that the legend may take before entries without a mark are left out */
const MAX_SHARE = 0.2;

/** @param levels states that stand side by side are distinguished by levels at their organs */
export function circuitLegend(levels = false): Legend {
  const view = new Container();
  const words = lettering();
  const samples = streaks();
  samples.resize(2);
  view.addChild(words.view, samples.view);
  return {
    view,
    draw(clear, { panes, still }, floor, theme) {
      const type = sizes(Math.min(clear.height, clear.width), floor).axis;
      const { colour } = theme;
      const { svc, arterial } = saturationsOf(entryAt(panes, 0).circulation);
      const all: readonly Entry[] = [
        {
          key: still ? "further.legend.poorStill" : "further.legend.poor",
          mark: { colour: markColour(colour, svc), rich: false },
        },
        {
          key: still ? "further.legend.richStill" : "further.legend.rich",
          mark: { colour: markColour(colour, arterial), rich: true },
        },
        { key: still ? "further.legend.still" : "further.legend.motion" },
        ...(levels && panes.length > 1 ? [{ key: "further.legend.level" }] : []),
      ];
      const noteOf = ({ key }: Entry): Note => ({
        lines: [{ words: theme.say(key), size: type, colour: colour.inkSoft }],
        x: 0,
        y: 0,
        bare: true,
        wrap: clear.width,
      });
      const lay = (shown: readonly Entry[]) => {
        words.begin();
        const sizesOf = shown.map((entry) => words.write(noteOf(entry), theme));
        const widths = sizesOf.map(({ width }, i) => width + (entryAt(shown, i).mark ? type * 1.9 : 0));
        const rows = rowsOf(widths, clear.width, type * 1.6);
        const heights = rows.map((row) => Math.max(...row.map((i) => entryAt(sizesOf, i).height)) * 1.12);
        return { shown, widths, rows, heights, height: heights.reduce((sum, height) => sum + height, 0) };
      };
      // Large words in a small room would leave none for the picture.
      const whole = lay(all);
      const laid = whole.height > MAX_SHARE * clear.height ? lay(all.filter(({ mark }) => mark)) : whole;
      const { shown, widths, rows, heights, height } = laid;
      let foot = clear.y + clear.height - height;
      words.begin();
      rows.forEach((row, r) => {
        let x = clear.x;
        const middle = foot + entryAt(heights, r) / 2;
        foot += entryAt(heights, r);
        for (const i of row) {
          const entry = entryAt(shown, i);
          const { mark } = entry;
          words.write(
            { ...noteOf(entry), x: x + (mark ? type * 1.9 : 0), y: middle, anchor: [0, 0.5] },
            theme,
          );
          if (mark)
            samples.set(i, {
              x: x + type * 0.9,
              y: middle,
              angle: 0,
              length: still ? type * 1.5 : type * 1.2,
              width: still ? type : type * 0.62,
              colour: tintOf(mark.colour),
              shape: shapeOf(mark.rich, still),
            });
          x += entryAt(widths, i) + type * 1.6;
        }
      });
      words.end();
      return height + type * 0.5;
    },
    release: () => samples.release(),
  };
}
