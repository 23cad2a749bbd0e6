/** The calf as a pump: muscle squeezes the leg vein, valves let blood go one way only. */
import { Container, Graphics } from "pixi.js";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation, Traces } from "../../sim/circulation/answer.ts";
import { fillings } from "../breathing/chest.ts";
import { circuitLegend } from "../circuit/circuit-legend.ts";
import { lettering, type Note } from "../drawing/lettering.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
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
import { lensBehind, oppositeLeg, roomBeside } from "./opposite-leg.ts";
import { beats, calfSaying, squeezes } from "./squeezes.ts";
import { LENS_AT, valveLens } from "./valve-lens.ts";
import { hardestOf, placeInLeg, WIDER } from "./vein.ts";

/** Part of the leg's height by which the thigh reaches back from the middle of the leg's room. */
const THIGH = ((LEG.left + LEG.right) / 2 - entryAt(SKIN.left, 0)[0]) / (LEG.bottom - LEG.top);

/** mL */
const LITRE = 1000;

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
    // Why one squeeze drives out more than the next.
    during: { name: "further.doing.in", spans: fillings },
  },
  {
    title: "further.calf.in",
    trace: ({ flows }) => flows.workingMuscle?.map((flow) => LITRE * flow),
    unit: "mL/min",
    colour: (palette) => palette.origin[1],
    rank: 2,
    during: { name: "further.calf.beats", spans: beats },
  },
];

/** A title and what is said under it. @param room CSS px that it keeps to */
const noteOf = (
  [title, ...more]: readonly [title: string, ...more: string[]],
  room: Box,
  type: Sizes,
  theme: Theme,
): Note => ({
  lines: [
    { words: title, size: type.label, colour: theme.colour.ink, bold: true },
    ...more.map((words) => ({ words, size: type.axis, colour: theme.colour.inkSoft })),
  ],
  x: room.x,
  y: room.y,
  wrap: room.width - type.label,
});

/** What a leg does, and how hard its muscle presses. */
const said = (traces: Traces, seconds: number, mmHg: number, theme: Theme) =>
  [
    theme.say(calfSaying(traces, seconds)),
    theme.say("further.calf.pressure", { pressure: formatQuantity(mmHg, "mmHg") }),
  ] as const;

/** The living leg, and the curves at its right or under it. */
function placesIn(
  box: Box,
  type: Sizes,
): { readonly place: Box; readonly charts: Box; readonly wide: boolean } {
  const wide = box.width > box.height;
  // What is going on is described beside the thigh, or above the leg where it would lie on it.
  const free = 0.235 * box.width - THIGH * box.height;
  const rise = wide && box.width < type.label * 30 ? 6 : 4.6;
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

/** Plane units around the valve that the lens shows. */
const RING = 40;
/** of the line around it */
const RINGED = 5;

/** In the leg, the valve that stands under the lens. */
function markSeen(ink: Graphics, { x, y, scale }: Fit, { colour }: Theme): void {
  const [atX, atY] = placeInLeg(LENS_AT, 0).spot;
  ink
    .circle(x + scale * atX, y + scale * atY, RING * scale)
    .stroke({ color: colour.accent, width: Math.min(3, Math.max(1.5, RINGED * scale)) });
}

function calfPane(): ScenePane {
  const view = new Container();
  const [picture, other] = [leg(), oppositeLeg()];
  const glass = valveLens(picture.under);
  const rows = strips(ROWS, squeezes, { foot: "further.calf.seconds", band: "further.calf.squeezes" });
  const [words, lines] = [lettering(), new Graphics()];
  let written = "";
  let known: Circulation | null = null;
  view.addChild(picture.view, other.view, glass.view, rows.view, lines, words.view);
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
      const right = wide ? charts.x : box.x + box.width;
      const whole = fitInto(place, LEG);
      const pumps = hardestOf(traces) > 0;
      const beside = pumps ? roomBeside(whole, right, labels, type) : null;
      const lens = beside?.lens ?? (pumps && !wide ? lensBehind(whole, box.x, type) : null);
      const state = { circulation, valves, time, still };
      const { fit, open, stands, column } = picture.draw(state, place, theme);
      glass.lay(lens);
      glass.draw(column, state, { open, stands }, theme);
      const opposite = other.draw(state, beside?.leg ?? null, theme);
      const against = calf && opposite !== null ? readingAt(traces, calf, opposite) : 0;
      rows.draw({ circulation, all: solvedIn(frame), time }, charts, type.axis, theme);
      const saying = said(traces, time, pressure, theme);
      // Words are laid out again only when one of them changes.
      const next = JSON.stringify([
        saying,
        stands,
        labels,
        box,
        floor,
        theme.name,
        beside,
        opposite,
        against,
      ]);
      if (next === written && known === circulation) return;
      written = next;
      known = circulation;
      words.begin();
      lines.clear();
      const wider = theme.say("further.calf.wider", { times: WIDER });
      words.write(noteOf([...saying, wider], { ...place, y: box.y }, type, theme), theme);
      if (beside && opposite !== null)
        words.write(noteOf(said(traces, opposite, against, theme), beside.words, type, theme), theme);
      if (lens) {
        const is = entryAt(stands, 0);
        const why = lens.words.height > 3 * type.axis ? [theme.say(`further.calf.${is}Why`)] : [];
        const note = noteOf([theme.say(`further.calf.${is}`), ...why], lens.words, type, theme);
        words.write({ ...note, x: lens.x, anchor: [0.5, 0] }, theme);
        markSeen(lines, fit, theme);
      }
      const within = beside ? { ...place, width: beside.words.x - place.x - type.axis } : place;
      if (labels) writeNames({ ink: lines, words, type: type.axis }, stands, fit, within, theme);
      words.end();
    },
    release() {
      picture.release();
      glass.release();
      other.release();
    },
  };
}

export const makeCalf: MakeScene = () => paneScene(calfPane, { legend: circuitLegend({ veins: true }) });
