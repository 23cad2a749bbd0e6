/** One lower leg: the deep vein, muscles that squeeze it, valves, and the blood between them. */
import { Container, Graphics } from "pixi.js";
import type { LegValves } from "../../chain/leg-valves.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { servesAt, sheet } from "../anatomy/painted-sheet.ts";
import { saturationOf } from "../circuit/circuit-blood.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import { type Streaks, shapeOf, streaks } from "../drawing/streaks.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import type { Box } from "../scene.ts";
import { markColour, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type BloodColumn, bloodColumn, legTraces } from "./blood-column.ts";
import { FASCIA, SKIN, TIBIA } from "./leg-parts.ts";
import { muscleStrips } from "./muscle-strips.ts";
import {
  paintBehindVein,
  paintCalfMuscles,
  paintDeepMuscles,
  paintNear,
  paintNearHead,
} from "./paint-leg.ts";
import { drawFarCusps, drawValves, drawVein } from "./paint-vein.ts";
import { drawPushes } from "./pushes.ts";
import { beforeVein, behindVein } from "./strip-ends.ts";
import { freeHalfWidth, halfWidth, placeInLeg, pressedAt, VALVES } from "./vein.ts";

interface LegState {
  readonly circulation: Circulation;
  /** null until they are computed: drawn shut */
  readonly valves: Omit<LegValves, "hardest"> | null;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
}

export interface Leg {
  readonly view: Container;
  /** @returns how the plane lies in the box, and how far each valve stands open (0..1, by VALVES) */
  draw(state: LegState, box: Box, theme: Theme): { fit: Fit; open: readonly number[] };
  release(): void;
}

export type Room = Readonly<Record<"left" | "top" | "right" | "bottom", number>>;
/** Room that the leg takes, plane units. */
export const LEG: Room = { left: 70, top: 0, right: 726, bottom: 1000 };
/** Plane units, in the middle of the vein: from here to the skin behind, the leg bulges. */
const STAYS = 250;
/** Device pixels of a CSS pixel for which the tissues are painted. */
const DENSE = 1.25;

/** Gives each dot a rank of no order that shows; how fast one whose rank has no room fades. */
const ODD = 0.7548776662;
const FADE = 5;
/** Half a dot, and how near it comes to the wall. */
const DOT = 3.2;
/** L/min under which blood stands still. */
const STANDS = 0.02;

/** @param room what of the leg is shown, plane units */
export function leg(room: Room = LEG): Leg {
  const view = new Container();
  const [behind, before] = [sheet(), sheet()];
  const skin = muscleStrips({ left: LEG.left, right: STAYS }, behindVein(SKIN, STAYS));
  const calf = muscleStrips({ left: 80, right: 330 }, behindVein(FASCIA));
  const near = muscleStrips({ left: 80, right: 330 }, behindVein(FASCIA));
  const deep = muscleStrips({ left: 250, right: 440 }, beforeVein(TIBIA));
  const [mask, vein] = [new Graphics(), new Graphics()];
  const [farCusps, cusps, pushes] = [new Graphics(), new Graphics(), new Graphics()];
  mask.rect(room.left, room.top, room.right - room.left, room.bottom - room.top).fill(0xffffff);
  const blood = streaks();
  // Sheets are painted with y up.
  for (const each of [behind, before]) each.view.scale.y = -1;
  view.addChild(
    mask,
    behind.view,
    skin.view,
    calf.view,
    deep.view,
    vein,
    farCusps,
    blood.view,
    cusps,
    near.view,
    pushes,
    before.view,
  );
  view.mask = mask;
  let known: Circulation | null = null;
  let [painted, fine, narrowed] = ["", 0, ""];
  let column: BloodColumn | null = null;
  let filling: Float64Array | null = null;

  const paint = (saturation: number, density: number, theme: Theme): void => {
    const { left, top, right, bottom } = room;
    behind.paint([left, -bottom, right, -top], density, [0, 0], (ink) => {
      ink.scale(1, -1);
      paintBehindVein(ink, saturation, theme);
    });
    before.paint([140, -900, 580, -top], density, [0, 0], (ink) => {
      ink.scale(1, -1);
      paintNear(ink, saturation, theme);
    });
    skin.paint(density, (ink) => paintBehindVein(ink, saturation, theme));
    calf.paint(density, (ink) => paintCalfMuscles(ink, theme));
    near.paint(density, (ink) => paintNearHead(ink, theme));
    deep.paint(density, (ink) => paintDeepMuscles(ink, saturation, theme));
  };

  return {
    view,
    draw(state, box, theme) {
      const { circulation, valves, time } = state;
      const fit = fitInto(box, room);
      view.scale.set(fit.scale);
      view.position.set(fit.x, fit.y);
      const below = valves?.below ?? null;
      if (known !== circulation || filling !== below || !column) {
        known = circulation;
        filling = below;
        column = bloodColumn(circulation.traces, circulation.request.body.bsa, below);
        blood.resize(column.count);
      }
      const saturation = saturationOf(circulation, "ivc");
      const artery = saturationOf(circulation, "arterial");
      const look = `${theme.name} ${Math.round(saturation)} ${Math.round(artery)}`;
      const density = fit.scale * DENSE;
      if (look !== painted || !servesAt(fine, density)) {
        [painted, fine, narrowed] = [look, density, ""];
        paint(saturation, density, theme);
      }
      const open = VALVES.map((each) => valves?.[each.flow] ?? 0);
      const pressed = pressedAt(circulation.traces, time);
      const width = pressed.toFixed(3);
      if (width !== narrowed) {
        drawVein(vein.clear(), pressed, { vein: saturation, artery }, theme);
        for (const each of [skin, calf, deep, near]) each.bend(pressed);
        drawPushes(pushes.clear(), pressed, theme);
      }
      narrowed = width;
      placeBlood(blood, column, state, open, theme);
      drawFarCusps(farCusps, open, theme);
      drawValves(cusps, open, theme);
      return { fit, open };
    },
    release() {
      for (const each of [behind, before, skin, calf, deep, near, blood]) each.release();
    },
  };
}

/** Sets the column's dots between wall and cusps, each as long as its blood is fast. */
function placeBlood(
  blood: Streaks,
  column: BloodColumn,
  { circulation, valves, time, still }: LegState,
  open: readonly number[],
  theme: Theme,
): void {
  const { traces, request } = circulation;
  const legs = legTraces(traces);
  const pressed = pressedAt(traces, time);
  const saturation = saturationOf(circulation, "ivc");
  const colour = tintOf(markColour(theme.colour, saturation));
  const flowing = (flow: Float64Array | undefined) => (flow ? Math.abs(valueAt(traces, flow, time)) : 0);
  const [out, entering] = [flowing(legs?.out), flowing(valves?.below ?? legs?.in)];
  let shown = 0;
  column.each(time, pressed, (dot, at, across) => {
    const free = freeHalfWidth(at, pressed, open);
    // Between cusps that are shut there is room for few.
    const crowd = free / halfWidth(at, pressed) - ((dot * dot * ODD) % 1);
    const speed = Math.max(at < VALVES[1].at ? out : 0, at > VALVES[0].at ? entering : 0);
    const points = still && speed > STANDS;
    const { spot, up } = placeInLeg(at, across * Math.max(0, free - DOT - 3));
    blood.set(shown++, {
      x: spot[0],
      y: spot[1],
      angle: Math.atan2(up[1], up[0]),
      length: points
        ? Math.min(5 * DOT, 1.8 * free)
        : Math.min(2.2 * free, 9 + Math.min(22, (13 * speed) / request.body.bsa)),
      width: Math.min((points ? 3.6 : 2) * DOT, 1.2 * free),
      colour,
      shape: shapeOf(false, points),
      alpha: still && dot % 3 !== 0 ? 0 : Math.min(1, Math.max(0, 1 + FADE * crowd)),
    });
  });
  blood.resize(shown);
}
