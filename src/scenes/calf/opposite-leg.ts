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
import { type Opposite, oppositeOf } from "./squeezes.ts";

/** From knee to ankle, plane units. */
const CALF: Room = { left: 72, top: 150, right: 452, bottom: 800 };
/** CSS px of a plane unit at least, or nothing could be told. */
const MIN_SCALE = 0.28;
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

/** Where it and its words stand between the living leg and `right`; null where there is no room. @param fit of the living leg */
export function roomBeside(
  fit: Fit,
  right: number,
  labels: boolean,
  type: Sizes,
): { readonly words: Box; readonly leg: Box } | null {
  const left = fit.x + BEFORE * fit.scale + (labels ? NAMES : AIR) * type.axis;
  const wide = right - AIR * type.axis - left;
  const words = type.label * present(WORDS.find(([across]) => wide < across * type.label))[1];
  const high = FOOT * fit.scale - words;
  const [across, down] = [CALF.right - CALF.left, CALF.bottom - CALF.top];
  const scale = Math.min(SMALLER * fit.scale, wide / across, high / down);
  if (scale < MIN_SCALE) return null;
  const height = scale * down;
  const y = fit.y + (high - height) / 2;
  return {
    words: { x: left, y, width: wide, height: words },
    leg: { x: left, y: y + words, width: wide, height },
  };
}

export interface OppositeLeg {
  readonly view: Container;
  /** @param room nothing is shown without one. @returns what it shows; null while nothing is */
  draw(shown: Shown, room: Box | null, theme: Theme): Opposite | null;
  release(): void;
}

interface Shown {
  readonly circulation: Circulation;
  readonly valves: LegValves | null;
  /** s of blood time */
  readonly time: number;
}

export function oppositeLeg(): OppositeLeg {
  const view = new Container();
  let picture: Leg | null = null;
  let drawn: readonly unknown[] = [];
  return {
    view,
    draw({ circulation, valves, time: now }, room, theme) {
      const { traces } = circulation;
      const opposite = valves && room && oppositeOf(traces, now);
      view.visible = Boolean(opposite);
      if (!opposite) return null;
      const { time } = opposite;
      const next = [circulation, phaseOf(traces, time).toFixed(3), theme, ...Object.values(room)];
      if (next.every((each, i) => each === drawn[i])) return opposite;
      drawn = next;
      picture ??= leg(CALF);
      view.addChild(picture.view);
      const { below, cycle } = valves;
      const open = { out: valueAt(traces, cycle.out, time), in: valueAt(traces, cycle.in, time) };
      picture.draw({ circulation, valves: { ...open, below }, time, still: true }, room, theme);
      return opposite;
    },
    release: () => picture?.release(),
  };
}
