/** The calf as a pump: muscle squeezes the leg vein, valves let blood go one way only. */
import { Container, Graphics } from "pixi.js";
import type { LegValves } from "../../chain/leg-valves.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation, Traces } from "../../sim/circulation/answer.ts";
import { fillings } from "../breathing/chest.ts";
import { circuitLegend } from "../circuit/circuit-legend.ts";
import { lettering, type Note } from "../drawing/lettering.ts";
import type { Fit } from "../drawing/split.ts";
import { type Row, strips } from "../drawing/strips.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import { paneScene, type ScenePane, solvedIn } from "../pane-scene.ts";
import type { Box, MakeScene } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { type Sizes, sizes } from "../theme/type.ts";
import { legTraces } from "./blood-column.ts";
import { leg } from "./leg.ts";
import { writeNames } from "./leg-names.ts";
import { SKIN } from "./leg-parts.ts";
import { LEG } from "./leg-tissues.ts";
import { type LensPlace, lensPlaces } from "./lens-places.ts";
import { beats, calfSaying, squeezes, stillAt } from "./squeezes.ts";
import { seenBy, valveLens } from "./valve-lens.ts";
import { placeInLeg, VALVES, type ValveStands, WIDER } from "./vein.ts";

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

/** What the leg does, how hard its muscle presses, and what that drives out of it. @param flow L/min */
const said = (
  traces: Traces,
  seconds: number,
  { mmHg, flow }: Readonly<Record<"mmHg" | "flow", number>>,
  { say }: Theme,
) =>
  [
    say(calfSaying(traces, seconds)),
    say("further.calf.pressure", { pressure: formatQuantity(mmHg, "mmHg") }),
    say("further.calf.leaves", { flow: formatQuantity(flow, "L/min", 1) }),
    say("further.calf.wider", { times: WIDER }),
  ] as const;

/** The leg with its lenses, and the curves at their right or under them. */
function placesIn(
  box: Box,
  type: Sizes,
): { readonly place: Box; readonly room: Box; readonly charts: Box; readonly wide: boolean } {
  const wide = box.width > box.height;
  // What is going on is described beside the thigh, or above the leg where it would lie on it.
  const free = 0.235 * box.width - THIGH * box.height;
  const rise = wide && box.width < type.label * 30 ? 7 : 5.6;
  const head = wide && free > 13.5 * type.label ? 0 : type.label * rise;
  const below = { ...box, y: box.y + head, height: (wide ? 1 : 0.5) * box.height - head };
  const half = { ...below, width: (wide ? 0.55 : 1) * box.width };
  return {
    wide,
    room: half,
    place: { ...below, width: box.width * (wide ? 0.4 : 0.56) },
    charts: wide
      ? { ...box, x: box.x + box.width * 0.57, width: box.width * 0.43 }
      : { ...box, y: box.y + box.height * 0.52, height: box.height * 0.48 },
  };
}

/** CSS px of the line around what a lens shows. */
const RING = { least: 1.5, most: 3, plane: 5 } as const;

/** In the leg, the valve that stands under a lens, and lines from there to the lens. @param valve by VALVES */
function markSeen(
  ink: Graphics,
  valve: number,
  lens: LensPlace,
  { x, y, scale }: Fit,
  { colour }: Theme,
): void {
  const { at, reach } = seenBy(valve);
  const [planeX, planeY] = placeInLeg(at, 0).spot;
  const [ringX, ringY, radius] = [x + scale * planeX, y + scale * planeY, scale * reach];
  const width = Math.min(RING.most, Math.max(RING.least, RING.plane * scale));
  const turn = Math.atan2(lens.y - ringY, lens.x - ringX);
  const spread = Math.acos((radius - lens.radius) / Math.hypot(lens.x - ringX, lens.y - ringY));
  for (const side of [turn - spread, turn + spread]) {
    const [across, down] = [Math.cos(side), Math.sin(side)];
    ink
      .moveTo(ringX + radius * across, ringY + radius * down)
      .lineTo(lens.x + lens.radius * across, lens.y + lens.radius * down)
      .stroke({ color: colour.accent, width: 0.5 * width, alpha: 0.7 });
  }
  ink.circle(ringX, ringY, radius).stroke({ color: colour.accent, width });
}

/** What a lens shows, in words. @param valve by VALVES */
function lensNote(
  valve: number,
  stands: ValveStands,
  { x, words }: LensPlace,
  type: Sizes,
  theme: Theme,
): Note {
  const name = `further.calf.${entryAt(VALVES, valve).flow}`;
  const why = words.height > 3 * type.axis ? [theme.say(`${name}.${stands}Why`)] : [];
  const note = noteOf([theme.say(`${name}.${stands}`), ...why], words, type, theme);
  return { ...note, x, anchor: [0.5, 0] };
}

function calfPane(): ScenePane {
  const view = new Container();
  const picture = leg();
  const lenses = [0, 1].map((valve) => valveLens(picture.under, valve));
  const rows = strips(ROWS, squeezes, { foot: "further.calf.seconds", band: "further.calf.squeezes" });
  const [words, names, lines] = [lettering(), new Graphics(), new Graphics()];
  let written = "";
  let known: Circulation | null = null;
  view.addChild(picture.view, lines, ...lenses.map((each) => each.view), rows.view, names, words.view);
  return {
    view,
    draw({ frame, pane, circulation }, box, { floor }, theme) {
      const { still } = frame;
      const { labels } = frame.state.view;
      const { traces } = circulation;
      const time = still && frame.time === 0 ? stillAt(traces) : frame.time;
      const now = (values: Float64Array | undefined) => (values ? valueAt(traces, values, time) : 0);
      const valves = pane.legValves ? momentOf(traces, pane.legValves, time) : null;
      const type = sizes(Math.min(box.height, box.width), floor);
      const { place, room, charts } = placesIn(box, type);
      const { fit, open, stands, column } = picture.draw({ circulation, valves, time, still }, place, theme);
      const places = lensPlaces(fit, room, labels, type);
      for (const [valve, lens] of lenses.entries()) {
        lens.lay(places[valve] ?? null);
        lens.draw(column, { circulation, valves, time, still }, { open, stands }, theme);
      }
      rows.draw({ circulation, all: solvedIn(frame), time }, charts, type.axis, theme);
      const mmHg = Math.round(now(traces.pressures.calf)) + 0;
      const saying = said(traces, time, { mmHg, flow: now(legTraces(traces)?.out) }, theme);
      // Words are laid out again only when one of them changes.
      const next = JSON.stringify([saying, stands, labels, box, floor, theme.name, fit]);
      if (next === written && known === circulation) return;
      written = next;
      known = circulation;
      words.begin();
      for (const each of [lines, names]) each.clear();
      words.write(noteOf(saying, { ...room, y: box.y }, type, theme), theme);
      for (const [valve, lens] of places.entries()) {
        words.write(lensNote(valve, entryAt(stands, valve), lens, type, theme), theme);
        markSeen(lines, valve, lens, fit, theme);
      }
      const [first] = places;
      const within = first ? { ...room, width: first.words.x - room.x - type.axis } : room;
      if (labels) writeNames({ ink: names, words, type: type.axis }, first ? [] : stands, fit, within, theme);
      words.end();
    },
    release() {
      for (const each of [picture, ...lenses]) each.release();
    },
  };
}

/** How the valves stand at a moment. */
const momentOf = (traces: Traces, { below, cycle }: LegValves, seconds: number) => ({
  below,
  out: valueAt(traces, cycle.out, seconds),
  in: valueAt(traces, cycle.in, seconds),
});

export const makeCalf: MakeScene = () => paneScene(calfPane, { legend: circuitLegend({ veins: true }) });
