/** One lower leg: the deep vein, muscles that squeeze it, valves, and the blood between them. */
import { Container, Graphics } from "pixi.js";
import type { LegValves } from "../../chain/leg-valves.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { servesAt } from "../anatomy/painted-sheet.ts";
import { saturationOf } from "../circuit/circuit-blood.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import { type Streaks, shapeOf, streaks } from "../drawing/streaks.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import type { Box } from "../scene.ts";
import { markColour, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type BloodColumn, bloodColumn, legTraces } from "./blood-column.ts";
import { LEG, legTissues, type Room } from "./leg-tissues.ts";
import { drawFarCusps, drawValves, drawVein } from "./paint-vein.ts";
import { drawPushes } from "./pushes.ts";
import { drawBehindMuscles, drawPerforator } from "./thin-veins.ts";
import { freeHalfWidth, halfWidth, placeInLeg, pressedAt, VALVES } from "./vein.ts";

interface LegState {
  readonly circulation: Circulation;
  /** null until they are computed: drawn shut */
  readonly valves: Omit<LegValves, "cycle"> | null;
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

/** Device pixels of a CSS pixel for which the tissues are painted. */
const DENSE = 1.25;

/** Gives each dot a rank of no order that shows; how fast one whose rank has no room fades. */
const ODD = 0.7548776662;
const FADE = 5;
/** Half a dot, and how near it comes to the wall. */
const DOT = 3.6;
/** L/min under which blood stands still. */
const STANDS = 0.02;

/** @param room what of the leg is shown, plane units */
export function leg(room: Room = LEG): Leg {
  const view = new Container();
  const tissues = legTissues(room);
  const [mask, saphenous, perforator, vein] = [
    new Graphics(),
    new Graphics(),
    new Graphics(),
    new Graphics(),
  ];
  const [farCusps, cusps, pushes] = [new Graphics(), new Graphics(), new Graphics()];
  mask.rect(room.left, room.top, room.right - room.left, room.bottom - room.top).fill(0xffffff);
  const blood = streaks();
  view.addChild(
    mask,
    tissues.behind,
    tissues.skin,
    saphenous,
    tissues.calf,
    tissues.deep,
    perforator,
    vein,
    farCusps,
    blood.view,
    cusps,
    tissues.near,
    pushes,
    tissues.before,
  );
  view.mask = mask;
  let known: Circulation | null = null;
  let [painted, fine, narrowed] = ["", 0, ""];
  let column: BloodColumn | null = null;
  let filling: Float64Array | null = null;

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
        tissues.paint(saturation, density, theme);
      }
      const open = VALVES.map((each) => valves?.[each.flow] ?? 0);
      const pressed = pressedAt(circulation.traces, time);
      const width = pressed.toFixed(3);
      if (width !== narrowed) {
        drawVein(vein.clear(), pressed, { vein: saturation, artery }, theme);
        drawBehindMuscles(saphenous.clear(), pressed, saturation, theme);
        tissues.bend(pressed);
        drawPushes(pushes.clear(), pressed, theme);
      }
      narrowed = width;
      drawPerforator(perforator.clear(), { pressed, saturation, open: valves?.in ?? 0 }, theme);
      placeBlood(blood, column, state, open, theme);
      drawFarCusps(farCusps, open, theme);
      drawValves(cusps, open, theme);
      return { fit, open };
    },
    release() {
      tissues.release();
      blood.release();
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
