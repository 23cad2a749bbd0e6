/** A body that grows, with a tube that does not or a chamber that grows less. */

import { Container } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { formatNumber, formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { ageWords } from "../drawing/age-words.ts";
import { lettering, type Note } from "../drawing/lettering.ts";
import { withAir } from "../drawing/split.ts";
import { type SweepPlot, sweepPlots } from "../drawing/sweep-plots.ts";
import { type Box, type MakeScene, WITH_ALL } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { sizes } from "../theme/type.ts";
import { bodies, needOf } from "./bodies.ts";
import { pointWords, ringWords } from "./rings.ts";
import { rowHeight, shownOf } from "./row.ts";

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

type Unplaced = Omit<Note, "x" | "y">;

/** Over the bodies their point, under them what the pictures are. */
const notesOf = (
  points: readonly SweepPoint[],
  width: number,
  type: number,
  { say, colour }: Theme,
): readonly [Unplaced, Unplaced] => [
  {
    lines: [{ words: pointWords(points, say), size: HEAD * type, colour: colour.ink, bold: true }],
    bare: true,
    wrap: width,
  },
  {
    lines: [{ words: ringWords(points, say), size: type, colour: colour.inkSoft }],
    anchor: [0.5, 0],
    bare: true,
    wrap: width,
  },
];
/** Size of the point's type over the other's. */
const HEAD = 1.3;

export const makeGrowth: MakeScene = () => {
  const view = new Container();
  const row = bodies();
  const words = lettering();
  const plots = sweepPlots(PLOTS);
  view.addChild(row.view, plots.view, words.view);
  return {
    view,
    draw(frame, { clear: box, floor, dense }, theme) {
      const whole = withAir(box);
      const { sweep, state } = frame;
      const first = sweep?.over === "bsa" ? sweep.curves[0] : undefined;
      view.visible = first !== undefined;
      if (!sweep || !first) return;
      const type = sizes(Math.min(whole.height, whole.width), floor).axis;
      const { points } = first;
      const pathway = hasPathway(entryAt(points, 0).request.stage);
      // On a phone on its side the curves stand beside the bodies.
      const low = whole.height < 24 * type && whole.width > 1.8 * whole.height;
      const across = low ? whole.width * 0.46 : whole.width;
      words.begin();
      const [point, note] = pathway ? notesOf(points, across, type, theme) : [];
      const over = point ? words.write({ ...point, x: whole.x, y: whole.y }, theme).height + 0.3 * type : 0;
      const clear = { ...whole, y: whole.y + over, height: whole.height - over };
      const need = needOf(points, words, type, theme);
      const under = note ? words.measure(note, theme).height + type : type;
      const top: Box = low
        ? { ...clear, width: across, height: clear.height - under }
        : { ...clear, height: rowHeight(clear, points, type, need) };
      const rest: Box = low
        ? { ...whole, x: clear.x + across + type, width: clear.width - across - type }
        : { ...clear, y: clear.y + top.height + under, height: clear.height - top.height - under };
      const bsa = state.request.body.bsa;
      const { time, still } = frame;
      row.draw(points, { now: bsa, time, still, dense }, top, type, theme);
      if (note) words.write({ ...note, x: top.x + across / 2, y: top.y + top.height + 0.4 * type }, theme);
      words.end();
      // Units once, at the first: beside each other they would run into the next plot's.
      const named = shownOf(points, across, need).map(({ at, request }, i) => ({
        at,
        words:
          i === 0
            ? [ageWords(theme.say, request.body.ageYears), formatQuantity(at, "m2", 2)]
            : [formatNumber(request.body.ageYears, 0), formatNumber(at, 2)],
      }));
      plots.draw({ sweep, foot: theme.say("further.growth.axis"), mark: bsa, named }, rest, type, theme);
    },
    release() {
      // What is drawn goes before the textures that it is drawn with.
      view.destroy(WITH_ALL);
      row.release();
    },
  };
};
