/** The same body at rest and at work, side by side, and beneath them what flows where: both are answers of the circulation. */
import { Container, Graphics } from "pixi.js";
import type { Frame } from "../../chain/frame.ts";
import { formatNumber, formatQuantity } from "../../i18n/index.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import { shownIn } from "../circuit/arrange.ts";
import { type Canvas, pane } from "../circuit/circuit-pane.ts";
import { proportionsOf } from "../circuit/proportions.ts";
import { lettering, type Note } from "../drawing/lettering.ts";
import { flowTrace, meanOf } from "../drawing/trace-clock.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { sizesIn } from "../theme/type.ts";
import { drawBeats, fullest, SECONDS } from "./beats.ts";
import { veinsToLungs } from "./exercise-reading.ts";

const AT_REST = 1;
/** Times rest of the body beside one at rest: about the best that 411 young people reached after completion (26 mL/min per kg: Paridon, J Am Coll Cardiol 2008;52:99). */
export const COMPARED = 5;

export const effortOf = ({ request }: Circulation): number => numberSetting(request, "metabolicEquivalents");

/** The state on the stage and the one it is compared with, the lesser effort first; alone until the sweep has answered the other. */
export function pairOf({ panes, sweep }: Frame): readonly Circulation[] {
  const own = panes[0]?.circulation;
  if (!own) return [];
  const wanted = effortOf(own) === AT_REST ? COMPARED : AT_REST;
  const points = sweep?.over === "metabolicEquivalents" ? (sweep.curves[0]?.points ?? []) : [];
  const answered = points.filter(({ circulation }) => circulation);
  const near =
    answered.find(({ at }) => at === wanted) ??
    (sweep?.progress === 1 ? answered.findLast(({ at }) => at > AT_REST && at < wanted) : undefined);
  const other = near?.circulation;
  return other ? [own, other].sort((a, b) => effortOf(a) - effortOf(b)) : [own];
}

const meanFlow = ({ traces }: Circulation, name: string): number => {
  const flow = flowTrace(traces.flows, name);
  return flow ? meanOf(traces, flow) : Number.NaN;
};

/** What is said of both bodies; a number that a state lacks leaves its row out. */
const ROWS: readonly {
  readonly key: string;
  readonly read: (circulation: Circulation) => number;
  readonly unit: "mmHg" | "L/min" | "%" | "1/min" | "mL";
}[] = [
  { key: "veins", read: veinsToLungs, unit: "mmHg" },
  { key: "output", read: ({ flows }) => flows.systemic, unit: "L/min" },
  { key: "legs", read: (state) => meanFlow(state, "legs"), unit: "L/min" },
  { key: "belly", read: (state) => meanFlow(state, "splanchnic"), unit: "L/min" },
  { key: "rate", read: ({ extras }) => extras.heartRate ?? Number.NaN, unit: "1/min" },
  // Times the rate it is the flow above: what the ventricle ejects goes to the collaterals to the lungs too.
  {
    key: "stroke",
    read: ({ flows, extras }) => (1000 * flows.systemic) / (extras.heartRate ?? Number.NaN),
    unit: "mL",
  },
  { key: "arteries", read: ({ saturations }) => saturations.arterial, unit: "%" },
  { key: "legVeins", read: ({ extras }) => extras.legVeinSaturation ?? Number.NaN, unit: "%" },
];

const WHOLE: readonly string[] = ["%", "1/min", "mL"];

const headingOf = (effort: number, theme: Theme): string =>
  effort === AT_REST
    ? theme.say("further.exercise.rest")
    : theme.say("further.exercise.times", { effort: formatNumber(effort, Number.isInteger(effort) ? 0 : 1) });

/** In sizes of type: from line to line, and the air over the table. */
const LINE = 1.42;
const AIR = 0.5;

interface Table {
  readonly states: readonly Circulation[];
  readonly box: Box;
  readonly type: number;
  /** as many as there is room for, the first ones before the rest */
  readonly rows: number;
}

/** CSS px of so many rows under their heading. */
const heightOf = (rows: number, type: number): number => type * (AIR + LINE * (rows + 1));

/** Words between the numbers of both; under a lone body its numbers behind the words. Says where each state's beats have room. */
function writeTable(
  words: ReturnType<typeof lettering>,
  { states, box, type, rows }: Table,
  theme: Theme,
): readonly Box[] {
  const { colour } = theme;
  const two = states.length === 2;
  // The words take the same room in a narrow table.
  const side = box.width > NAMED * type ? 0.2 : 0.12;
  const columns = two ? [side, 1 - side] : [0.78];
  const write = (text: string, at: readonly [part: number, row: number], anchor: number, bold: boolean) => {
    const note: Note = {
      lines: [{ words: text, size: type, colour: bold ? colour.ink : colour.inkSoft, bold }],
      anchor: [anchor, 0],
      bare: true,
      x: box.x + at[0] * box.width,
      y: box.y + type * (AIR + LINE * at[1]),
    };
    words.write(note, theme);
  };
  states.forEach((state, i) => {
    write(headingOf(effortOf(state), theme), [columns[i] ?? 0.5, 0], 0.5, true);
  });
  const shown = ROWS.slice(0, rows).filter(({ read }) =>
    states.every((state) => Number.isFinite(read(state))),
  );
  shown.forEach(({ key, read, unit }, row) => {
    write(
      theme.say(`further.exercise.row.${key}`, { seconds: SECONDS }),
      two ? [0.5, row + 1] : [0.6, row + 1],
      two ? 0.5 : 1,
      false,
    );
    states.forEach((state, i) => {
      const value = formatQuantity(read(state), unit, WHOLE.includes(unit) ? 0 : 1);
      write(value, [columns[i] ?? 0.5, row + 1], 0.5, true);
    });
  });
  // Beside both numbers of the heart, outwards from them.
  const row = shown.findIndex(({ key }) => key === "rate");
  const width = side * box.width - type * (NUMBER + BEAT_AIR);
  if (!two || row < 0 || shown[row + 1]?.key !== "stroke" || width < type * BEAT_WIDE) return [];
  return columns.map((column, i) => ({
    x: i === 0 ? box.x + BEAT_AIR * type : box.x + column * box.width + NUMBER * type,
    y: box.y + type * (AIR + LINE * (row + 1) + 0.15),
    width,
    height: type * (2 * LINE - 0.4),
  }));
}
/** In sizes of type: half of a number's width, air beside it, and the least width in which beats can be told apart. */
const NUMBER = 2.9;
const BEAT_AIR = 0.4;
const BEAT_WIDE = 3;

/** Parts of a height that a body needs in width, and of the box's height that the table may take. */
const BODY_WIDE = 0.3;
const TABLE_SHARE = 0.32;
/** Legs at work are shown to the feet, down to this height of a body in CSS px; below it trunk and thighs alone. */
const MIN_HEIGHT = 260;
/** In sizes of type: the width from which the stage's name stands in the corner beside a head. */
const NAMED = 34;

export function effortPair() {
  const view = new Container();
  const words = lettering();
  const bodies = [pane(), pane()] as const;
  const pulse = new Graphics();
  view.addChild(...bodies.map((body) => body.view), pulse, words.view);
  return {
    view,
    draw(frame: Frame, box: Box, canvas: Canvas, theme: Theme): void {
      const { axis, label } = sizesIn(box, canvas.floor);
      const states = pairOf(frame);
      words.begin();
      const room = Math.floor((TABLE_SHARE * box.height) / axis / LINE) - 1;
      const rows = Math.max(0, Math.min(ROWS.length, room));
      const table = heightOf(rows, axis);
      const above = { ...box, height: box.height - table };
      const both = states.length === 2 && above.width / 2 > BODY_WIDE * above.height;
      const own = frame.panes[0]?.circulation;
      const shown = both ? states : states.filter((state) => state === own);
      bodies.forEach((body, i) => {
        const circulation = shown[i];
        body.view.visible = circulation !== undefined;
        if (!circulation) return;
        const width = above.width / shown.length;
        const part = { ...above, x: above.x + i * width, width };
        const proportions = proportionsOf(circulation);
        body.draw(
          {
            circulation,
            against: null,
            compared: false,
            time: frame.time,
            still: frame.still,
            labels: false,
            focus: frame.state.view.focus,
            extent: above.height < MIN_HEIGHT ? shownIn(part, proportions) : proportions.body,
            titled: false,
          },
          part,
          canvas,
          theme,
        );
      });
      if (own && box.width > NAMED * axis)
        words.write(
          {
            lines: [
              {
                words: theme.say(`stage.${own.request.stage}`),
                size: label,
                colour: theme.colour.ink,
                bold: true,
              },
            ],
            x: box.x,
            y: box.y,
          },
          theme,
        );
      const beats = writeTable(
        words,
        { states, box: { ...box, y: above.y + above.height, height: table }, type: axis, rows },
        theme,
      );
      words.end();
      pulse.clear();
      beats.forEach((room, i) => {
        const state = states[i];
        if (state) drawBeats(pulse, { state, full: fullest(states) }, room, frame, theme);
      });
    },
    release() {
      for (const body of bodies) body.release();
    },
  };
}
