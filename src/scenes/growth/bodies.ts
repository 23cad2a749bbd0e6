/** A row of growing bodies: beside each a look into its chest, and under that its tube or chamber cut across; each kind to one scale. */
import { Container, Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { type Lettering, type Line, lettering } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { drawOver, drawSide, drawWay, type Pens, placeBeside, sidesOf } from "./body-pictures.ts";
import { drawDashes } from "./cross-section.ts";
import { drawFigure, type FigurePlace } from "./figure-drawing.ts";
import { type GrowingChest, growingChest, type Moment } from "./growing-chest.ts";
import { widthWords } from "./rings.ts";
import { BESIDE, BODY, bodyScale, FIGURE, shownOf } from "./row.ts";
import { type Tube, tubeBlood } from "./tube-blood.ts";

export interface Bodies {
  readonly view: Container;
  draw(points: readonly SweepPoint[], moment: Now, box: Box, type: number, theme: Theme): void;
  release(): void;
}

interface Now extends Moment {
  /** body surface of the state on the stage, m2 */
  readonly now: number;
}

/** Which of the lines under a body is that of the own vein: a piece of its dashed line, so many sizes of type long, stands before it. */
const OWN = 2;
const SAMPLE = 1.7;
/** A line of small type, in sizes of type. */
const LINE = 1.25;

export function bodies(): Bodies {
  const view = new Container();
  const [ink, over] = [new Graphics(), new Graphics()];
  const words = lettering();
  const blood = tubeBlood();
  const [looks, chests] = [new Container(), [] as GrowingChest[]];
  view.addChild(ink, looks, blood.view, over, words.view);
  let drawn = "";
  let tubes: readonly Tube[] = [];
  return {
    view,
    draw(points, { now, ...moment }, box, type, theme) {
      const signature = JSON.stringify([
        points.map(({ request, circulation }) => [
          request,
          circulation && Math.round(circulation.saturations.ivc),
        ]),
        now,
        box,
        type,
        theme.name,
        theme.say("further.growth.axis"),
      ]);
      if (signature !== drawn) {
        drawn = signature;
        ink.clear();
        words.begin();
        tubes = drawRow({ ink, words, type, theme }, points, now, box);
        over.clear();
        for (const tube of tubes) drawOver(over, tube, theme);
        words.end();
      }
      while (chests.length < tubes.length) {
        const chest = growingChest();
        chests.push(chest);
        looks.addChild(chest.view);
      }
      chests.forEach(({ view: look }, i) => {
        look.visible = i < tubes.length;
      });
      // One that is painted anew in a drawing is enough: the next ones follow.
      tubes.some(
        ({ point, chest }, i) => entryAt(chests, i).draw(point, chest, moment, theme) && !moment.still,
      );
      blood.draw(tubes, moment.time, moment.still, theme);
    },
    release() {
      blood.release();
      for (const chest of chests) chest.release();
    },
  };
}

/** @returns where blood is to move */
function drawRow(pens: Pens, points: readonly SweepPoint[], now: number, box: Box): readonly Tube[] {
  const { ink, words, type, theme } = pens;
  const pathway = hasPathway(entryAt(points, 0).request.stage);
  const shown = shownOf(points, box.width, needOf(points, words, type, theme));
  const step = box.width / shown.length;
  const largest = lastOf(points).at;
  const foot = (pathway ? BESIDE.words + 0.6 : 2) * type;
  const tallest = Math.max(
    10,
    Math.min(box.height - foot, (step * BODY[pathway ? "pathway" : "body"]) / FIGURE),
  );
  const sides = pathway && sidesOf(points, step, tallest, box, type);
  return shown.flatMap((point, i) => {
    const height = tallest * bodyScale(point.at, largest);
    const left = box.x + step * i;
    const x = left + (pathway ? 0.5 * FIGURE * tallest + 0.02 * step : 0.5 * step);
    const body: FigurePlace = { x, ground: box.y + box.height - foot, height };
    const here = Math.abs(point.at - now) < 0.06;
    const side = sides && placeBeside(point, body, left + step * 0.98, sides, type);
    // The way to the picture leaves from behind the body: no line crosses its neck.
    if (side) drawWay(ink, side.spot, side.chest, theme);
    drawFigure(ink, point.request.body.ageYears, body, here, theme);
    writeUnder(pens, point, here, [left + step / 2, body.ground + 0.6 * type]);
    return side && sides ? [drawSide(pens, point, side, sides.bar)] : [];
  });
}

/** The age, and with a pathway the widths, the difference in bold. */
const linesOf = (point: SweepPoint, here: boolean, type: number, { say, colour }: Theme): readonly Line[] => {
  const widths = hasPathway(point.request.stage) ? widthWords(point, say) : [];
  return [
    {
      words: say("further.growth.age", { age: point.request.body.ageYears }),
      size: type * 1.1,
      colour: here ? colour.ink : colour.inkSoft,
      bold: here,
    },
    ...widths.map((words, i) => {
      const last = i === widths.length - 1;
      return { words, size: type, colour: last ? colour.ink : colour.inkSoft, bold: last };
    }),
  ];
};

/** CSS px that a body's words need, from one body to the next. */
export function needOf(
  points: readonly SweepPoint[],
  words: Pick<Lettering, "measure">,
  type: number,
  theme: Theme,
): number {
  const widest = [entryAt(points, 0), lastOf(points)].map((point) =>
    Math.max(
      ...linesOf(point, true, type, theme).map(
        (line, i) =>
          words.measure({ lines: [line], bare: true }, theme).width + (i === OWN ? SAMPLE * type : 0),
      ),
    ),
  );
  return Math.max(...widest) + 0.6 * type;
}

/** @param at CSS px: the upper end of their middle */
function writeUnder({ ink, words, type, theme }: Pens, point: SweepPoint, here: boolean, [x, y]: Spot): void {
  linesOf(point, here, type, theme).forEach((line, i) => {
    const own = i === OWN ? SAMPLE * type : 0;
    const lain = words.write(
      { lines: [line], x: x + own / 2, y: y + i * LINE * type, anchor: [0.5, 0], bare: true },
      theme,
    );
    const middle = lain.y + lain.height / 2;
    if (own === 0) return;
    drawDashes(
      ink,
      [
        [lain.x - own, middle],
        [lain.x - 0.2 * type, middle],
      ],
      type,
      theme,
    );
  });
}
