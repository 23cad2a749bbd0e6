/** Fluid that leaves the capillaries, lymph that carries it back, and what runs over in the days after the operation. */
import { Container } from "pixi.js";
import type { ExchangeCourse } from "../../sim/exchange/index.ts";
import { lettering, type Note } from "../drawing/lettering.ts";
import { placed } from "../drawing/split.ts";
import { paneScene, type ScenePane } from "../pane-scene.ts";
import type { Box, MakeScene } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { type Sizes, sizesIn } from "../theme/type.ts";
import { collectedRange, courseCharts } from "./course-charts.ts";
import { dayAt, figuresAt } from "./day.ts";
import { insetNote } from "./duct-inset.ts";
import { figureNotes, writePlates } from "./figure-plates.ts";
import { barBoxes, gaugeNumbers } from "./fluid-gauge.ts";
import { ductWords, headNote, STATES, stateOf } from "./notes.ts";
import { isSmall, tissuePicture } from "./tissue-drawing.ts";

/** mL/h that one drop stands for, for a body of 1 m2. */
const DROP = 4.5;
/** Words are laid out again, and figures stand still long enough to be read, so many times a day of the course. */
const READINGS_PER_DAY = 4;

function exchangePane(): ScenePane {
  const view = new Container();
  const picture = tissuePicture();
  const charts = courseCharts();
  const words = lettering();
  view.addChild(picture.view, charts.view, words.view);
  let said = "";
  let known: ExchangeCourse | null = null;
  const ruler = lettering();
  const measured = { said: "", high: 0 };

  /** CSS px of the highest; lines break alike on all days, and to measure them takes long. */
  const highOf = (heads: readonly Note[], theme: Theme): number => {
    const said = JSON.stringify(heads.map(({ lines, wrap }) => [lines, wrap])).replaceAll(/\d+/gu, "0");
    if (said !== measured.said) {
      ruler.begin();
      Object.assign(measured, {
        said,
        high: Math.max(...heads.map((each) => ruler.measure(each, theme).height)),
      });
    }
    return measured.high;
  };

  return {
    view,
    draw({ frame, pane, circulation }, box, { floor }, theme) {
      const course = pane.exchange;
      if (!course) return;
      const { time, still } = frame;
      const { labels } = frame.state.view;
      const all = frame.panes.flatMap(({ exchange }) => exchange ?? []);
      const type = sizesIn(box, floor);
      const day = dayAt(course, time, still);
      // The cavity's scale is that of the curve beside it.
      const full = collectedRange(all).max;
      const drop = DROP * circulation.request.body.bsa;
      const reading = Math.floor(day * READINGS_PER_DAY);
      const read = figuresAt(course, reading / READINGS_PER_DAY);
      const about = { day, figures: read, drop, circulation, wide: isWide(box) };
      const headWith = (inset: boolean, state = stateOf(read)) =>
        headNote({ ...about, inset, state }, { ...box, width: headWidth(box) }, type, theme);
      const heads = STATES.map((state) => headWith(about.wide, state));
      const at = placesIn(box, type, highOf(heads, theme));
      const figures = figuresAt(course, day);
      const fit = picture.draw(
        { circulation, figures, drop, full, time, type: type.axis },
        at.picture,
        theme,
      );
      const small = isSmall(fit.scale, type.axis);
      const charted = charts.draw(
        { course, all, day, figures: labels && small ? read : null },
        at.charts,
        type.axis,
        theme,
      );
      const language = theme.say("further.axis.days");
      const now = JSON.stringify([reading, labels, box, floor, theme.name, language, full, charted]);
      if (now === said && known === course) return;
      said = now;
      known = course;
      // In a small picture plates would cover what they speak of.
      const plated = labels && !(small && charted);
      const notes = plated ? figureNotes(read, fit, { sizes: type, theme }, small) : [];
      const around = { ...at.picture, y: box.y, height: at.head + at.picture.height };
      const { inset } = fit;
      const bare = [
        ...(small ? [] : gaugeNumbers(fit, full, type.axis, theme)),
        ...(inset
          ? [insetNote({ ...fit, inset }, ductWords(read, circulation, theme), type.axis, theme)]
          : []),
      ];
      const kept = [
        ...[...(inset ? [inset] : []), ...fit.arrows].map((each) => placed(fit, each)),
        ...barBoxes(fit),
      ];
      writePlates(words, notes, headWith(inset !== null), { around, small, bare, kept }, theme);
    },
    release: () => picture.release(),
  };
}

/** Part of the box's width that the picture takes where the curves stand beside it. */
const PICTURE = 0.54;
const isWide = (box: Box): boolean => box.width > box.height * 0.95;
const headWidth = (box: Box): number => (isWide(box) ? PICTURE : 1) * box.width;

/** Picture under its head, and curves: side by side, or in a narrow box one above another. @param high CSS px of the head */
function placesIn(
  box: Box,
  type: Sizes,
  high: number,
): { readonly head: number; readonly picture: Box; readonly charts: Box } {
  const head = high + 0.5 * type.axis;
  if (isWide(box))
    return {
      head,
      picture: { ...box, y: box.y + head, width: box.width * PICTURE, height: box.height - head },
      charts: { ...box, x: box.x + box.width * 0.57, width: box.width * 0.43 },
    };
  // Where no curve could be read the picture takes their room.
  const height = box.height < 24 * type.axis ? box.height - head : box.height * 0.46;
  const used = head + height + type.axis;
  return {
    head,
    picture: { ...box, y: box.y + head, height },
    charts: { ...box, y: box.y + used, height: box.height - used },
  };
}

export const makeExchange: MakeScene = () =>
  paneScene(exchangePane, { shows: ({ exchange }) => Boolean(exchange) });
