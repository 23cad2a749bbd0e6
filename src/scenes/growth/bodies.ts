/** A row of growing bodies: beside each a look into its chest, and under that its tube or chamber cut across; each kind to one scale. */
import { Container, Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { type Lettering, lettering } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { chestReach } from "./chest-place.ts";
import { drawDashes, drawOwnVein, drawSection, sectionWidth } from "./cross-section.ts";
import { drawFigure, type FigurePlace } from "./figure-drawing.ts";
import { type GrowingChest, growingChest } from "./growing-chest.ts";
import { widthWords } from "./rings.ts";
import { AIR, BESIDE, BODY, bodyScale, FIGURE, shownOf } from "./row.ts";
import { chestOf } from "./standing-figure.ts";
import { type Tube, tubeBlood } from "./tube-blood.ts";

export interface Bodies {
  readonly view: Container;
  draw(points: readonly SweepPoint[], moment: Moment, box: Box, type: number, theme: Theme): void;
  release(): void;
}

interface Moment {
  /** body surface of the state on the stage, m2 */
  readonly now: number;
  /** s of the running clock */
  readonly time: number;
  /** nothing moves */
  readonly still: boolean;
  /** device pixels of a CSS pixel */
  readonly dense: number;
}

interface Pens {
  readonly ink: Graphics;
  readonly words: Lettering;
  readonly type: number;
  readonly theme: Theme;
}

/** mm: the lengths of the scale bars of chests and sections. */
const BARS = { chest: 50, section: 10 } as const;
/** Which of the widths in words is that of the own vein: a piece of its dashed line stands before it. */
const OWN = 1;
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
        for (const { point, chest, section } of tubes) {
          over.circle(chest.x, chest.y, chest.radius).stroke({ color: theme.colour.hair, width: 2.5 });
          drawOwnVein(over, point, section, theme);
        }
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
  const shown = shownOf(points, box.width, type, pathway);
  const step = box.width / shown.length;
  const largest = lastOf(points).at;
  const foot = type * 1.8;
  const tallest = Math.max(
    10,
    Math.min(box.height - foot, (step * BODY[pathway ? "pathway" : "body"]) / FIGURE),
  );
  const sides = pathway && sidesOf(points, step, tallest, box, type);
  const tubes: Tube[] = [];
  shown.forEach((point, i) => {
    const height = tallest * bodyScale(point.at, largest);
    const left = box.x + step * i;
    const x = left + (pathway ? 0.5 * FIGURE * tallest + 0.02 * step : 0.5 * step);
    const body: FigurePlace = { x, ground: box.y + box.height - foot, height };
    const here = Math.abs(point.at - now) < 0.06;
    const years = point.request.body.ageYears;
    const side = sides && placeBeside(point, body, left + step * 0.98, sides, type);
    // The way to the picture leaves from behind the body: no line crosses its neck.
    if (side) drawWay(ink, side.spot, side.chest, theme);
    drawFigure(ink, years, body, here, theme);
    if (side && sides) tubes.push(drawSide(pens, point, side, sides));
    words.write(
      {
        lines: [
          {
            words: theme.say("further.growth.age", { age: years }),
            size: type * 1.1,
            colour: here ? theme.colour.ink : theme.colour.inkSoft,
            bold: here,
          },
        ],
        x,
        y: box.y + box.height,
        anchor: [0.5, 1],
        bare: true,
      },
      theme,
    );
  });
  return tubes;
}

interface Sides {
  /** CSS px: width beside a body, middles of chest and section, px for each mm of both, and where the words begin */
  readonly width: number;
  readonly chest: { readonly y: number; readonly perMillimetre: number };
  readonly section: { readonly y: number; readonly perMillimetre: number; readonly half: number };
  readonly foot: number;
}

function sidesOf(
  points: readonly SweepPoint[],
  step: number,
  tallest: number,
  box: Box,
  type: number,
): Sides {
  const letters = BESIDE.words * type;
  const bar = 1.5 * type;
  const width = Math.max(20, step * (1 - AIR) - FIGURE * tallest);
  const size = Math.max(10, Math.min(width, (box.height - letters - BESIDE.bars * type) / 2));
  const reach = chestReach(lastOf(points).at);
  const widest = Math.max(...points.map(sectionWidth));
  const foot = box.y + box.height - letters;
  return {
    width,
    chest: { y: box.y + bar + size / 2, perMillimetre: size / (2 * reach) },
    section: { y: foot - bar - size / 2, perMillimetre: size / widest, half: size / 2 },
    foot,
  };
}

interface Beside extends Pick<Tube, "chest" | "section"> {
  /** what of the body is looked into, CSS px */
  readonly spot: Ring;
}

/** @param right CSS px up to which there is room */
function placeBeside(
  { at, request }: SweepPoint,
  { x: bodyX, ground, height }: FigurePlace,
  right: number,
  sides: Sides,
  type: number,
): Beside {
  const x = right - sides.width / 2;
  const { y, perMillimetre } = sides.chest;
  return {
    spot: { x: bodyX, y: ground - chestOf(request.body.ageYears) * height, radius: 0.055 * height },
    chest: { x, y, radius: chestReach(at) * perMillimetre, perMillimetre },
    section: { x, y: sides.section.y, perMillimetre: sides.section.perMillimetre, type },
  };
}

function drawSide(
  { ink, words, type, theme }: Pens,
  point: SweepPoint,
  { spot, chest, section }: Beside,
  sides: Sides,
): Tube {
  const { colour } = theme;
  const { x, y, radius, perMillimetre } = chest;
  ink.circle(spot.x, spot.y, spot.radius).stroke({ color: colour.inkSoft, width: 1.6 });
  ink.circle(x, y, radius).fill({ color: mix(colour.backdrop, colour.stage, 0.25) });
  drawSection(ink, point, section, theme);
  scaleBar({ ink, words, type, theme }, [x, y - radius - 1.3 * type], BARS.chest, perMillimetre);
  const { half } = sides.section;
  scaleBar(
    { ink, words, type, theme },
    [x, section.y + half + 0.3 * type],
    BARS.section,
    section.perMillimetre,
  );
  widthWords(point, theme.say).forEach((each, i, all) => {
    const last = i === all.length - 1;
    const lain = words.write(
      {
        lines: [{ words: each, size: type, colour: last ? colour.ink : colour.inkSoft, bold: last }],
        x: i === OWN ? x + 0.7 * type : x,
        y: sides.foot + i * LINE * type,
        anchor: [0.5, 0],
        bare: true,
      },
      theme,
    );
    if (i === OWN)
      drawDashes(
        ink,
        [
          [lain.x - 1.7 * type, lain.y + lain.height / 2],
          [lain.x - 0.2 * type, lain.y + lain.height / 2],
        ],
        type,
        theme,
      );
  });
  return { point, chest, section };
}

/** @param at CSS px: the upper end of its middle; `long`: mm */
function scaleBar(
  { ink, words, type, theme }: Pens,
  [x, y]: Spot,
  long: number,
  perMillimetre: number,
): void {
  const color = theme.colour.inkSoft;
  const line = { words: formatQuantity(long, "mm"), size: type * 0.85, colour: color };
  const letters = words.measure({ lines: [line], bare: true }, theme).width + 0.4 * type;
  const left = x - (long * perMillimetre + letters) / 2;
  const right = left + long * perMillimetre;
  const middle = y + 0.5 * type;
  for (const [a, b] of [
    [
      [left, middle],
      [right, middle],
    ],
    [
      [left, middle - 0.25 * type],
      [left, middle + 0.25 * type],
    ],
    [
      [right, middle - 0.25 * type],
      [right, middle + 0.25 * type],
    ],
  ] as const)
    ink
      .moveTo(...a)
      .lineTo(...b)
      .stroke({ color, width: 1.5 });
  words.write({ lines: [line], x: right + 0.4 * type, y: middle, anchor: [0, 0.5], bare: true }, theme);
}

interface Ring {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** From a ring on the body to the round picture: between the two lines that touch both. */
function drawWay(ink: Graphics, from: Ring, to: Ring, { colour }: Theme): void {
  const way = Math.atan2(to.y - from.y, to.x - from.x);
  const apart = Math.hypot(to.x - from.x, to.y - from.y);
  const lean = Math.acos(Math.max(-1, Math.min(1, (from.radius - to.radius) / apart)));
  const touching = ({ x, y, radius }: Ring, turn: number): Spot => [
    x + radius * Math.cos(turn),
    y + radius * Math.sin(turn),
  ];
  const sides = [way + lean, way - lean].map((turn) => [touching(from, turn), touching(to, turn)] as const);
  ink
    .poly([...entryAt(sides, 0), ...entryAt(sides, 1).toReversed()].flat())
    .fill({ color: colour.inkSoft, alpha: 0.1 });
  for (const [a, b] of sides)
    ink
      .moveTo(...a)
      .lineTo(...b)
      .stroke({ color: colour.inkSoft, width: 1, alpha: 0.6 });
}
