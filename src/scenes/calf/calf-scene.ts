/** The calf as a pump: muscle squeezes the leg vein, valves let blood go one way only. */
import { Container, Graphics } from "pixi.js";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { lettering, type Note } from "../drawing/lettering.ts";
import { type Row, strips } from "../drawing/strips.ts";
import { readingAt } from "../drawing/trace-clock.ts";
import { paneScene, type ScenePane, solvedIn } from "../pane-scene.ts";
import type { Box, MakeScene } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { type Sizes, sizes } from "../theme/type.ts";
import { legTraces } from "./blood-column.ts";
import { leg } from "./leg.ts";
import { writeNames } from "./leg-names.ts";
import { SKIN } from "./leg-parts.ts";
import { LEG } from "./leg-tissues.ts";
import { oppositeLeg, roomBeside } from "./opposite-leg.ts";
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

/** What the muscle does, and how hard. @param room CSS px that it keeps to */
const noteOf = (doing: string, mmHg: number, room: Box, type: Sizes, theme: Theme): Note => ({
  lines: [
    { words: theme.say(doing), size: type.label, colour: theme.colour.ink, bold: true },
    {
      words: theme.say("further.calf.pressure", { pressure: formatQuantity(mmHg, "mmHg") }),
      size: type.axis,
      colour: theme.colour.inkSoft,
    },
  ],
  x: room.x,
  y: room.y,
  wrap: room.width - type.label,
});

/** The living leg, and the curves at its right or under it. */
function placesIn(
  box: Box,
  type: Sizes,
): { readonly place: Box; readonly charts: Box; readonly wide: boolean } {
  const wide = box.width > box.height;
  // What is going on is described beside the thigh, or above the leg where it would lie on it.
  const free = 0.235 * box.width - THIGH * box.height;
  const rise = wide && box.width < type.label * 30 ? 4.8 : 3.4;
  const head = wide && free > 13.5 * type.label ? 0 : type.label * rise;
  const below = { ...box, y: box.y + head };
  return {
    wide,
    place: wide
      ? { ...below, width: box.width * 0.47, height: box.height - head }
      : { ...below, height: box.height * 0.5 - head },
    charts: wide
      ? { ...box, x: box.x + box.width * 0.56, width: box.width * 0.44 }
      : { ...box, y: box.y + box.height * 0.52, height: box.height * 0.48 },
  };
}

function calfPane(): ScenePane {
  const view = new Container();
  const [picture, other] = [leg(), oppositeLeg()];
  const rows = strips(ROWS, squeezes, { foot: "further.calf.seconds", band: "further.calf.squeezes" });
  const [words, lines] = [lettering(), new Graphics()];
  let said = "";
  let known: Circulation | null = null;
  view.addChild(picture.view, other.view, rows.view, lines, words.view);
  return {
    view,
    draw({ frame, pane, circulation }, box, { floor }, theme) {
      const { time, still } = frame;
      const { labels } = frame.state.view;
      const { traces } = circulation;
      const { calf } = traces.pressures;
      const pressure = calf ? readingAt(traces, calf, time) : 0;
      const valves = pane.legValves ?? null;
      const type = sizes(Math.min(box.height, box.width), floor);
      const { place, charts, wide } = placesIn(box, type);
      const { fit, open } = picture.draw({ circulation, valves, time, still }, place, theme);
      const beside = wide && calf?.some((each) => each > 0) ? roomBeside(fit, charts.x, labels, type) : null;
      const opposite = other.draw({ circulation, valves, time }, beside?.leg ?? null, theme);
      const against = calf && opposite ? readingAt(traces, calf, opposite.time) : 0;
      rows.draw({ circulation, all: solvedIn(frame), time }, charts, type.axis, theme);
      // Words are laid out again only when one of them changes.
      const next = JSON.stringify([
        pressure,
        calfDoing(traces, time),
        open.map((each) => each > 0.05),
        labels,
        box,
        floor,
        theme.name,
        theme.say("further.calf.seconds"),
        beside,
        opposite?.state,
        against,
      ]);
      if (next === said && known === circulation) return;
      said = next;
      known = circulation;
      words.begin();
      words.write(
        noteOf(`further.doing.${calfDoing(traces, time)}`, pressure, { ...place, y: box.y }, type, theme),
        theme,
      );
      if (beside && opposite)
        words.write(noteOf(`further.calf.${opposite.state}`, against, beside.words, type, theme), theme);
      lines.clear();
      const within = beside ? { ...place, width: beside.words.x - place.x - type.axis } : place;
      if (labels) writeNames({ ink: lines, words, type: type.axis }, open, fit, within, theme);
      words.end();
    },
    release() {
      picture.release();
      other.release();
    },
  };
}

export const makeCalf: MakeScene = () => paneScene(calfPane);
