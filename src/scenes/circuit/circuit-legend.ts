/** What drops, rings, speed and the vessels' colours mean: always on. */
import { Container, Graphics } from "pixi.js";
import type { Frame } from "../../chain/frame.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { roundOf } from "../anatomy/tones.ts";
import { lettering, type Note } from "../drawing/lettering.ts";
import { rowsOf } from "../drawing/split.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import type { Box } from "../scene.ts";
import { markColour, OXYGEN, tintOf } from "../theme/colour.ts";
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
  readonly args?: Readonly<Record<string, string>>;
  readonly mark?: { readonly colour: string; readonly rich: boolean };
  /** the scale of the vessels' colours stands before it */
  readonly scale?: true;
}

/** In sizes of type: what a mark and the scale take, and the scale's length and height. */
const MARK = 1.9;
const SCALE = { room: 7.6, length: 7, height: 0.62, steps: 28 } as const;

const roomOf = ({ mark, scale }: Entry): number => (mark ? MARK : scale ? SCALE.room : 0);

/** part of the clear height that the legend may take before entries without a mark are left out */
const MAX_SHARE = 0.2;

interface Shows {
  /** states that stand side by side are distinguished by levels at their organs */
  readonly levels?: boolean;
  /** only veins have marks, and a still picture is of one moment */
  readonly veins?: boolean;
}

export function circuitLegend({ levels = false, veins = false }: Shows = {}): Legend {
  const view = new Container();
  const words = lettering();
  const samples = streaks();
  samples.resize(veins ? 1 : 2);
  const bar = new Graphics();
  view.addChild(words.view, samples.view, bar);
  return {
    view,
    draw(clear, { panes, still }, floor, theme) {
      const type = sizes(Math.min(clear.height, clear.width), floor).axis;
      const { colour } = theme;
      // Before completion arteries hold mixed blood: what the lungs give back is rich in every stage.
      const { svc, pulmonaryVein } = saturationsOf(entryAt(panes, 0).circulation);
      const rich: readonly Entry[] = [
        {
          key: still ? "further.legend.richStill" : "further.legend.rich",
          mark: { colour: markColour(colour, pulmonaryVein), rich: true },
        },
        {
          key: "further.legend.colour",
          args: { from: formatQuantity(OXYGEN.least, "%"), to: formatQuantity(OXYGEN.most, "%") },
          scale: true,
        },
      ];
      const all: readonly Entry[] = [
        {
          key: still ? "further.legend.poorStill" : "further.legend.poor",
          mark: { colour: markColour(colour, svc), rich: false },
        },
        ...(veins ? [] : rich),
        {
          key: still
            ? veins
              ? "further.legend.stillMoment"
              : "further.legend.still"
            : "further.legend.motion",
        },
        ...(levels && panes.length > 1 ? [{ key: "further.legend.level" }] : []),
      ];
      const noteOf = (entry: Entry): Note => ({
        lines: [{ words: theme.say(entry.key, entry.args), size: type, colour: colour.inkSoft }],
        x: 0,
        y: 0,
        bare: true,
        wrap: clear.width - type * roomOf(entry),
      });
      const lay = (shown: readonly Entry[]) => {
        words.begin();
        const sizesOf = shown.map((entry) => words.write(noteOf(entry), theme));
        const widths = sizesOf.map(({ width }, i) => width + type * roomOf(entryAt(shown, i)));
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
      bar.clear();
      rows.forEach((row, r) => {
        let x = clear.x;
        const middle = foot + entryAt(heights, r) / 2;
        foot += entryAt(heights, r);
        for (const i of row) {
          const entry = entryAt(shown, i);
          const { mark, scale } = entry;
          words.write({ ...noteOf(entry), x: x + type * roomOf(entry), y: middle, anchor: [0, 0.5] }, theme);
          if (scale) drawScale(bar, { x, y: middle }, type, theme);
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

/** Vessels' colours from the least to the most oxygen. */
function drawScale(
  ink: Graphics,
  { x, y }: { readonly x: number; readonly y: number },
  type: number,
  theme: Theme,
): void {
  const [step, height] = [(SCALE.length * type) / SCALE.steps, SCALE.height * type];
  for (let i = 0; i < SCALE.steps; i++) {
    const saturation = OXYGEN.least + ((OXYGEN.most - OXYGEN.least) * i) / (SCALE.steps - 1);
    // Each reaches under the next, so that no crack shows.
    const wide = i + 1 < SCALE.steps ? step + 1 : step;
    ink.rect(x + i * step, y - height / 2, wide, height).fill(roundOf(saturation, theme).body);
  }
}
