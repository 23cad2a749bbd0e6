/** A body that grows, with a tube that does not or a chamber that grows less. */
import { Container } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { type Lettering, lettering } from "../drawing/lettering.ts";
import { withAir } from "../drawing/split.ts";
import { type SweepPlot, sweepPlots } from "../drawing/sweep-plots.ts";
import { type Box, type MakeScene, WITH_ALL } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { sizes } from "../theme/type.ts";
import { bodies } from "./bodies.ts";
import { ringWords } from "./rings.ts";
import { rowHeight } from "./row.ts";

type Quantity = SweepPlot["read"];

/** Before a pathway is made there is no tube and nothing is spent on it: the body's own quantities are shown. */
const ofPathway =
  (read: Quantity): Quantity =>
  (circulation) =>
    hasPathway(circulation.request.stage) ? read(circulation) : Number.NaN;
const ofBody =
  (read: Quantity): Quantity =>
  (circulation) =>
    hasPathway(circulation.request.stage) ? Number.NaN : read(circulation);

const PLOTS: readonly SweepPlot[] = [
  {
    title: "further.exercise.drop",
    read: ofPathway(({ pathway }) => pathway.pressureDrop),
    band: ({ pathway }) => pathway.band?.pressureDrop,
  },
  {
    title: "further.growth.power",
    read: ofPathway(({ pathway }) => pathway.powerLoss),
    band: ({ pathway }) => pathway.band?.powerLoss,
  },
  { title: "further.exercise.output", read: ofBody(({ flows }) => flows.systemic) },
  { title: "further.growth.pressure", read: ofBody(({ pressures }) => pressures.ivc) },
];

/** What the rings in the bodies are, under them. */
function writeNote(
  words: Lettering,
  points: readonly SweepPoint[],
  row: Box,
  type: number,
  theme: Theme,
): void {
  words.write(
    {
      lines: [
        {
          words: ringWords(points, theme.say),
          size: type,
          colour: theme.colour.inkSoft,
        },
      ],
      x: row.x + row.width / 2,
      y: row.y + row.height + type * 0.5,
      anchor: [0.5, 0],
      bare: true,
      wrap: row.width,
    },
    theme,
  );
}

export const makeGrowth: MakeScene = () => {
  const view = new Container();
  const row = bodies();
  const words = lettering();
  const plots = sweepPlots(PLOTS);
  view.addChild(row.view, plots.view, words.view);
  return {
    view,
    draw(frame, { clear: box, floor }, theme) {
      const clear = withAir(box);
      const { sweep, state } = frame;
      const first = sweep?.over === "bsa" ? sweep.curves[0] : undefined;
      view.visible = first !== undefined;
      if (!sweep || !first) return;
      const type = sizes(Math.min(clear.height, clear.width), floor).axis;
      const note = type * 3.2;
      // On a phone on its side the curves stand beside the bodies.
      const low = clear.height < 24 * type && clear.width > 1.8 * clear.height;
      const across = low ? clear.width * 0.46 : clear.width;
      const top: Box = low
        ? { ...clear, width: across, height: clear.height - note }
        : { ...clear, height: rowHeight(clear, first.points.length, type) };
      const rest: Box = low
        ? { ...clear, x: clear.x + across + type, width: clear.width - across - type }
        : { ...clear, y: clear.y + top.height + note, height: clear.height - top.height - note };
      const { points } = first;
      const bsa = state.request.body.bsa;
      row.draw(points, { now: bsa, time: frame.time, still: frame.still }, top, type, theme);
      words.begin();
      const { request } = entryAt(points, 0);
      if (hasPathway(request.stage)) writeNote(words, points, top, type, theme);
      words.end();
      plots.draw({ sweep, foot: theme.say("further.axis.bsa"), mark: bsa }, rest, type, theme);
    },
    release() {
      // What is drawn goes before the textures that it is drawn with.
      view.destroy(WITH_ALL);
      row.release();
    },
  };
};
