/** The calf as a pump: muscle squeezes the leg vein, valves let blood go one way only. */
import { Container, Graphics } from "pixi.js";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { lettering } from "../drawing/lettering.ts";
import { type Row, strips } from "../drawing/strips.ts";
import { readingAt } from "../drawing/trace-clock.ts";
import { paneScene, type ScenePane, solvedIn } from "../pane-scene.ts";
import type { Box, MakeScene } from "../scene.ts";
import { sizes } from "../theme/type.ts";
import { legTraces } from "./blood-column.ts";
import { LEG, leg } from "./leg.ts";
import { writeNames } from "./leg-names.ts";
import { SKIN } from "./leg-parts.ts";
import { calfDoing, squeezes } from "./squeezes.ts";

/** Part of the leg's height by which the thigh reaches back from the middle of the leg's room. */
const THIGH = ((LEG.left + LEG.right) / 2 - entryAt(SKIN.left, 0)[0]) / (LEG.bottom - LEG.top);

const ROWS: readonly Row[] = [
  {
    title: "further.calf.muscle",
    trace: ({ pressures }) => pressures.calf,
    unit: "mmHg",
    colour: (palette) => palette.pressure,
    rank: 1,
  },
  {
    title: "further.calf.out",
    trace: (traces) => legTraces(traces)?.out,
    unit: "L/min",
    colour: (palette) => palette.origin[2],
    rank: 0,
  },
  {
    title: "further.calf.in",
    trace: (traces) => legTraces(traces)?.in,
    unit: "L/min",
    colour: (palette) => palette.origin[1],
    rank: 2,
  },
];

/** mmHg by which the muscle's pressure is read: a squeeze raises and drops it within a second. */
const STEP = 5;

function calfPane(): ScenePane {
  const view = new Container();
  const picture = leg();
  const rows = strips(ROWS, squeezes);
  const [words, lines] = [lettering(), new Graphics()];
  let said = "";
  let known: Circulation | null = null;
  view.addChild(picture.view, rows.view, lines, words.view);
  return {
    view,
    draw({ frame, pane, circulation }, box, { floor }, theme) {
      const { time, still } = frame;
      const { labels } = frame.state.view;
      const type = sizes(Math.min(box.height, box.width), floor);
      const wide = box.width > box.height;
      // What is going on is described beside the thigh, or above the leg where it would lie on it.
      const beside = 0.235 * box.width - THIGH * box.height;
      const rise = wide && box.width < type.label * 30 ? 4.8 : 3.4;
      const head = wide && beside > 13.5 * type.label ? 0 : type.label * rise;
      const place: Box = wide
        ? { ...box, y: box.y + head, width: box.width * 0.47, height: box.height - head }
        : { ...box, y: box.y + head, height: box.height * 0.5 - head };
      const charts: Box = wide
        ? { ...box, x: box.x + box.width * 0.5, width: box.width * 0.5 }
        : { ...box, y: box.y + box.height * 0.52, height: box.height * 0.48 };
      const { fit, open } = picture.draw(
        { circulation, valves: pane.legValves ?? null, time, still },
        place,
        theme,
      );
      rows.draw({ circulation, all: solvedIn(frame), time }, charts, type.axis, theme);
      const { traces } = circulation;
      const { calf } = traces.pressures;
      const pressure = calf ? readingAt(traces, calf, time, STEP) : 0;
      // Words are laid out again only when one of them changes.
      const next = JSON.stringify([
        pressure,
        calfDoing(traces, time),
        open.map((each) => each > 0.05),
        labels,
        box,
        floor,
        theme.name,
        theme.say("further.axis.seconds"),
      ]);
      if (next === said && known === circulation) return;
      said = next;
      known = circulation;
      words.begin();
      words.write(
        {
          lines: [
            {
              words: theme.say(`further.doing.${calfDoing(traces, time)}`),
              size: type.label,
              colour: theme.colour.ink,
              bold: true,
            },
            {
              words: theme.say("further.calf.pressure", {
                pressure: formatQuantity(pressure, "mmHg"),
              }),
              size: type.axis,
              colour: theme.colour.inkSoft,
            },
          ],
          x: box.x,
          y: box.y,
          wrap: place.width - type.label,
        },
        theme,
      );
      lines.clear();
      if (labels) writeNames({ ink: lines, words, type: type.axis }, open, fit, place, theme);
      words.end();
    },
    release: () => picture.release(),
  };
}

export const makeCalf: MakeScene = () => paneScene(calfPane);
