/** One lower leg: the deep vein, muscles that squeeze it, valves, and the blood between them. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { type Ink, servesAt, sheet } from "../anatomy/painted-sheet.ts";
import { saturationOf } from "../circuit/circuit-blood.ts";
import { paintLostEnd } from "../drawing/lost-end.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import { streaks } from "../drawing/streaks.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { type BloodColumn, bloodColumn } from "./blood-column.ts";
import { type LegState, placeBlood } from "./leg-blood.ts";
import { LEG, legTissues } from "./leg-tissues.ts";
import { drawCutCusps, drawFarCusps } from "./paint-cusps.ts";
import { drawVein } from "./paint-vein.ts";
import { drawFlows, drawPushes } from "./pushes.ts";
import { drawBeforeMuscles, drawBehindMuscles, drawPerforator } from "./thin-veins.ts";
import { LENGTH, pressedAt, standsOf, VALVES, type ValveStands } from "./vein.ts";

export interface Leg {
  readonly view: Container;
  /** what a lens on it shows again */
  readonly under: Readonly<Record<"vein" | "farCusps" | "cusps", Graphics>>;
  /** @returns how the plane lies in the box, how each valve stands and how far open (0..1), by VALVES, and the vein's blood */
  draw(
    state: LegState,
    box: Box,
    theme: Theme,
  ): {
    readonly fit: Fit;
    readonly open: readonly number[];
    readonly stands: readonly ValveStands[];
    readonly column: BloodColumn;
  };
  release(): void;
}

/** Device pixels of a CSS pixel for which the tissues are painted. */
const DENSE = 1.25;

/** L/min through the valves above and below the squeezed stretch. */
function passing({
  circulation: { traces },
  valves,
  time,
}: LegState): Readonly<Record<"out" | "in", number>> {
  const now = (flow: Float64Array | undefined) => (flow ? valueAt(traces, flow, time) : 0);
  return { out: now(traces.flows.legs), in: now(valves?.below) };
}

export function leg(): Leg {
  const [view, limb] = [new Container(), new Container()];
  const tissues = legTissues();
  const [mask, saphenous, perforator, vein] = [
    new Graphics(),
    new Graphics(),
    new Graphics(),
    new Graphics(),
  ];
  const [farCusps, cusps, pushes, before] = [new Graphics(), new Graphics(), new Graphics(), new Graphics()];
  const ways = new Graphics();
  mask.rect(LEG.left, LEG.top, LEG.right - LEG.left, LEG.bottom - LEG.top).fill(0xffffff);
  const blood = streaks();
  const ends = sheet();
  ends.view.scale.y = -1;
  limb.addChild(
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
    before,
    pushes,
  );
  limb.mask = mask;
  // Over the mask's own edge.
  view.addChild(mask, limb, ends.view, ways);
  let known: Circulation | null = null;
  let [painted, fine, narrowed] = ["", 0, ""];
  let column: BloodColumn | null = null;
  let filling: Float64Array | null = null;

  return {
    view,
    under: { vein, farCusps, cusps },
    draw(state, box, theme) {
      const { circulation, valves, time } = state;
      const fit = fitInto(box, LEG);
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
        ends.paint([LEG.left - GONE, -CLEARS, LEG.right + GONE, GONE], 1, [0, 0], (ink) => {
          ink.scale(1, -1);
          paintEnd(ink, theme);
        });
      }
      const open = VALVES.map((each) => valves?.[each.flow] ?? 0);
      const pressed = pressedAt(circulation.traces, time);
      const width = pressed.toFixed(3);
      if (width !== narrowed) {
        drawVein(vein.clear(), pressed, { vein: saturation, artery }, theme);
        drawBehindMuscles(saphenous.clear(), pressed, saturation, theme);
        drawBeforeMuscles(before.clear(), pressed, saturation, theme);
        tissues.bend(pressed);
        drawPushes(pushes.clear(), pressed, theme);
      }
      narrowed = width;
      drawPerforator(perforator.clear(), { pressed, saturation, open: valves?.in ?? 0 }, theme);
      placeBlood(blood, column, state, { open, from: 0, to: LENGTH }, theme);
      drawFarCusps(farCusps, { open, saturation }, theme);
      drawCutCusps(cusps, { open, saturation }, theme);
      const flows = passing(state);
      const { bsa } = circulation.request.body;
      drawFlows(ways.clear(), { out: flows.out / bsa, in: flows.in / bsa }, theme);
      const stands = VALVES.map(({ flow }, i) => standsOf(entryAt(open, i), flows[flow]));
      return { fit, open, stands, column };
    },
    release() {
      for (const part of [tissues, blood, ends]) part.release();
    },
  };
}

/** Plane units over which a cut limb is lost in the ground, and from its edge to where it is seen at all. */
const [CLEARS, GONE] = [46, 3];

/** Where the thigh is cut. */
const paintEnd = (ink: Ink, { colour }: Theme): void =>
  paintLostEnd(
    ink,
    {
      left: LEG.left - GONE,
      right: LEG.right + GONE,
      edge: LEG.top + GONE,
      seen: LEG.top + CLEARS,
      beyond: 2 * GONE,
    },
    colour.stage,
  );
