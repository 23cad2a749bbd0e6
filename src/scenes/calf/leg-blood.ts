/** The deep vein's blood at a moment: dots between wall and cusps, each as long as its blood is fast. */
import type { LegValves } from "../../chain/leg-valves.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { saturationOf } from "../circuit/circuit-blood.ts";
import { type Streaks, shapeOf } from "../drawing/streaks.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import { markColour, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type BloodColumn, legTraces } from "./blood-column.ts";
import { footTurn } from "./foot.ts";
import { freeHalfWidth, halfWidth, placeInLeg, pressedAt, STANDS, VALVES } from "./vein.ts";

export interface LegState {
  readonly circulation: Circulation;
  /** null until they are computed: drawn shut */
  readonly valves: Omit<LegValves, "cycle"> | null;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
}

/** Gives each dot a rank of no order that shows; how fast one whose rank has no room fades. */
const ODD = 0.7548776662;
const FADE = 5;
/** Half a dot, and how near it comes to the wall. */
const DOT = 3.6;

/** Plane units: an arrowhead's length at next to no flow, and what it gains with each L/min for each m2 of body. */
const POINTED = { least: 13, grows: 9 } as const;

/** Along the vein, plane units: what is shown of it. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Sets the column's dots. */
export function placeBlood(
  blood: Streaks,
  column: BloodColumn,
  { circulation, valves, time, still }: LegState,
  { open, from, to }: Span & { readonly open: readonly number[] },
  theme: Theme,
): void {
  const { traces, request } = circulation;
  const legs = legTraces(traces);
  const pressed = pressedAt(traces, time);
  const turn = footTurn(pressed);
  const saturation = saturationOf(circulation, "ivc");
  const colour = tintOf(markColour(theme.colour, saturation));
  const flowing = (flow: Float64Array | undefined) => (flow ? Math.abs(valueAt(traces, flow, time)) : 0);
  const [out, entering] = [flowing(legs?.out), flowing(valves?.below ?? legs?.in)];
  let shown = 0;
  column.each(time, pressed, (dot, at, across) => {
    if (at < from || at > to) return;
    const free = freeHalfWidth(at, pressed, open);
    // Between cusps that are shut there is room for few.
    const crowd = free / halfWidth(at, pressed) - ((dot * dot * ODD) % 1);
    const speed = Math.max(at < VALVES[1].at ? out : 0, at > VALVES[0].at ? entering : 0);
    const points = still && speed > STANDS;
    const { spot, up } = placeInLeg(at, across * Math.max(0, free - DOT - 3), turn);
    blood.set(shown++, {
      x: spot[0],
      y: spot[1],
      angle: Math.atan2(up[1], up[0]),
      length: points
        ? Math.min(POINTED.least + (POINTED.grows * speed) / request.body.bsa, 1.8 * free)
        : Math.min(2.2 * free, 9 + Math.min(22, (13 * speed) / request.body.bsa)),
      width: Math.min((points ? 3.6 : 2) * DOT, 1.2 * free),
      colour,
      shape: shapeOf(false, points),
      alpha: still && dot % 3 !== 0 ? 0 : Math.min(1, Math.max(0, 1 + FADE * crowd)),
    });
  });
  blood.resize(shown);
}
