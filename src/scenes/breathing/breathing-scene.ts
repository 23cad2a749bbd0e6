/** The breath as a pump: the chest that fills and empties, and what it does to the flow of the great veins and the lungs. */
import { Container, Graphics } from "pixi.js";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { wordSetting } from "../../sim/parameters/parameters.ts";
import { saturationOf } from "../circuit/circuit-blood.ts";
import { circuitLegend } from "../circuit/circuit-legend.ts";
import { onVessel } from "../circuit/on-vessel.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { type Lain, type Lettering, type Line, lettering } from "../drawing/lettering.ts";
import { fitInto } from "../drawing/split.ts";
import { type Row, type Strips, strips } from "../drawing/strips.ts";
import { readingAt } from "../drawing/trace-clock.ts";
import { paneScene, type ScenePane, solvedIn } from "../pane-scene.ts";
import type { Box, MakeScene } from "../scene.ts";
import { bloodColour } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { sizes } from "../theme/type.ts";
import { endsOf } from "./breath-end.ts";
import { doingAt, fillings } from "./chest.ts";
import { type Shown, type Thorax, thorax } from "./thorax.ts";
import { CHEST } from "./torso.ts";

const ROWS: readonly Row[] = [
  {
    title: "further.breathing.pleural",
    trace: ({ pressures }) => pressures.pleural,
    unit: "mmHg",
    colour: (palette) => palette.pressure,
    rank: 2,
  },
  {
    title: "further.breathing.ivc",
    trace: ({ flows }) => flows.ivc,
    unit: "L/min",
    colour: (palette) => palette.origin[2],
    rank: 0,
  },
  {
    title: "further.breathing.svc",
    trace: ({ flows }) => flows.svc,
    unit: "L/min",
    colour: (palette) => palette.origin[0],
    rank: 3,
  },
  {
    title: "further.breathing.lungs",
    trace: ({ flows }) => flows.pulmonary,
    unit: "L/min",
    // Blood on its way to the lungs.
    colour: (palette, circulation) => bloodColour(palette, saturationOf(circulation, "pulmonaryArtery")),
    rank: 1,
  },
];

/** Names on the picture, on the circuit's plane, the side of the spot on which they stand, and what a line leads to where they stand apart from it. */
const NAMES: readonly {
  readonly name: string;
  readonly at: Spot;
  readonly side: number;
  readonly to?: Spot;
}[] = [
  { name: "further.place.svc", at: [400, 96], side: 1, to: [468, 186] },
  { name: "further.place.ivc", at: [444, 700], side: 1 },
  { name: "further.place.aorta", at: [556, 700], side: 0 },
  { name: "further.place.liver", at: [340, 634], side: 0.5 },
  { name: "further.place.diaphragm", at: [634, 596], side: 0.5 },
  { name: "further.place.lung", at: [770, 516], side: 1 },
];

/** CSS px from a line to its name, and plane units: beyond the flank. */
const BESIDE = 4;
const FLANK = 846;

const nameOf = (end: "out" | "in", size: number, { say, colour }: Theme): readonly Line[] => [
  { words: say(`further.breathing.${end}`), size, colour: colour.pressure },
];

/** Where the chest lies, so that both ends of the breath can be named beside it. */
function besideNames(words: Lettering, picture: Box, size: number, theme: Theme): Box {
  const [out, into] = (["out", "in"] as const).map(
    (end) => words.measure({ lines: nameOf(end, size, theme) }, theme).width,
  ) as [number, number];
  const right = picture.x + picture.width - Math.max(out, into) - 2 * BESIDE;
  const fit = fitInto(picture, CHEST);
  if (fit.x + FLANK * fit.scale <= right) return picture;
  const scale = Math.min(fit.scale, (right - picture.x) / (FLANK - CHEST.left));
  return { ...picture, width: (CHEST.right - CHEST.left) * scale };
}

/** What is written and drawn over the picture. */
interface Marks {
  readonly words: Lettering;
  readonly lines: Graphics;
}

/** Both ends of the breath, by name: beside the trunk, each with a line to its end, where there is room for that; else above and below the lines. */
function writeEnds(
  { words, lines }: Marks,
  { fit, ends }: Shown,
  { size, right }: { readonly size: number; readonly right: number },
  theme: Theme,
): readonly Lain[] {
  const { colour } = theme;
  lines.clear();
  if (!ends) return [];
  const both = (["out", "in"] as const).map((end) => {
    const name = nameOf(end, size, theme);
    return { name, at: ends[end], room: words.measure({ lines: name }, theme) };
  });
  const outside = fit.x + FLANK * fit.scale;
  const isBeside = both.every(({ room }) => outside + room.width < right);
  return both.map(({ name, at, room }, i) => {
    const other = entryAt(both, 1 - i);
    const way = at[1] < other.at[1] ? -1 : 1;
    const [x, y] = [fit.x + at[0] * fit.scale, fit.y + at[1] * fit.scale];
    if (!isBeside) {
      const lies = Math.min(fit.x + ends.out[0] * fit.scale, right - room.width);
      return words.write({ lines: name, x: lies, y: y + way * BESIDE, anchor: [0, way < 0 ? 1 : 0] }, theme);
    }
    const apart = Math.max(0, room.height + BESIDE - Math.abs(other.at[1] - at[1]) * fit.scale) / 2;
    const level = y + way * apart;
    lines.moveTo(x, y).lineTo(outside, level).stroke({ color: colour.pressure, width: 1.2 });
    lines.circle(x, y, 2.5).fill({ color: colour.pressure });
    return words.write({ lines: name, x: outside, y: level, anchor: [0, 0.5] }, theme);
  });
}

/** Each beside its spot, no further left than `left` (CSS px); rather none than one over blood or over another. */
function writeNames(
  { words, lines: leaders }: Marks,
  { fit, vessels }: Shown,
  taken: readonly Lain[],
  { size, left }: { readonly size: number; readonly left: number },
  theme: Theme,
): void {
  const lain = [...taken];
  const apart = (a: Lain) => (b: Lain) =>
    a.x >= b.x + b.width || b.x >= a.x + a.width || a.y >= b.y + b.height || b.y >= a.y + a.height;
  for (const { name, at, side, to } of NAMES) {
    const lines = [{ words: theme.say(name), size, colour: theme.colour.ink }];
    const box = words.measure({ lines }, theme);
    const x = Math.max(left, fit.x + at[0] * fit.scale - side * box.width);
    const y = fit.y + at[1] * fit.scale - box.height / 2;
    const plate = { x, y, width: box.width, height: box.height };
    if (onVessel(vessels, fit, plate) || !lain.every(apart(plate))) continue;
    lain.push(words.write({ lines, x, y }, theme));
    if (!to) continue;
    const [endX, endY] = [fit.x + to[0] * fit.scale, fit.y + to[1] * fit.scale];
    leaders
      .moveTo(x + box.width, y + box.height / 2)
      .lineTo(endX, endY)
      .stroke({ color: theme.colour.ink, width: 1.2 });
    leaders.circle(endX, endY, 2.5).fill(theme.colour.ink);
  }
}

function breath(): ScenePane {
  const view = new Container();
  const chest: Thorax = thorax();
  const rows: Strips = strips(ROWS, fillings, {
    foot: "further.axis.seconds",
    band: ({ request }) =>
      wordSetting(request, "breathing") === "ventilator" ? "further.doing.ventilatorIn" : "further.doing.in",
  });
  const [words, lines]: [Lettering, Graphics] = [lettering(), new Graphics()];
  let [said, placed] = ["", ""];
  let lies: Box = { x: 0, y: 0, width: 1, height: 1 };
  let known: Circulation | null = null;
  view.addChild(chest.view, rows.view, lines, words.view);

  return {
    view,
    draw({ frame, circulation }, box, { floor }, theme) {
      const { time, still } = frame;
      const { labels } = frame.state.view;
      const type = sizes(Math.min(box.height, box.width), floor);
      const wide = box.width > box.height;
      const gap = type.axis;
      const head = wide ? 0 : type.label * 5.4;
      const picture: Box = wide
        ? { ...box, width: box.width * 0.61 }
        : { ...box, y: box.y + head, height: Math.min(box.height * 0.5, box.width * 0.86) };
      const charts: Box = wide
        ? { ...box, x: picture.x + picture.width + gap, width: box.width - picture.width - gap }
        : { ...box, y: picture.y + picture.height + gap, height: box.height - head - picture.height - gap };
      const place = JSON.stringify([box, floor, theme.name, theme.say("further.breathing.in")]);
      if (place !== placed || known !== circulation) {
        placed = place;
        said = "";
        words.begin();
        lies = endsOf(circulation) ? besideNames(words, picture, type.axis, theme) : picture;
      }
      const shown = chest.draw(circulation, time, still, lies, theme);
      rows.draw({ circulation, all: solvedIn(frame), time }, charts, type.axis, theme);
      const { pleural } = circulation.traces.pressures;
      const pressure = pleural && readingAt(circulation.traces, pleural, time);
      const doing = doingAt(circulation.traces, wordSetting(circulation.request, "breathing"), time);
      // Words are laid out again only when one of them changes.
      const next = JSON.stringify([
        pressure,
        doing,
        shown.ends,
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
      let noted: Lain | null = null;
      if (pressure !== undefined) {
        const more = [
          theme.say("further.breathing.around", { pressure: formatQuantity(pressure, "mmHg") }),
          ...(shown.ends && shown.larger > 1
            ? [theme.say("further.breathing.larger", { times: shown.larger })]
            : []),
        ];
        const soft = { size: type.axis, colour: theme.colour.inkSoft };
        noted = words.write(
          {
            lines: [
              {
                words: theme.say(`further.doing.${doing}`),
                size: type.label,
                colour: theme.colour.ink,
                bold: true,
              },
              ...more.map((words) => ({ words, ...soft })),
            ],
            x: box.x,
            y: box.y,
          },
          theme,
        );
      }
      const lain = [
        ...(noted ? [noted] : []),
        ...writeEnds({ words, lines }, shown, { size: type.axis, right: picture.x + picture.width }, theme),
      ];
      if (labels) writeNames({ words, lines }, shown, lain, { size: type.axis, left: picture.x }, theme);
      words.end();
    },
    release: () => chest.release(),
  };
}

export const makeBreathing: MakeScene = () => paneScene(breath, { legend: circuitLegend() });
