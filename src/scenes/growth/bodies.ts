/** Growing bodies on one ground, to one scale, and beside each a lens on its heart and its tube, to another. */
import { Container, Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { type Painted, sheet } from "../anatomy/painted-sheet.ts";
import { ageWords } from "../drawing/age-words.ts";
import { type Lettering, type Line, lettering } from "../drawing/lettering.ts";
import { drawScaleBar } from "../drawing/scale-bar.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { carriedOf } from "../theme/unsolved.ts";
import { type GrowingChest, growingChest, type Moment } from "./growing-chest.ts";
import { paintPerson, ROOM, windowOf } from "./paint-person.ts";
import { widthWords } from "./rings.ts";
import { BODY, bodyScale, type Column, columnsOf, LETTERS, type PersonPlace, shownOf, WIDE } from "./row.ts";
import { vesselBlood } from "./vessel-blood.ts";
import { drawWedge, drawWidths, tubeColour, veinColour } from "./zoom.ts";

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
  readonly wedges: Graphics;
  readonly over: Graphics;
  readonly words: Lettering;
  readonly type: number;
  readonly theme: Theme;
}

/** A line of small type, in sizes of type. */
const LINE = 1.25;
/** mm: the lenses' scale bar. */
const BAR = 50;
/** m2 within which a body is that of the state on the stage. */
const SAME = 0.06;

interface Standing {
  readonly point: SweepPoint;
  readonly person: PersonPlace;
}

export function bodies(): Bodies {
  const view = new Container();
  const [under, wedges, over] = [new Graphics(), new Graphics(), new Graphics()];
  const words = lettering();
  const blood = vesselBlood();
  const [looks, chests] = [new Container(), [] as GrowingChest[]];
  const [people, persons] = [new Container(), [] as Painted[]];
  view.addChild(under, people, wedges, looks, blood.view, over, words.view);
  let drawn = "";
  let columns: readonly Column[] = [];
  return {
    view,
    draw(points, { now, ...moment }, box, type, theme) {
      const signature = JSON.stringify([
        points.map(({ request, circulation }) => [request, carriedOf(circulation)]),
        now,
        box,
        type,
        moment.dense,
        theme.name,
        theme.say("further.growth.axis"),
      ]);
      if (signature !== drawn) {
        drawn = signature;
        for (const each of [under, wedges, over]) each.clear();
        words.begin();
        const row = drawRow({ under, wedges, over, words, type, theme }, points, now, box);
        words.end();
        columns = row.columns;
        while (persons.length < row.standing.length) {
          const person = sheet();
          persons.push(person);
          people.addChild(person.view);
        }
        while (chests.length < columns.length) {
          const chest = growingChest();
          chests.push(chest);
          looks.addChild(chest.view);
        }
        persons.forEach(({ view }, i) => {
          view.visible = i < row.standing.length;
        });
        chests.forEach(({ view }, i) => {
          view.visible = i < columns.length;
        });
        row.standing.forEach((each, i) => {
          place(entryAt(persons, i), each, Math.abs(each.point.at - now) < SAME, moment.dense, theme);
        });
      }
      // One that is painted anew in a drawing is enough: the next ones follow.
      columns.some(
        ({ point, lens }, i) => entryAt(chests, i).draw(point, lens, moment, theme) && !moment.still,
      );
      blood.draw(columns, moment.time, moment.still, theme);
    },
    release() {
      blood.release();
      for (const each of [...chests, ...persons]) each.release();
    },
  };
}

function place(
  { paint, view }: Painted,
  { point, person: { x, ground, height } }: Standing,
  here: boolean,
  dense: number,
  theme: Theme,
) {
  const size = height / 1000;
  paint(ROOM, size * dense, [0, 0], (ink) => paintPerson(ink, point, here, theme));
  view.position.set(x, ground);
  view.scale.set(size, -size);
}

/** @returns who stands where, and the columns of bodies with a pathway */
function drawRow(
  pens: Pens,
  points: readonly SweepPoint[],
  now: number,
  box: Box,
): { readonly standing: readonly Standing[]; readonly columns: readonly Column[] } {
  const { type, theme } = pens;
  const need = needOf(points, pens.words, type, theme);
  const shown = shownOf(points, box.width, need);
  const isHere = ({ at }: SweepPoint) => Math.abs(at - now) < SAME;
  const pathway = hasPathway(entryAt(points, 0).request.stage);
  const columns = pathway ? columnsOf(shown, box, type, need) : [];
  const standing: readonly Standing[] = pathway ? columns : standingOf(shown, box, type);
  if (pathway) {
    for (const column of columns) drawColumn(pens, column);
    writeBar(pens, entryAt(columns, 0));
  }
  for (const { point, person } of standing) {
    drawShadow(pens, person, isHere(point));
    write(pens, ageLine(point, isHere(point), type, theme), person.x, person.ground + 0.6 * type);
  }
  return { standing, columns };
}

function standingOf(shown: readonly SweepPoint[], box: Box, type: number): readonly Standing[] {
  const step = box.width / shown.length;
  const tallest = Math.max(10, Math.min(box.height - LETTERS * type, (step * BODY) / WIDE));
  return shown.map((point, i) => ({
    point,
    person: {
      x: box.x + step * (i + 0.5),
      ground: box.y + box.height - LETTERS * type,
      height: tallest * bodyScale(point.at, lastOf(shown).at),
    },
  }));
}

function drawShadow({ under, theme: { colour } }: Pens, { x, ground, height }: PersonPlace, lit: boolean) {
  under.ellipse(x, ground, 0.17 * height, 0.024 * height);
  if (lit) under.fill({ color: colour.accent, alpha: 0.5 });
  else under.fill({ color: colour.hair, alpha: 0.4 });
}

function drawColumn(pens: Pens, { point, lens, radius, person, left, wide, words: top }: Column): void {
  const { wedges, over, type, theme } = pens;
  const { at, radius: small } = windowOf(point.request.body.ageYears);
  const size = person.height / 1000;
  drawWedge(
    wedges,
    { at: [person.x + size * at[0], person.ground - size * at[1]], radius: size * small },
    { at: [lens.x, lens.y], radius },
    theme,
  );
  over.circle(lens.x, lens.y, radius).stroke({ color: theme.colour.inkSoft, width: 1.6 });
  drawWidths(over, point, lens, theme);
  const { trunk, ivc } = pathwaySizes(point.request);
  const lines = widthLines(point, type, theme);
  const longOf = (line: Line) => pens.words.measure({ lines: [line], bare: true }, theme).width;
  const bars = Math.max(trunk, ivc) * lens.perMillimetre + 0.5 * type;
  const whole = bars + Math.max(...lines.map(longOf));
  const x = Math.max(left, Math.min(lens.x - whole / 2, left + wide - whole));
  lines.forEach((line, i) => {
    const y = top + i * LINE * type;
    const words = { lines: [line], x: x + bars, y, bare: true } as const;
    const { height } = pens.words.write(words, theme);
    const [millimetres, colour] = [
      [trunk, tubeColour(theme)],
      [ivc, veinColour(theme)],
    ][i] ?? [0, ""];
    if (!millimetres) return;
    const long = Number(millimetres) * lens.perMillimetre;
    drawScaleBar(
      over,
      { x: x + long / 2, y: y + height / 2, long, end: 0.28 * type, width: 2 },
      String(colour),
    );
  });
}

/** Of the lenses, over the first one. */
function writeBar({ over, words, type, theme }: Pens, { lens, radius }: Column): void {
  const color = theme.colour.inkSoft;
  const y = lens.y - radius - 0.8 * type;
  const long = BAR * lens.perMillimetre;
  drawScaleBar(over, { x: lens.x, y, long, end: 0.25 * type, width: 1.5 }, color);
  const line = { words: formatQuantity(BAR, "mm"), size: type * 0.9, colour: color };
  words.write({ lines: [line], x: lens.x, y: y - 0.35 * type, anchor: [0.5, 1], bare: true }, theme);
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
    return Math.max(age, ...widthLines(point, type, theme).map(wide)) + 3 * type;
  });
  return Math.max(...widest) + type;
}
