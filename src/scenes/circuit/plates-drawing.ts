/** The numbers on the schematic: measured, arranged about the body, written on plates and joined to their places. */

import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { ageWords } from "../drawing/age-words.ts";
import type { Look, Sheet } from "../drawing/drawing-sheet.ts";
import type { Note } from "../drawing/lettering.ts";
import type { Fit } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import { type Arranged, arrange, type Block, CHEST } from "./arrange.ts";
import type { Laid } from "./dots.ts";
import { innerEdge, type Joined, middleOf, turnsOf } from "./hairlines.ts";
import { drawLevel, levelWidth } from "./level.ts";
import { onVessel } from "./on-vessel.ts";
import { type Plate, platesOf } from "./plates.ts";
import { type Extent, proportionsOf } from "./proportions.ts";
import type { Marks } from "./two-ventricles/heart-marks.ts";

/** CSS px of the box's corner on the left that a key takes: no plate stands there, no hairline crosses it. */
export interface KeyRoom {
  readonly tall: number;
  readonly wide: number;
}

export interface PaneContents {
  readonly circulation: Circulation;
  /** the first pane's circulation when this one is compared with it */
  readonly against: Circulation | null;
  /** levels beside the organs: two states are shown */
  readonly compared: boolean;
  readonly time: number;
  /** nothing moves */
  readonly still: boolean;
  readonly labels: boolean;
  readonly focus: string | null;
  readonly extent: Extent;
  /** how the plane lies in its box; as its plates leave room where left out */
  readonly fit?: Fit;
  readonly key?: KeyRoom;
  /** marks by origin in heart and lungs, where they move */
  readonly marks?: Marks;
  /** stage, output and saturation written above; elsewhere they stand beside the picture */
  readonly titled: boolean;
  /** what sets it apart from another pane of its stage, or nothing */
  readonly apart?: string | undefined;
}

export interface Standing {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where no plate has room beside its part, this one stands beneath the body, named and without a hairline. */
const MAIN = "svc";

/** In sizes of type. */
const NARROWEST_TITLE = 8;

/** mmHg with one decimal where a single mmHg matters. */
const pressureWords = (value: number): string => formatQuantity(value, "mmHg", Math.abs(value) < 30 ? 1 : 0);

/** A plate with the room that it takes. */
interface Measured extends Block {
  /** CSS px of a level beside the words; 0 without one */
  readonly column: number;
}

/** Where the body may stand, and what its left side leaves free above its plates. */
interface Under {
  readonly area: Box;
  readonly head: number;
}

type Place = Arranged["places"][number];

interface Plates {
  readonly fit: Fit;
  readonly standing: readonly Standing[];
}

/** Writes the pane's title and plates; returns how the plane lies in the box and where the plates stand. */
export function drawPlates(sheet: Sheet, contents: PaneContents, vessels: readonly Laid[], box: Box): Plates {
  const { ink, words, sizes: type } = sheet;
  // Beside arms and hands a narrow pane has room for the first ones and the liver's level alone.
  const narrow = contents.compared && box.width < box.height;
  const plates = platesIn(contents, narrow || box.height < 30 * type.label);
  const gap = type.label * 0.7;
  words.begin();
  const blocks = measured(sheet, contents, plates);
  const { area, head } = contents.titled
    ? writeTitle(sheet, contents, blocks, box)
    : { area: box, head: contents.key?.tall ?? 0 };
  const wanted = fitting(blocks, area.height, type.label * 0.42);
  const { fit, places } = arrange(wanted, area, gap, contents.extent, {
    head,
    wide: contents.key?.wide ?? 0,
    at: contents.fit,
    figure: proportionsOf(contents.circulation).figure,
  });
  // Rather none than one over blood.
  const shown = wanted.flatMap((block, i) => {
    const { width, height } = block;
    const place = entryAt(places, i);
    return onVessel(vessels, fit, { ...place, width, height }) ? [] : [{ block, place }];
  });
  ink.clear();
  const joined = shown.map(({ block, place }) => joinedAt(block, place, fit, contents.extent));
  const turns = turnsOf(joined, 0.45 * type.label);
  const drawn =
    shown.length === 0 && plates.length > 0
      ? writeBeneath(sheet, contents, area, gap)
      : {
          fit,
          standing: shown.map(({ block }, i) =>
            writePlate(sheet, contents, block, {
              ...entryAt(joined, i),
              turn: entryAt(shown, i).place.rises ?? turns[i] ?? null,
            }),
          ),
        };
  words.end();
  return drawn;
}

/** What is to be labelled: all, or where there is room for few the first. */
function platesIn({ circulation, labels, extent }: PaneContents, few: boolean): readonly Plate[] {
  if (!labels) return [];
  const inSight = (plate: Plate) => extent !== CHEST || (!plate.organ && plate.at[1] < extent.bottom);
  return platesOf(circulation.request.stage).filter((plate) => inSight(plate) && (!few || plate.first));
}

function noteOf({ sizes: type, theme }: Look, { circulation, focus }: PaneContents, plate: Plate): Note {
  return {
    lines: [
      {
        words: theme.say(`further.place.${plate.word ?? plate.name}`),
        size: type.axis,
        colour: theme.colour.inkSoft,
      },
      {
        words: pressureWords(circulation.pressures[plate.pressure]),
        size: type.label,
        colour: theme.colour.ink,
        bold: true,
      },
    ],
    x: 0,
    y: 0,
    lit: focus === plate.name,
  };
}

const measured = (sheet: Sheet, contents: PaneContents, plates: readonly Plate[]): readonly Measured[] =>
  plates.map((plate) => {
    const { label } = sheet.sizes;
    const { width, height } = sheet.words.measure(noteOf(sheet, contents, plate), sheet.theme);
    const column = plate.organ && contents.compared ? levelWidth(label) : 0;
    return { plate, column, width: width + column, height: column > 0 ? label * 4.6 : height };
  });

/** Plates that stand one above another within the height; an organ's level before the rest where states are compared. */
const fitting = (blocks: readonly Measured[], height: number, gap: number): readonly Measured[] =>
  (["left", "right"] as const).flatMap((side) => {
    let left = height;
    return blocks
      .filter(({ plate }) => plate.side === side)
      .sort((a, b) => b.column - a.column)
      .filter((block) => {
        left -= block.height + gap;
        return left >= 0;
      })
      .sort((a, b) => a.plate.at[1] - b.plate.at[1]);
  });

/** The stage, and beneath it whose body this is, what it puts out and how red. */
function titleOf({ sizes: type, theme }: Look, { circulation, apart }: PaneContents): Note {
  const { request, flows, saturations } = circulation;
  const args = {
    output: formatQuantity(flows.systemic, "L/min", 1),
    saturation: formatQuantity(saturations.arterial, "%"),
  };
  const age = ageWords(theme.say, request.body.ageYears);
  const caption = `${age}: ${theme.say("further.circuit.caption", args)}`;
  return {
    lines: [
      { words: theme.say(`stage.${request.stage}`), size: type.label, colour: theme.colour.ink, bold: true },
      ...(apart ? [{ words: apart, size: type.axis, colour: theme.colour.ink, bold: true }] : []),
      { words: caption, size: type.axis, colour: theme.colour.inkSoft },
    ],
    x: 0,
    y: 0,
  };
}

/** Beside a wide body the title has the corner to itself, over the plates; where they need the room, the body begins below. */
function writeTitle(sheet: Sheet, contents: PaneContents, blocks: readonly Measured[], box: Box): Under {
  const { words, sizes: type, theme } = sheet;
  const gap = type.label * 0.7;
  const title = { ...titleOf(sheet, contents), x: box.x, y: box.y };
  const beside = fitting(blocks, box.height, type.label * 0.42);
  const { fit } = arrange(beside, box, gap, contents.extent);
  // CSS px to the left of a body that has the whole box
  const corner = fit.x + contents.extent.left * fit.scale - 2 * gap - box.x;
  const head = words.measure({ ...title, wrap: corner }, theme).height + gap;
  const need = beside
    .filter(({ plate }) => plate.side === "left")
    .reduce((sum, { height }) => sum + height + gap, 0);
  if (corner > NARROWEST_TITLE * type.label && head + need < box.height) {
    words.write({ ...title, wrap: corner }, theme);
    return { area: box, head };
  }
  const below = words.write({ ...title, wrap: box.width - type.label * 2 }, theme).height + type.label * 0.6;
  return { area: { ...box, y: box.y + below, height: box.height - below }, head: 0 };
}

/** The main plate alone, beneath a body that has no room for any beside it. */
function writeBeneath(sheet: Sheet, contents: PaneContents, area: Box, gap: number): Plates {
  const plate = present(platesOf(contents.circulation.request.stage).find(({ name }) => name === MAIN));
  const at = { x: area.x + area.width / 2, y: area.y + area.height, anchor: [0.5, 1] as const };
  const lain = sheet.words.write({ ...noteOf(sheet, contents, plate), ...at }, sheet.theme);
  const above = { ...area, height: Math.max(1, area.height - lain.height - gap) };
  const { fit } = arrange([], above, gap, contents.extent, { at: contents.fit });
  return { fit, standing: [{ name: MAIN, ...lain }] };
}

/** A plate and its part: over the body the line between them is level, it slants beside this alone. */
function joinedAt({ plate, width, height }: Measured, place: Place, fit: Fit, extent: Extent): Joined {
  const onLeft = plate.side === "left";
  const box = { ...place, width, height };
  const to = [fit.x + plate.at[0] * fit.scale, fit.y + plate.at[1] * fit.scale] as const;
  const from = innerEdge({ onLeft, box });
  const beside = fit.x + (onLeft ? extent.left : extent.right) * fit.scale;
  const bend = onLeft ? Math.max(from, Math.min(beside, to[0])) : Math.min(from, Math.max(beside, to[0]));
  return { onLeft, box, to, bend };
}

/** One plate at its place, its hairline to the vessel, and its level where it has one. */
function writePlate(
  sheet: Sheet,
  contents: PaneContents,
  { plate, column, height }: Measured,
  joined: Joined & { readonly turn: number | null },
): Standing {
  const { ink, words, sizes: type, theme } = sheet;
  const { colour } = theme;
  const { onLeft, box, turn } = joined;
  const [x, y] = joined.to;
  const middle = middleOf(box);
  const from = innerEdge(joined);
  const note = noteOf(sheet, contents, plate);
  const lain = words.write({ ...note, x: from, y: middle, anchor: [onLeft ? 1 : 0, 0.5] }, theme);
  ink.moveTo(from, middle);
  if (turn === null) ink.lineTo(joined.bend, y);
  else ink.lineTo(turn, middle).lineTo(turn, y);
  ink.lineTo(x, y).stroke({ color: note.lit ? colour.accent : colour.hair, width: note.lit ? 2.5 : 1.2 });
  ink
    .circle(x, y, Math.max(3, type.axis * 0.19))
    .fill(colour.ink)
    .stroke({ color: colour.stage, width: 1.5 });
  if (column > 0) {
    const value = contents.circulation.pressures[plate.pressure];
    const before = contents.against?.pressures[plate.pressure] ?? null;
    const left = onLeft ? box.x : box.x + box.width - column;
    drawLevel(ink, { x: left, middle, height, value, before }, type.label, theme);
  }
  return { name: plate.name, ...lain };
}
