/** The calf as a pump: muscle squeezes the leg vein, valves let blood go one way only. */
import { Container, Graphics } from "pixi.js";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation, Traces } from "../../sim/circulation/answer/answer.ts";
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
import { isRoomy, writeNames } from "./leg-names.ts";
import { SKIN } from "./leg-parts.ts";
import { LEG } from "./leg-tissues.ts";
import { type LensPlace, lensPlaces, saysWhy } from "./lens-places.ts";
import { beats, calfSaying, squeezes } from "./squeezes.ts";
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

interface Places {
  /** the leg's, that of the lenses beside it and of the words over them, and the curves' at their right or under them */
  readonly leg: Box;
  readonly lenses: Box;
  readonly words: Box;
  readonly charts: Box;
}

/** In sizes of type: heights of the words over the leg in a wide box, in one that is hardly so, and beside it in an upright one. */
const HEADS = { wide: 5.6, narrow: 7, upright: 6.6 } as const;

function placesIn(box: Box, type: Sizes): Places {
  const { x, y, width, height } = box;
  const roomy = width > 30 * type.label;
  if (width <= height) {
    const charts = { ...box, y: y + 0.57 * height, height: 0.43 * height };
    const upper = { ...box, height: 0.54 * height };
    const head = type.label * (roomy ? HEADS.wide : HEADS.upright);
    const below = { ...upper, y: y + head, height: upper.height - head };
    if (roomy) {
      const behind = 0.14 * width;
      return { leg: { ...below, x: x + behind, width: 0.4 * width }, lenses: below, words: box, charts };
    }
    const words = { ...upper, x: x + 0.3 * width, width: 0.7 * width };
    return { leg: { ...upper, width: 0.4 * width }, lenses: below, words, charts };
  }
  // What is going on is described beside the thigh, or above the leg where it would lie on it.
  const free = 0.2 * width - THIGH * height;
  const head = free > 13.5 * type.label ? 0 : type.label * (roomy ? HEADS.wide : HEADS.narrow);
  const below = { ...box, y: y + head, height: height - head };
  return {
    leg: { ...below, width: 0.4 * width },
    lenses: { ...below, width: 0.55 * width },
    words: { ...box, width: 0.55 * width },
    charts: { ...box, x: x + 0.57 * width, width: 0.43 * width },
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
function lensNote(valve: number, stands: ValveStands, lens: LensPlace, type: Sizes, theme: Theme): Note {
  const name = `further.calf.${entryAt(VALVES, valve).flow}`;
  const why = saysWhy(lens, type) ? [theme.say(`${name}.${stands}Why`)] : [];
  const note = noteOf([theme.say(`${name}.${stands}`), ...why], lens.words, type, theme);
  return { ...note, x: lens.x, anchor: [0.5, 0] };
}

function calfPane(): ScenePane {
  const view = new Container();
  const picture = leg();
  const lenses = [0, 1].map((valve) => valveLens(picture.under, valve));
  const rows = strips(ROWS, squeezes, { foot: "further.calf.seconds", band: () => "further.calf.squeezes" });
  const [words, names, lines] = [lettering(), new Graphics(), new Graphics()];
  let written = "";
  let known: Circulation | null = null;
  view.addChild(picture.view, lines, ...lenses.map((each) => each.view), rows.view, names, words.view);
  return {
    view,
    draw({ frame, pane, circulation }, box, { floor }, theme) {
      const { still, time } = frame;
      const { labels } = frame.state.view;
      const { traces } = circulation;
      const now = (values: Float64Array | undefined) => (values ? valueAt(traces, values, time) : 0);
      const valves = pane.legValves ?? null;
      const type = sizes(Math.min(box.height, box.width), floor);
      const at = placesIn(box, type);
      const { fit, open, stands, column } = picture.draw({ circulation, valves, time, still }, at.leg, theme);
      const places = lensPlaces(fit, at.lenses, labels && isRoomy(fit), type);
      for (const [valve, lens] of lenses.entries()) {
        lens.lay(places[valve] ?? null);
        lens.draw(column, { circulation, valves, time, still }, { open, stands }, theme);
      }
      rows.draw({ circulation, all: solvedIn(frame), time }, at.charts, type.axis, theme);
      const mmHg = Math.round(now(traces.pressures.calf)) + 0;
      const saying = said(traces, time, { mmHg, flow: now(legTraces(traces)?.out) }, theme);
      // Words are laid out again only when one of them changes.
      const next = JSON.stringify([saying, stands, labels, box, floor, theme.name, fit]);
      if (next === written && known === circulation) return;
      written = next;
      known = circulation;
      words.begin();
      for (const each of [lines, names]) each.clear();
      words.write(noteOf(saying, at.words, type, theme), theme);
      for (const [valve, lens] of places.entries()) {
        words.write(lensNote(valve, entryAt(stands, valve), lens, type, theme), theme);
        markSeen(lines, valve, lens, fit, theme);
      }
      const [first] = places;
      const within = first ? { ...at.lenses, width: first.words.x - at.lenses.x - type.axis } : at.lenses;
      if (labels && (!first || isRoomy(fit)))
        writeNames({ ink: names, words, type: type.axis }, first ? [] : stands, fit, within, theme);
      words.end();
    },
    release() {
      for (const each of [picture, ...lenses]) each.release();
    },
  };
}

export const makeCalf: MakeScene = () => paneScene(calfPane, { legend: circuitLegend({ veins: true }) });
