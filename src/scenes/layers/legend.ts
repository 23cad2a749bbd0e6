/** What the colours and shapes of this moment mean; always on. */
import type { Graphics } from "pixi.js";
import { formatNumber, formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { ORIGINS } from "../../sim/tracers/tracers.ts";
import type { Colouring, Overlay } from "../../state/scene-state.ts";
import { roundOf } from "../anatomy/tones.ts";
import type { Sheet } from "../drawing/drawing-sheet.ts";
import type { Lain } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import { bloodColour, markColour, OXYGEN } from "../theme/colour.ts";
import { LEGIBLE, type MapName, mapColour } from "../theme/maps.ts";
import { SCALES } from "./scales.ts";

export interface LegendFacts {
  readonly colouring: Colouring;
  readonly overlay: Overlay;
  /** % by ORIGINS, for the oxygen colouring */
  readonly saturations: readonly [number, number, number];
  /** by ORIGINS: whether blood of that origin is in the picture */
  readonly origins: readonly boolean[];
  /** % of the blood from the lungs and of that which leaves the heart, where marks of both are in the picture */
  readonly heart: readonly [lungs: number, mixed: number] | null;
  /** % of what returns to a heart with two ventricles and of what leaves it, where one is in the picture: its blood is coloured by its oxygen */
  readonly pumped: readonly [poor: number, rich: number] | null;
  /** nothing moves: marks are darts */
  readonly still: boolean;
  readonly dyed: boolean;
  /** clauses after the key: the play speed in words, "equal inflow" ... */
  readonly remarks: readonly string[];
}

export interface LegendPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** one after another like words in a line, instead of one below another */
  readonly inline: boolean;
}

/** A key under construction: items one below another, or one after another like words in a line. */
interface Row {
  /** where the next item begins */
  readonly x: number;
  readonly y: number;
  /** Begins a new line where the next item would not fit. */
  roomFor(width: number): void;
  text(says: string, left: number, soft: boolean, breaks: boolean): Lain;
  /** `lead`: px that a mark in front takes; `mark` draws it with its left edge at x. */
  item(says: string, soft: boolean, lead?: number, mark?: (left: number) => void): void;
  /** all the room taken */
  readonly room: Box;
}

/** Height of a line of the key, in sizes of its type. */
export const LINE = 1.5;

function rowAt({ words, sizes, theme }: Sheet, at: LegendPlace): Row {
  const size = sizes.axis;
  const row = size * LINE;
  const right = at.x + at.width;
  let x = at.x;
  let y = at.y;
  let widest = 0;
  const text = (says: string, left: number, soft: boolean, breaks: boolean): Lain =>
    words.write(
      {
        lines: [{ words: says, size, colour: soft ? theme.colour.inkSoft : theme.colour.ink }],
        x: left,
        y,
        bare: true,
        ...(breaks ? { wrap: Math.max(4 * size, right - left) } : {}),
      },
      theme,
    );
  const roomFor = (width: number) => {
    if (!at.inline || x === at.x || x + width <= right) return;
    x = at.x;
    y += row;
  };
  return {
    get x() {
      return x;
    },
    get y() {
      return y;
    },
    roomFor,
    text,
    item(says, soft, lead = 0, mark) {
      roomFor(lead + says.length * size * 0.5);
      mark?.(x);
      const lain = text(says, x + lead, soft, mark === undefined);
      widest = Math.max(widest, lain.x + lain.width - at.x);
      if (at.inline) x = lain.x + lain.width + 1.3 * size;
      else y += Math.max(row, lain.height + size * 0.25);
    },
    get room() {
      return { x: at.x, y: at.y, width: widest, height: (at.inline ? y + row : y) - at.y };
    },
  };
}

/** Percent of oxygen saturation from which mixed blood looks other than that from the lungs. */
const MIXED = 4;

/** Draws the key with its top left corner at the place; returns the room it took. */
export function drawLegend(sheet: Sheet, facts: LegendFacts, at: LegendPlace): Box {
  const { ink, sizes, theme } = sheet;
  const { colour } = theme;
  const size = sizes.axis;
  const row = rowAt(sheet, at);
  const marked = (says: string, draw: typeof shape, index: number, tone: string) =>
    row.item(says, false, 1.5 * size, (left) =>
      draw(ink, index, [left + size * 0.55, row.y + size * 0.62], size * 0.36, tone),
    );

  if (facts.origins.some(Boolean)) {
    const { overlay, colouring } = facts;
    row.item(
      theme.say(overlay === "none" ? `scene.legend.${colouring}` : `scene.legend.map.${overlay}`),
      true,
    );
    if (overlay !== "none" || colouring === "speed" || colouring === "age")
      drawScale(
        sheet,
        row,
        overlay === "none" ? (colouring as MapName) : overlay,
        at.width,
        overlay === "none",
      );
    else {
      ORIGINS.forEach((origin, index) => {
        if (!facts.origins[index]) return;
        const saturation = entryAt(facts.saturations, index);
        const tone = colouring === "origin" ? entryAt(colour.origin, index) : bloodColour(colour, saturation);
        const says =
          colouring === "oxygen"
            ? theme.say(`scene.oxygen.${origin}`, { saturation: formatQuantity(saturation, "%") })
            : theme.say(`scene.origin.${origin}`);
        marked(says, shape, index, tone);
      });
      if (colouring === "oxygen") drawOxygen(sheet, row, at.width);
      else if (facts.heart) {
        const [lungs, mixed] = facts.heart;
        marked(theme.say("scene.origin.lungs"), shape, 0, bloodColour(colour, lungs));
        if (lungs - mixed > MIXED)
          marked(theme.say("scene.origin.mixed"), shape, 0, bloodColour(colour, mixed));
      }
    }
  }
  if (facts.pumped) {
    const [said, draw] = facts.still ? ["Still", dart] : ["", shape];
    const [poor, rich] = facts.pumped;
    marked(theme.say(`further.legend.poor${said}`), draw, 0, markColour(colour, poor));
    marked(theme.say(`further.legend.rich${said}`), draw, 1, markColour(colour, rich));
  }
  if (facts.colouring === "origin" && !at.inline && (facts.heart ?? facts.pumped)) {
    row.item(theme.say("scene.legend.oxygen"), true);
    drawOxygen(sheet, row, BRIEF * size, true);
  }
  if (facts.dyed) marked(theme.say("scene.legend.dye"), shape, 0, colour.dye);
  for (const remark of facts.remarks) row.item(remark, true);
  return row.room;
}

/** Ends of a scale in words, and its colour at a part of the way. */
interface Bar {
  readonly low: string;
  readonly high: string;
  readonly colourAt: (part: number) => string | [number, number, number];
  /** of its upper and its lower edge, where it stands for a vessel; one line around all of it when left out */
  readonly wallAt?: (part: number) => string;
}

/** @param legible the bar shows the part of the map in which marks are drawn, not the whole of it */
function drawScale(sheet: Sheet, row: Row, map: MapName, room: number, legible: boolean): void {
  const { theme } = sheet;
  const [from, to] = legible ? LEGIBLE[theme.name] : [0, 1];
  const { least, most, unit, digits } = SCALES[map];
  // Where heat arises is a picture only: a number on it would be read as the pathway's loss.
  const [low, high] =
    map === "loss"
      ? [theme.say("scene.legend.little"), theme.say("scene.legend.much")]
      : [
          least === 0
            ? formatNumber(0, 0)
            : theme.say("scene.legend.orLess", { value: formatNumber(least, digits) }),
          theme.say("scene.legend.orMore", { value: formatQuantity(most, unit, digits) }),
        ];
  drawBar(sheet, row, room, {
    low,
    high,
    colourAt: (part) => [...mapColour(map, from + (to - from) * part)],
  });
}

/** Sizes of type that the bar takes twice where it explains the vessels beside the marks' own key. */
const BRIEF = 10;

/** @param brief its ends' values alone */
function drawOxygen(sheet: Sheet, row: Row, room: number, brief = false): void {
  const { theme } = sheet;
  const { least, most } = OXYGEN;
  const [low, high] = [formatQuantity(least, "%"), formatQuantity(most, "%")];
  const at = (part: number) => least + (most - least) * part;
  drawBar(
    sheet,
    row,
    room,
    brief
      ? {
          low,
          high,
          colourAt: (part) => roundOf(at(part), theme).body,
          wallAt: (part) => roundOf(at(part), theme).wall,
        }
      : {
          low: theme.say("scene.legend.orLess", { value: low }),
          high: theme.say("scene.legend.orMore", { value: high }),
          colourAt: (part) => bloodColour(theme.colour, at(part)),
        },
  );
}

/** Low end, bar, high end, as one item. */
function drawBar({ ink, sizes, theme }: Sheet, row: Row, room: number, { low, high, ...look }: Bar): void {
  const { colourAt, wallAt } = look;
  const size = sizes.axis;
  const width = Math.min(room * 0.5, size * 8);
  const bar = (left: number) => {
    const steps = 48;
    const [top, high] = [row.y + size * 0.25, size * 0.75];
    const wall = 0.12 * size;
    for (let i = 0; i < steps; i++) {
      const [from, part] = [left + (width * i) / steps, (i + 0.5) / steps];
      // The next one lies over its end, so that nothing behind shows between them.
      const wide = width / steps + (i < steps - 1 ? 1 : 0);
      ink.rect(from, top, wide, high).fill({ color: colourAt(part) });
      for (const edge of wallAt ? [top - wall, top + high] : [])
        ink.rect(from, edge, wide, wall).fill({ color: wallAt?.(part) ?? "" });
    }
    if (!wallAt) ink.rect(left, top, width, high).stroke({ width: 1, color: theme.colour.hair });
  };
  row.roomFor(width + (low.length + high.length + 4) * size * 0.55);
  const before = row.text(low, row.x, false, false).width + size * 0.4;
  row.item(high, false, before + width + size * 0.4, (left) => bar(left + before));
}

type At = readonly [x: number, y: number];

/** The head shapes of layers/tracer-mesh.ts, large. */
function shape(ink: Graphics, index: number, [x, y]: At, radius: number, color: string): void {
  if (index === 0) ink.circle(x, y, radius).fill({ color });
  else if (index === 1) ink.circle(x, y, radius * 0.85).stroke({ width: radius * 0.6, color });
  else
    ink
      .poly([x - radius * 1.2, y, x, y - radius * 1.2, x + radius * 1.2, y, x, y + radius * 1.2])
      .fill({ color });
}

/** A still mark that points the way of the blood: full, or (1) open. */
function dart(ink: Graphics, index: number, [x, y]: At, radius: number, color: string): void {
  ink.poly([x - radius, y - radius, x + 1.3 * radius, y, x - radius, y + radius]);
  if (index === 0) ink.fill({ color });
  else ink.stroke({ width: radius * 0.5, color });
}
