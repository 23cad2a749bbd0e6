/** The same body at rest and at work, side by side, and between them what effort changes: both are answers of the circulation. */

import { Container, Graphics } from "pixi.js";
import type { Frame } from "../../chain/frame.ts";
import { formatNumber } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import { shownIn } from "../circuit/arrange.ts";
import { type Canvas, pane } from "../circuit/circuit-pane.ts";
import { type Proportions, proportionsOf } from "../circuit/proportions.ts";
import { ageWords } from "../drawing/age-words.ts";
import { lettering } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { sizesIn } from "../theme/type.ts";
import { drawBeats, fullest } from "./beats.ts";
import { drawChanges, heightOf } from "./change-bars.ts";
import { CHANGES } from "./change-rows.ts";
import { drawSmall } from "./runners.ts";

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

const headingOf = (effort: number, theme: Theme): string =>
  effort === AT_REST
    ? theme.say("further.exercise.rest")
    : theme.say("further.exercise.times", { effort: formatNumber(effort, Number.isInteger(effort) ? 0 : 1) });

/** Parts of the box's height that the rows take at most under the bodies, and the least that bodies with rows between them are worth. */
const UNDER = 0.4;
const MIN_SHARE = 0.62;
/** In sizes of type: the least and the greatest room between bodies, and a line of words under the feet. */
const [NARROWEST, WIDEST, FEET] = [16.5, 22, 1.9];
/** In sizes of type: the person who makes the effort, small before its name, and the room of both under the feet. */
const [SMALL, WITH_SMALL] = [4.8, 5.4];
/** Legs at work are shown to the feet, down to this height of a body in CSS px; below it trunk and thighs alone. */
const MIN_HEIGHT = 260;
/** Parts of a height that a body needs in width. */
const BODY_WIDE = 0.3;

interface Places {
  /** of the bodies */
  readonly bodies: readonly Box[];
  /** of the rows */
  readonly rows: Box;
  readonly between: boolean;
}

/** Bodies at both sides of the rows where they then are large enough, else over them. */
function placesOf(box: Box, count: number, { body }: Proportions, type: number): Places {
  const tall = box.height - WITH_SMALL * type;
  const shape = (body.right - body.left) / (body.bottom - body.top);
  const room = Math.min(WIDEST * type, Math.max(NARROWEST * type, box.width - 2 * tall * shape));
  const width = (box.width - room) / 2;
  if (width / shape > Math.max(MIN_HEIGHT, MIN_SHARE * tall)) {
    const height = Math.min(tall, width / shape);
    const y = box.y + (tall - height) / 2;
    const at = (x: number): Box => ({ x, y, width, height });
    return {
      bodies: [at(box.x), at(box.x + width + room)].slice(0, count),
      rows: { x: box.x + width, y: box.y, width: room, height: box.height },
      between: true,
    };
  }
  const under = Math.min(UNDER * box.height, heightOf(CHANGES, type, false));
  const height = box.height - under - FEET * type;
  const both = count === 2 && box.width / 2 > BODY_WIDE * height;
  const each = box.width / (both ? 2 : 1);
  return {
    bodies: (both ? [0, 1] : [0]).map((i) => ({ x: box.x + i * each, y: box.y, width: each, height })),
    rows: { ...box, y: box.y + box.height - under, height: under },
    between: false,
  };
}

export function effortPair() {
  const view = new Container();
  const words = lettering();
  const bodies = [pane(), pane()] as const;
  const [ink, pulse] = [new Graphics(), new Graphics()];
  view.addChild(...bodies.map((body) => body.view), ink, pulse, words.view);
  return {
    view,
    draw(frame: Frame, box: Box, canvas: Canvas, theme: Theme): void {
      const { axis, label } = sizesIn(box, canvas.floor);
      const states = pairOf(frame);
      const own = frame.panes[0]?.circulation;
      words.begin();
      for (const drawn of [ink, pulse]) drawn.clear();
      for (const body of bodies) body.view.visible = false;
      if (own) {
        const proportions = proportionsOf(own);
        const places = placesOf(box, states.length, proportions, axis);
        const shown = places.bodies.length === states.length ? states : [own];
        const feet: number[] = [];
        const fits = shown.map((circulation, i) => {
          const part = entryAt(places.bodies, i);
          const body = entryAt(bodies, i);
          body.view.visible = true;
          const extent = part.height < MIN_HEIGHT ? shownIn(part, proportions) : proportions.body;
          const fit = body.draw(
            {
              circulation,
              against: null,
              compared: false,
              time: frame.time,
              still: frame.still,
              labels: false,
              focus: frame.state.view.focus,
              extent,
              titled: false,
            },
            part,
            canvas,
            theme,
          );
          const foot = Math.min(part.y + part.height, fit.y + fit.scale * extent.bottom);
          const under = foot + 0.4 * axis;
          feet.push(under);
          const small = places.between ? SMALL * axis : 0;
          const lain = words.write(
            {
              lines: [
                {
                  words: headingOf(effortOf(circulation), theme),
                  size: label,
                  colour: theme.colour.ink,
                  bold: true,
                },
              ],
              x: part.x + part.width / 2 + small / 4,
              y: under + Math.max(0, small - label) / 2,
              anchor: [0.5, 0],
              bare: true,
            },
            theme,
          );
          if (small > 0)
            drawSmall(
              ink,
              {
                effort: effortOf(circulation),
                years: circulation.request.body.ageYears,
                role: circulation === own ? "own" : "beside",
              },
              [lain.x - small / 2, under + small],
              small,
              theme,
            );
          return { fit, proportions };
        });
        const [first, second] = fits;
        const rooms = drawChanges(
          { ink, words, type: axis, theme },
          {
            states: shown,
            box: places.rows,
            ...(places.between && first && second && { stands: [first, second] }),
          },
        );
        const [lines, x] = [whose(own, label, axis, theme), places.rows.x + places.rows.width / 2];
        if (places.between)
          words.write({ lines, x, y: entryAt(feet, 0), anchor: [0.5, 0], bare: true }, theme);
        for (const { state, box } of rooms)
          drawBeats(pulse, { state, full: fullest(states) }, box, frame, theme);
      }
      words.end();
    },
    release() {
      for (const body of bodies) body.release();
    },
  };
}

/** The stage, and beneath it the age: between the names of the two bodies. */
const whose = ({ request }: Circulation, label: number, axis: number, { say, colour }: Theme) => [
  { words: say(`stage.${request.stage}`), size: label, colour: colour.ink, bold: true },
  { words: ageWords(say, request.body.ageYears), size: axis, colour: colour.inkSoft },
];
