/** The same calf in its other state, small beside the living one, so that one still shows what the pump does: at its hardest squeeze while that rests, filling while that squeezes. */
import { Container } from "pixi.js";
import type { LegValves } from "../../chain/leg-valves.ts";
import { present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Fit } from "../drawing/split.ts";
import { phaseOf, valueAt } from "../drawing/trace-clock.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";
import { type Leg, leg } from "./leg.ts";
import { BEFORE } from "./leg-names.ts";
import type { Room } from "./leg-tissues.ts";
import { oppositeOf } from "./squeezes.ts";

/** From knee to ankle, plane units. */
const CALF: Room = { left: 72, top: 150, right: 452, bottom: 800 };
/** CSS px of a plane unit at least, or nothing could be told. */
const MIN_SCALE = 0.25;
/** Plane units of a strip of its muscle. */
const STEP = 10;
/** Of the living leg's scale, at most. */
const SMALLER = 0.8;
/** In sizes of type: names beside the living leg, and air on both sides. */
const [NAMES, AIR] = [8.6, 1.2];
/** Heights of the words above, where they have so little room across that they break into more lines, in sizes of type. */
const WORDS: readonly (readonly [across: number, high: number])[] = [
  [9, 5.5],
  [14, 4.4],
  [Number.POSITIVE_INFINITY, 3.2],
];
/** Plane units: where the foot rises highest below it, so that it must end there. */
const FOOT = 800;

/** The lens on a valve, and the words under it. */
export interface LensPlace {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly words: Box;
}

export interface Beside {
  readonly words: Box;
  readonly leg: Box;
  /** null where there is no room */
  readonly lens: LensPlace | null;
}

/** Parts of the height that the leg leaves to the lens, and radii of that: least, greatest of the room's width, CSS px. */
const LENS = { leg: 0.56, least: 44, wide: 0.46 } as const;

interface Place {
  readonly fit: Fit;
  /** CSS px: from where there is room, and how wide it is */
  readonly left: number;
  readonly wide: number;
}

/** @param part of the height for the leg and its words; the rest is for the lens */
function layOut({ fit, left, wide }: Place, part: number, type: Sizes): Beside | null {
  const words = type.label * present(WORDS.find(([across]) => wide < across * type.label))[1];
  const all = FOOT * fit.scale;
  const [across, down] = [CALF.right - CALF.left, CALF.bottom - CALF.top];
  const scale = Math.min(SMALLER * fit.scale, wide / across, (part * all - words) / down);
  if (scale < MIN_SCALE) return null;
  const foot = fit.y + words + scale * down;
  const under = 5 * type.axis;
  const radius = Math.min(LENS.wide * wide, (fit.y + all - foot - under - type.axis) / 2);
  const y = foot + type.axis + radius;
  const lens = {
    x: left + wide / 2,
    y,
    radius,
    words: { x: left, y: y + radius + 0.5 * type.axis, width: wide, height: under },
  };
  return {
    words: { x: left, y: fit.y, width: wide, height: words },
    leg: { x: left, y: fit.y + words, width: wide, height: scale * down },
    lens: radius < LENS.least ? null : lens,
  };
}

/** Where it, its words and the lens stand between the living leg and `right`; null where there is no room. @param fit of the living leg */
export function roomBeside(fit: Fit, right: number, labels: boolean, type: Sizes): Beside | null {
  const left = fit.x + BEFORE * fit.scale + (labels ? NAMES : AIR) * type.axis;
  const place = { fit, left, wide: right - AIR * type.axis - left };
  const both = layOut(place, LENS.leg, type);
  return both?.lens ? both : layOut(place, 1, type);
}

/** Plane units: behind the ankle, and under the calf muscle's name; the least radius, CSS px, and height of the words in sizes of type. */
const BEHIND = { right: 130, top: 372, bottom: 1000, least: 30, words: [1.9, 4.2] } as const;

/** Where the lens stands in an upright picture, behind the ankle. @param fit of the living leg. @param left CSS px to which there is room */
export function lensBehind({ x, y, scale }: Fit, left: number, type: Sizes): LensPlace | null {
  const [top, bottom] = [y + BEHIND.top * scale, y + BEHIND.bottom * scale];
  const wide = x + BEHIND.right * scale - left;
  const fits = (lines: number) => Math.min(wide, bottom - top - lines * type.axis) / 2;
  const [few, more] = BEHIND.words;
  const roomy = fits(more) > 2 * BEHIND.least;
  const radius = fits(roomy ? more : few);
  if (radius < BEHIND.least) return null;
  const height = (roomy ? more : few) * type.axis;
  const at = bottom - height - radius;
  return {
    x: left + radius,
    y: at,
    radius,
    words: { x: left, y: at + radius + 0.4 * type.axis, width: Math.max(2 * radius, 7 * type.axis), height },
  };
}

export interface OppositeLeg {
  readonly view: Container;
  /** @param room nothing is shown without one. @returns s of blood time that it shows; null while nothing is */
  draw(shown: Shown, room: Box | null, theme: Theme): number | null;
  release(): void;
}

interface Shown {
  readonly circulation: Circulation;
  readonly valves: LegValves | null;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
}

export function oppositeLeg(): OppositeLeg {
  const view = new Container();
  let picture: Leg | null = null;
  let drawn: readonly unknown[] = [];
  return {
    view,
    draw({ circulation, valves, time: now, still }, room, theme) {
      const { traces } = circulation;
      const time = valves && room ? oppositeOf(traces, now) : null;
      view.visible = time !== null;
      if (!valves || !room || time === null) return null;
      const next = [circulation, phaseOf(traces, time).toFixed(3), still, theme, ...Object.values(room)];
      if (next.every((each, i) => each === drawn[i])) return time;
      drawn = next;
      picture ??= leg(CALF, STEP);
      view.addChild(picture.view);
      const { below, cycle } = valves;
      const open = { out: valueAt(traces, cycle.out, time), in: valueAt(traces, cycle.in, time) };
      picture.draw({ circulation, valves: { ...open, below }, time, still }, room, theme);
      return time;
    },
    release: () => picture?.release(),
  };
}
