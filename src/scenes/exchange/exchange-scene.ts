/** Fluid that leaves the capillaries, lymph that carries it back, and what runs over in the days after the operation. */
import { Container, Graphics } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import { lettering } from "../drawing/lettering.ts";
import { columnOf, drawPlot, fitting, type Plotted } from "../drawing/plot.ts";
import { rangeOf } from "../drawing/scale.ts";
import { splitBox, withAir } from "../drawing/split.ts";
import { keepOff } from "../layers/keep-off.ts";
import { settle } from "../layers/spread-labels.ts";
import { type Box, type MakeScene, WITH_ALL } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { sizes } from "../theme/type.ts";
import { dayAt, figuresAt } from "./day.ts";
import { CURVES, figureLines, headNote, nameCurves } from "./notes.ts";
import { tissuePicture } from "./tissue-drawing.ts";

/** Figures on the picture: where they stand (plane), and the unit. */
const NUMBERS = [
  { key: "filtration", at: [560, 188], unit: "mL/h" },
  { key: "lymph", at: [96, 520], unit: "mL/h" },
  { key: "overflow", at: [540, 596], unit: "mL/h" },
  { key: "collected", at: [560, 690], unit: "mL" },
  { key: "drained", at: [790, 690], unit: "mL/h" },
] as const;

/** mL that fill the hollow at least, so that a few drops do not look like a flood */
const MIN_HOLLOW = 50;
/** mL/h that one drop stands for, for a body of 1 m2. */
const DROP = 14;

interface ExchangePane {
  readonly view: Container;
  draw(
    pane: Pane,
    all: readonly Pane[],
    time: number,
    still: boolean,
    labels: boolean,
    box: Box,
    floor: number,
    theme: Theme,
  ): void;
  release(): void;
}

function exchangePane(): ExchangePane {
  const view = new Container();
  const picture = tissuePicture();
  const [ink, marker] = [new Graphics(), new Graphics()];
  const [fixed, running] = [lettering(), lettering()];
  view.addChild(picture.view, ink, fixed.view, marker, running.view);
  let drawn: unknown = null;
  let signature = "";
  let said = "";
  let lastExchange: unknown = null;
  let plots: readonly Plotted[] = [];

  return {
    view,
    draw(pane, all, time, still, labels, box, floor, theme) {
      const { circulation, exchange } = pane;
      if (!circulation || !exchange) return;
      const type = sizes(Math.min(box.height, box.width), floor);
      const wide = box.width > box.height * 1.15;
      const head = type.label * 3;
      const place: Box = wide
        ? { ...box, y: box.y + head, width: box.width * 0.54, height: box.height - head }
        : // Where no curve could be read the picture takes their room.
          {
            ...box,
            y: box.y + head,
            height: box.height < 24 * type.axis ? box.height - head : box.height * 0.46,
          };
      const charts: Box = wide
        ? { ...box, x: box.x + box.width * 0.57, width: box.width * 0.43 }
        : {
            ...box,
            y: place.y + place.height + type.axis,
            height: box.height - head - place.height - type.axis,
          };
      const day = dayAt(exchange, time, still);
      const figures = figuresAt(exchange, day);
      const full = Math.max(MIN_HOLLOW, ...all.flatMap((each) => each.exchange?.collected ?? [])) * 1.05;
      const fit = picture.draw(
        circulation,
        figures,
        DROP * circulation.request.body.bsa,
        full,
        time,
        still,
        place,
        theme,
      );

      const next = JSON.stringify([box, floor, theme.name, theme.say("further.axis.days"), full]);
      if (drawn !== exchange || signature !== next) {
        drawn = exchange;
        signature = next;
        ink.clear();
        fixed.begin();
        const x = rangeOf(exchange.days, { count: 6 });
        const last = exchange.days[exchange.days.length - 1]!;
        const days = { ...x, max: last, marks: x.marks.filter((mark) => mark <= last) };
        const flows = all.flatMap((each) => CURVES.flatMap(({ key }) => each.exchange?.[key].slice(2) ?? []));
        const named = nameCurves(ink, fixed, charts, type.axis, theme);
        const below: Box = { ...charts, y: charts.y + named, height: charts.height - named };
        const wanted = [
          {
            y: rangeOf(flows, { zero: true, count: 4 }),
            lines: CURVES.map((each) => ({
              x: exchange.days.slice(2),
              y: exchange[each.key].slice(2),
              colour: each.colour(theme),
              ...(each.dash.length > 0 ? { dash: each.dash.map((part) => part * type.axis) } : {}),
            })),
            title: theme.say("further.exchange.flows"),
          },
          {
            y: rangeOf([full], { zero: true, count: 3, least: 10 }),
            lines: [{ x: exchange.days, y: exchange.collected, colour: theme.colour.ink }],
            title: theme.say("further.exchange.collectedTitle"),
          },
        ];
        const shown = fitting(wanted, below.height, type.axis);
        const boxes = columnOf(below, shown.length, type.axis);
        const foot = theme.say("further.axis.days");
        // Names of lines that are not there would only be in the way.
        if (shown.length === 0) {
          ink.clear();
          fixed.begin();
        }
        plots = shown.map((plot, i) => {
          const last = i === shown.length - 1 ? { foot } : {};
          return drawPlot(ink, fixed, { ...plot, ...last, box: boxes[i]!, x: days, type: type.axis }, theme);
        });
        fixed.end();
      }
      marker.clear();
      for (const { inner, toX } of plots)
        marker
          .moveTo(toX(day), inner.y)
          .lineTo(toX(day), inner.y + inner.height)
          .stroke({ color: theme.colour.accent, width: Math.max(2, type.axis * 0.12) });

      // Words are laid out again only when one of them changes: four times a day of the course.
      const now = JSON.stringify([Math.floor(day * 4), labels, next]);
      if (now === said && lastExchange === exchange) return;
      said = now;
      lastExchange = exchange;
      const headed = headNote(day, DROP * circulation.request.body.bsa, box, type, theme);
      // The figure of the whole quarter day stands still long enough to be read.
      const steady = figuresAt(exchange, Math.floor(day * 4) / 4);
      const notes = (labels ? NUMBERS : []).map(({ key, at, unit }) => ({
        lines: figureLines(key, steady[key], unit, type, theme),
        x: fit.x + at[0] * fit.scale,
        y: fit.y + at[1] * fit.scale,
        anchor: [0, 0.5] as const,
      }));
      running.begin();
      const blocks = notes.map((note) => {
        const { x, y, width, height } = running.write(note, theme);
        return { x: x + width / 2, y: y + height / 2, width, height };
      });
      running.begin();
      const taken = running.write(headed, theme);
      const plates = blocks.map((block, i) => ({
        ...block,
        note: notes[i]!,
        at: [block.x, block.y] as const,
      }));
      const around = { ...place, y: box.y, height: head + place.height };
      // Where the picture is small a plate that has no room of its own is left out.
      const placed =
        place.height < 14 * type.label
          ? keepOff(plates, around, [taken], () => false)
          : settle(plates, around, [taken]);
      for (const { note, x, y } of placed) running.write({ ...note, x, y, anchor: [0.5, 0.5] }, theme);
      running.end();
    },
    release: () => picture.release(),
  };
}

export const makeExchange: MakeScene = () => {
  const view = new Container();
  const panes: ExchangePane[] = [];
  return {
    view,
    draw(frame, { clear, floor }, theme) {
      while (panes.length < frame.panes.length) {
        const next = exchangePane();
        panes.push(next);
        view.addChild(next.view);
      }
      const boxes = splitBox(withAir(clear), frame.panes.length, 32);
      panes.forEach((each, i) => {
        const pane = frame.panes[i];
        each.view.visible = Boolean(pane?.circulation && pane.exchange);
        if (pane && each.view.visible)
          each.draw(
            pane,
            frame.panes,
            frame.time,
            frame.still,
            frame.state.view.labels,
            boxes[i]!,
            floor,
            theme,
          );
      });
    },
    release() {
      // What is drawn goes before the textures that it is drawn with.
      view.destroy(WITH_ALL);
      for (const each of panes) each.release();
    },
  };
};
