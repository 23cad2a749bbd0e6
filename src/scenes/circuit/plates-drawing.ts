/** The numbers on the schematic: measured, arranged about the body, written on plates and joined to their places. */
import type { Graphics } from "pixi.js";
import { formatQuantity } from "../../i18n/index.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Lettering, Note } from "../drawing/lettering.ts";
import type { Fit } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { type Sizes, sizes } from "../theme/type.ts";
import { arrange, type Block, CHEST, type Extent } from "./arrange.ts";
import type { Laid } from "./dots.ts";
import { drawLevel, levelWidth } from "./level.ts";
import { onVessel } from "./on-vessel.ts";
import { type Plate, platesOf } from "./plates.ts";

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
  /** stage, output and saturation written above; elsewhere they stand beside the picture */
  readonly titled: boolean;
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
const NARROWEST_TITLE = 6;

/** mmHg with one decimal where a single mmHg matters. */
const pressureWords = (value: number): string => formatQuantity(value, "mmHg", Math.abs(value) < 30 ? 1 : 0);

const titleOf = ({ request, flows, saturations }: Circulation, type: Sizes, theme: Theme) => ({
  lines: [
    { words: theme.say(`stage.${request.stage}`), size: type.label, colour: theme.colour.ink, bold: true },
    {
      words: theme.say("further.circuit.caption", {
        output: formatQuantity(flows.systemic, "L/min", 1),
        saturation: formatQuantity(saturations.arterial, "%"),
      }),
      size: type.axis,
      colour: theme.colour.inkSoft,
    },
  ],
});

/** CSS px to the left of a body that has the whole box. */
function freeBeside(blocks: readonly Block[], box: Box, gap: number, extent: Extent): number {
  const { fit } = arrange(blocks, box, gap, extent);
  return fit.x + extent.left * fit.scale - 2 * gap - box.x;
}

/** Writes the pane's title and plates; returns how the plane lies in the box and where the plates stand. */
export function drawPlates(
  words: Lettering,
  leaders: Graphics,
  contents: PaneContents,
  vessels: readonly Laid[],
  box: Box,
  floor: number,
  theme: Theme,
): { readonly fit: Fit; readonly standing: readonly Standing[] } {
  const { circulation, compared } = contents;
  const { colour } = theme;
  const { stage } = circulation.request;
  const type = sizes(box.height, floor);
  const few = box.height < 30 * type.label;
  const inSight = (plate: Plate) =>
    contents.extent !== CHEST || (!plate.organ && plate.at[1] < contents.extent.bottom);
  const plates = contents.labels
    ? platesOf(stage).filter((plate) => inSight(plate) && (!few || plate.first))
    : [];
  const noteOf = (plate: Plate): Note => ({
    lines: [
      { words: theme.say(`further.place.${plate.name}`), size: type.axis, colour: colour.inkSoft },
      {
        words: pressureWords(circulation.pressures[plate.pressure]),
        size: type.label,
        colour: colour.ink,
        bold: true,
      },
    ],
    x: 0,
    y: 0,
    lit: contents.focus === plate.name,
  });

  words.begin();
  const blocks = plates.map((plate) => {
    const { width, height } = words.write(noteOf(plate), theme);
    const column = plate.organ && compared ? levelWidth(type.label) : 0;
    return { plate, column, width: width + column, height: column > 0 ? type.label * 4.6 : height };
  });
  words.begin();
  /** Plates that stand one above another within the height; an organ's level before the rest where states are compared. */
  const fitting = (height: number) =>
    (["left", "right"] as const).flatMap((side) => {
      let left = height;
      return blocks
        .filter(({ plate }) => plate.side === side)
        .sort((a, b) => b.column - a.column)
        .filter((block) => {
          left -= block.height + type.label * 0.42;
          return left >= 0;
        })
        .sort((a, b) => a.plate.at[1] - b.plate.at[1]);
    });
  const gap = type.label * 0.7;
  const title = titleOf(circulation, type, theme);
  // Beside a wide body the title has the corner to itself, over the plates; where they need the room, the body begins below.
  const blocksBeside = fitting(box.height);
  const corner = freeBeside(blocksBeside, box, gap, contents.extent);
  const head = words.measure({ ...title, wrap: corner }, theme).height + gap;
  const need = blocksBeside
    .filter(({ plate }) => plate.side === "left")
    .reduce((sum, { height }) => sum + height + gap, 0);
  const cornered = corner > NARROWEST_TITLE * type.label && head + need < box.height;
  const wrap = cornered ? corner : box.width - type.label * 2;
  const titled = contents.titled ? words.write({ ...title, x: box.x, y: box.y, wrap }, theme) : null;
  const below = titled && !cornered ? titled.height + type.label * 0.6 : 0;
  const area = { ...box, y: box.y + below, height: box.height - below };
  const wanted = fitting(area.height);
  const { fit, places: all } = arrange(wanted, area, gap, contents.extent, titled && cornered ? head : 0);
  // Rather none than one over blood.
  const clear = wanted.map(({ width, height }, i) => !onVessel(vessels, fit, { ...all[i]!, width, height }));
  const shown = wanted.filter((_, i) => clear[i]);
  const places = all.filter((_, i) => clear[i]);

  leaders.clear();
  if (shown.length === 0 && plates.length > 0) {
    const main = noteOf(plates.find(({ name }) => name === MAIN)!);
    const { height } = words.measure(main, theme);
    const lain = words.write(
      { ...main, x: area.x + area.width / 2, y: area.y + area.height, anchor: [0.5, 1] },
      theme,
    );
    words.end();
    const above = { ...area, height: Math.max(1, area.height - height - gap) };
    return {
      fit: arrange([], above, gap, contents.extent).fit,
      standing: [{ name: MAIN, ...lain }],
    };
  }
  const standing = shown.map(({ plate, column, width, height }, i) => {
    const place = places[i]!;
    const onLeft = plate.side === "left";
    const middle = place.y + height / 2;
    const lain = words.write(
      { ...noteOf(plate), x: onLeft ? place.x + width : place.x, y: middle, anchor: [onLeft ? 1 : 0, 0.5] },
      theme,
    );
    const lit = contents.focus === plate.name;
    const [x, y] = [fit.x + plate.at[0] * fit.scale, fit.y + plate.at[1] * fit.scale];
    const from = onLeft ? place.x + width : place.x;
    leaders
      .moveTo(from, middle)
      .lineTo(x, y)
      .stroke({ color: lit ? colour.accent : colour.hair, width: lit ? 2.5 : 1.2 });
    leaders
      .circle(x, y, Math.max(3, type.axis * 0.19))
      .fill(colour.ink)
      .stroke({ color: colour.stage, width: 1.5 });
    if (column > 0) {
      const value = circulation.pressures[plate.pressure];
      const before = contents.against?.pressures[plate.pressure] ?? null;
      const left = onLeft ? place.x : place.x + width - column;
      drawLevel(leaders, { x: left, middle, height, value, before }, type.label, theme);
    }
    return { name: plate.name, ...lain };
  });
  words.end();
  return { fit, standing };
}
