/** A row of growing bodies: a look into each trunk, and under it the body and its tube or chamber cut across; each kind to one scale. */

import { Container, Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { type Painted, sheet } from "../anatomy/painted-sheet.ts";
import { ageWords } from "../drawing/age-words.ts";
import { type Lettering, type Line, lettering } from "../drawing/lettering.ts";
import { drawScaleBar } from "../drawing/scale-bar.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import {
  drawDashes,
  drawOwn,
  paintSection,
  type SectionPlace,
  sectionLayout,
  sectionRoom,
} from "./cross-section.ts";
import { drawCut, drawWay } from "./cut-drawing.ts";
import { drawFigure } from "./figure-drawing.ts";
import { drawOrgans } from "./figure-organs.ts";
import { type GrowingChest, growingChest, type Moment } from "./growing-chest.ts";
import { widthWords } from "./rings.ts";
import { BODY, bodyScale, type Column, columnsOf, FIGURE, LETTERS, shownOf } from "./row.ts";
import { vesselBlood } from "./vessel-blood.ts";

export interface Bodies {
  readonly view: Container;
  draw(points: readonly SweepPoint[], moment: Now, box: Box, type: number, theme: Theme): void;
  release(): void;
}

interface Now extends Moment {
  /** body surface of the state on the stage, m2 */
  readonly now: number;
}

interface Pens {
  readonly under: Graphics;
  readonly ink: Graphics;
  readonly over: Graphics;
  readonly words: Lettering;
  readonly type: number;
  readonly theme: Theme;
}

/** A piece of the own vein's dashed line, so many sizes of type long, stands before its width. */
const SAMPLE = 1.7;
/** A line of small type, in sizes of type. */
const LINE = 1.25;
/** mm: the trunks' scale bar. */
const BAR = 50;
/** m2 within which a body is that of the state on the stage. */
const SAME = 0.06;

export function bodies(): Bodies {
  const view = new Container();
  const [under, ink, over] = [new Graphics(), new Graphics(), new Graphics()];
  const words = lettering();
  const blood = vesselBlood();
  const [looks, chests] = [new Container(), [] as GrowingChest[]];
  const [faces, sections] = [new Container(), [] as Painted[]];
  view.addChild(under, looks, blood.view, faces, ink, over, words.view);
  let drawn = "";
  let columns: readonly Column[] = [];
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
        moment.dense,
        theme.name,
        theme.say("further.growth.axis"),
      ]);
      if (signature !== drawn) {
        drawn = signature;
        for (const each of [under, ink, over]) each.clear();
        words.begin();
        columns = drawRow({ under, ink, over, words, type, theme }, points, now, box);
        words.end();
        while (chests.length < columns.length) {
          const [chest, section] = [growingChest(), sheet()];
          chests.push(chest);
          sections.push(section);
          looks.addChild(chest.view);
          faces.addChild(section.view);
        }
        for (const [i, { point, section }] of columns.entries())
          paintFace(entryAt(sections, i), point, section, moment.dense, theme);
      }
      for (const each of [chests, sections])
        for (const [i, { view: shown }] of each.entries()) shown.visible = i < columns.length;
      // One that is painted anew in a drawing is enough: the next ones follow.
      columns.some(
        ({ point, chest }, i) => entryAt(chests, i).draw(point, chest, moment, theme) && !moment.still,
      );
      blood.draw(columns, moment.time, moment.still, theme);
    },
    release() {
      blood.release();
      for (const each of [...chests, ...sections]) each.release();
    },
  };
}

function paintFace(
  { paint, view }: Painted,
  point: SweepPoint,
  place: SectionPlace,
  dense: number,
  theme: Theme,
) {
  paint(sectionRoom(point, place), dense, [0, 0], (ink) => {
    ink.scale(1, -1);
    paintSection(ink, point, place, theme);
  });
  view.position.set(place.x, place.y);
  view.scale.set(1, -1);
}

/** @returns the columns of bodies with a pathway */
function drawRow(pens: Pens, points: readonly SweepPoint[], now: number, box: Box): readonly Column[] {
  const { ink, type, theme } = pens;
  const shown = shownOf(points, box.width, needOf(points, pens.words, type, theme));
  const isHere = ({ at }: SweepPoint) => Math.abs(at - now) < SAME;
  if (hasPathway(entryAt(points, 0).request.stage)) {
    const columns = columnsOf(shown, box, type);
    for (const column of columns) drawColumn(pens, column, isHere(column.point));
    writeBar(pens, box, entryAt(columns, 0).chest.perMillimetre);
    return columns;
  }
  const step = box.width / shown.length;
  const ground = box.y + box.height - LETTERS * type;
  const tallest = Math.max(10, Math.min(box.height - LETTERS * type, (step * BODY) / FIGURE));
  shown.forEach((point, i) => {
    const x = box.x + step * (i + 0.5);
    const height = tallest * bodyScale(point.at, lastOf(shown).at);
    drawFigure(ink, point.request.body.ageYears, { x, ground, height }, isHere(point), theme);
    write(pens, ageLine(point, isHere(point), type, theme), x, ground + 0.6 * type);
  });
  return [];
}

function drawColumn(pens: Pens, { point, ...places }: Column, here: boolean): void {
  const { under: below, ink, over, type, theme } = pens;
  const { chest, figure, section, left, wide } = places;
  const { half } = sectionLayout(point, section);
  drawWay(below, over, point, { chest, section }, theme);
  drawFigure(ink, point.request.body.ageYears, figure, here, theme);
  drawOrgans(ink, point, figure, theme);
  drawOwn(over, point, section, theme);
  drawCut(over, point, chest, theme);
  const age = write(pens, ageLine(point, here, type, theme), figure.x, figure.ground + 0.6 * type);
  const [tube, vein, gap] = widthLines(point, type, theme);
  // The lumen's width, as it is measured.
  const under = figure.ground + 0.55 * type;
  drawScaleBar(
    ink,
    { x: section.x, y: under, long: 2 * half, end: 0.3 * type, width: 1.5 },
    theme.colour.ink,
  );
  const longOf = (line: Line) => pens.words.measure({ lines: [line], bare: true }, theme).width;
  const free = age.x + age.width + 0.5 * type + longOf(tube) / 2;
  write(pens, tube, Math.max(section.x, free), under + 0.3 * type);
  // Within its column, though it is longer than what it stands under.
  const x = Math.min(section.x + (SAMPLE * type) / 2, left + wide - longOf(vein) / 2);
  const lain = write(pens, vein, x, under + (0.3 + LINE) * type);
  write(pens, gap, section.x, under + (0.3 + 2 * LINE) * type);
  const middle = lain.y + lain.height / 2;
  drawDashes(
    ink,
    [
      [lain.x - SAMPLE * type, middle],
      [lain.x - 0.2 * type, middle],
    ],
    type,
    theme,
  );
}

/** Over the first trunk, the smallest, there is room. */
function writeBar({ ink, words, type, theme }: Pens, { x, y: top }: Box, perMillimetre: number): void {
  const color = theme.colour.inkSoft;
  const [left, y] = [x + 0.4 * type, top + 0.6 * type];
  const long = BAR * perMillimetre;
  drawScaleBar(ink, { x: left + long / 2, y, long, end: 0.25 * type, width: 1.5 }, color);
  const line = { words: formatQuantity(BAR, "mm"), size: type * 0.9, colour: color };
  words.write({ lines: [line], x: left + long + 0.4 * type, y, anchor: [0, 0.5], bare: true }, theme);
}

const ageLine = (point: SweepPoint, here: boolean, type: number, { say, colour }: Theme): Line => ({
  words: ageWords(say, point.request.body.ageYears),
  size: type * 1.1,
  colour: here ? colour.ink : colour.inkSoft,
  bold: here,
});

/** Of tube or chamber, of the own vein, and by how much they differ, in bold. */
function widthLines(
  point: SweepPoint,
  type: number,
  theme: Theme,
): readonly [tube: Line, vein: Line, gap: Line] {
  const { say, colour } = theme;
  const [tube, vein, gap] = widthWords(point, say);
  const size = type;
  return [
    { words: tube, size, colour: colour.ink },
    { words: vein, size, colour: colour.inkSoft },
    { words: gap, size, colour: colour.ink, bold: true },
  ];
}

/** @param x CSS px: the middle of a line whose upper end is at `y` */
const write = ({ words, theme }: Pens, line: Line, x: number, y: number) =>
  words.write({ lines: [line], x, y, anchor: [0.5, 0], bare: true }, theme);

/** CSS px that a body's words need, from one body to the next. */
export function needOf(
  points: readonly SweepPoint[],
  words: Pick<Lettering, "measure">,
  type: number,
  theme: Theme,
): number {
  const wide = (line: Line) => words.measure({ lines: [line], bare: true }, theme).width;
  const widest = [entryAt(points, 0), lastOf(points)].map((point) => {
    const age = wide(ageLine(point, true, type, theme));
    if (!hasPathway(point.request.stage)) return age;
    const [tube, vein, gap] = widthLines(point, type, theme).map(wide) as [number, number, number];
    return Math.max(age + tube + type, vein + SAMPLE * type, gap);
  });
  return Math.max(...widest) + type;
}
