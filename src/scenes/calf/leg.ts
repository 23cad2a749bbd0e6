/** One lower leg: vein, muscles that squeeze it, valves, and the blood between them. */
import { Container, Graphics } from "pixi.js";
import type { LegValves } from "../../chain/leg-valves.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { RICH, saturationOf } from "../circuit/circuit-blood.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import { type Streaks, shapeOf, streaks } from "../drawing/streaks.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import type { Box } from "../scene.ts";
import { markColour } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type BloodColumn, bloodColumn, legTraces } from "./blood-column.ts";
import { drawBones, drawMuscles, drawSkin, drawValves, drawVein } from "./leg-drawing.ts";
import { CALF, freeHalfWidth, halfWidth, PLANE, squeezeAt, VALVES } from "./vein.ts";

interface LegState {
  readonly circulation: Circulation;
  /** null until they are computed: drawn shut */
  readonly valves: LegValves | null;
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

/** Room that the leg takes, plane units. */
export const LEG = { left: 40, top: 0, right: 670, bottom: 1000 } as const;
/** Muscle thickens as it shortens: by this part at full squeeze. */
const THICKER = 0.07;

/** Gives each dot a rank of no order that shows; how fast one whose rank has no room fades. */
const ODD = 0.7548776662;
const FADE = 5;

const frameOf = (height: number): Graphics => new Graphics().rect(0, 0, 700, height).fill(0xffffff);

export function leg(): Leg {
  const view = new Container();
  const [skin, muscles, bones] = [new Graphics(), new Graphics(), new Graphics()];
  const [vein, leaflets] = [new Graphics(), new Graphics()];
  const blood = streaks();
  const [whole, upper] = [frameOf(LEG.bottom), frameOf(PLANE.height)];
  const inside = new Container();
  inside.addChild(upper, vein, blood.view, leaflets);
  inside.mask = upper;
  view.addChild(whole, skin, muscles, bones, inside);
  muscles.pivot.x = PLANE.middle;
  muscles.position.x = PLANE.middle;
  view.mask = whole;
  let known: Circulation | null = null;
  let painted = "";
  let narrowed = "";
  let column: BloodColumn | null = null;

  return {
    view,
    draw(state, box, theme) {
      const { circulation, valves, time } = state;
      const fit = fitInto(box, LEG);
      view.scale.set(fit.scale);
      view.position.set(fit.x, fit.y);
      if (known !== circulation || !column) {
        known = circulation;
        column = bloodColumn(circulation.traces, circulation.request.body.bsa);
        blood.resize(column.count);
      }
      const saturation = saturationOf(circulation, "ivc");
      const look = `${theme.name} ${Math.round(saturation)}`;
      if (look !== painted) {
        painted = look;
        drawSkin(skin, theme);
        drawMuscles(muscles, theme);
        drawBones(bones, saturation, theme);
      }
      const open = VALVES.map((each) => valves?.[each.flow] ?? 0);
      const squeeze = squeezeAt(circulation.traces, time);
      muscles.scale.x = 1 + THICKER * squeeze;
      const width = `${look} ${squeeze.toFixed(3)}`;
      if (width !== narrowed) drawVein(vein.clear(), squeeze, saturation, theme);
      narrowed = width;
      placeBlood(blood, column, state, open, theme);
      drawValves(leaflets, open, theme);
      return { fit, open };
    },
    release: () => blood.release(),
  };
}

/** Sets the column's dots between wall and leaflets, each as long as its blood is fast. */
function placeBlood(
  blood: Streaks,
  column: BloodColumn,
  { circulation, time, still }: LegState,
  open: readonly number[],
  theme: Theme,
): void {
  const { traces, request } = circulation;
  const legs = legTraces(traces);
  const squeeze = squeezeAt(traces, time);
  const saturation = saturationOf(circulation, "ivc");
  const colour = Number.parseInt(markColour(theme.colour, saturation).slice(1), 16);
  let shown = 0;
  column.each(time, squeeze, (dot, y, across) => {
    const free = freeHalfWidth(y, squeeze, open);
    // Between leaflets that are shut there is room for few.
    const crowd = free / halfWidth(y, squeeze) - ((dot * dot * ODD) % 1);
    const speed = legs ? Math.abs(valueAt(traces, y < CALF.top ? legs.out : legs.in, time)) : 0;
    blood.set(shown++, {
      x: PLANE.middle + across * Math.max(0, free - 8),
      y,
      angle: -Math.PI / 2,
      length: 10 + Math.min(26, (14 * speed) / request.body.bsa),
      width: 9,
      colour,
      shape: shapeOf(saturation >= RICH, still),
      alpha: still && dot % 2 !== 0 ? 0 : Math.min(1, Math.max(0, 1 + FADE * crowd)),
    });
  });
  blood.resize(shown);
}
