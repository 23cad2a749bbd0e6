/** One lower leg: vein, muscle that squeezes it, valves, and the blood between them. */
import { Container, Graphics } from "pixi.js";
import type { LegValves } from "../../chain/leg-valves.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { RICH, saturationOf } from "../circuit/circuit-blood.ts";
import { curve, type Spot, spots } from "../drawing/curve-drawing.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import type { Box } from "../scene.ts";
import { bloodColour, groundColour, markColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type BloodColumn, bloodColumn, legTraces } from "./blood-column.ts";
import { CALF, freeHalfWidth, halfWidth, leaflets, PLANE, squeezeAt, VALVES } from "./vein.ts";

const SKIN = spots("120 0, 116 120, 92 260, 78 420, 104 600, 160 760, 176 900");

export interface Leg {
  readonly view: Container;
  draw(
    circulation: Circulation,
    valves: LegValves | null,
    time: number,
    still: boolean,
    box: Box,
    theme: Theme,
  ): { fit: Fit; open: readonly number[]; squeeze: number };
  release(): void;
}

export function leg(): Leg {
  const view = new Container();
  const [still, moving, valveInk] = [new Graphics(), new Graphics(), new Graphics()];
  const blood = streaks();
  const mask = new Graphics().rect(0, 0, PLANE.width + 40, PLANE.height).fill(0xffffff);
  view.addChild(mask, still, moving, blood.view, valveInk);
  view.mask = mask;
  let known: Circulation | null = null;
  let themed: Theme | null = null;
  let column: BloodColumn | null = null;
  let last: number | null = null;

  const trace = (ink: Graphics, points: readonly Spot[]) => {
    const line = curve(points);
    ink.moveTo(line.x[0]!, line.y[0]!);
    for (let i = 1; i < line.x.length; i++) ink.lineTo(line.x[i]!, line.y[i]!);
  };

  const drawStill = (theme: Theme) => {
    still.clear();
    for (const outline of [SKIN, SKIN.map(([x, y]): Spot => [622 - x * 0.46, y])]) {
      trace(still, outline);
      still.stroke({ color: theme.colour.backdropEdge, width: 3, cap: "round" });
    }
  };

  const drawVein = (circulation: Circulation, squeeze: number, theme: Theme) => {
    const { colour } = theme;
    const saturation = saturationOf(circulation, "ivc");
    moving.clear();
    // Muscle thickens as it shortens: its inner border follows the vein, its outer border bulges.
    for (const side of [-1, 1]) {
      const inner: number[] = [];
      const outer: number[] = [];
      for (let y = CALF.top - 40; y <= CALF.bottom + 40; y += 10) {
        const along = (y - CALF.top + 40) / (CALF.bottom - CALF.top + 80);
        const belly = Math.sin(Math.PI * along);
        const near = halfWidth(y, squeeze) + 9;
        inner.push(PLANE.middle + side * near, y);
        outer.unshift(
          PLANE.middle + side * (near + (side < 0 ? 118 : 74) * belly ** 0.8 * (1 + 0.16 * squeeze)),
          y,
        );
      }
      const back: number[] = [];
      for (let i = 0; i < outer.length; i += 2) back.push(outer[i]!, outer[i + 1]!);
      moving
        .poly([...inner, ...back], true)
        .fill({ color: mix(colour.backdrop, colour.clot, 0.3) })
        .stroke({ color: mix(colour.backdropEdge, colour.clot, 0.4), width: 2.5 });
      for (const part of [0.3, 0.6]) {
        for (let i = 0, first = true; i < inner.length; i += 2, first = false) {
          const j = outer.length - 2 - i;
          const x = inner[i]! + (outer[j]! - inner[i]!) * part;
          if (first) moving.moveTo(x, inner[i + 1]!);
          else moving.lineTo(x, inner[i + 1]!);
        }
        moving.stroke({ color: mix(colour.backdropEdge, colour.clot, 0.4), width: 1.5, alpha: 0.6 });
      }
    }
    const wall: number[] = [];
    for (let y = -24; y <= PLANE.height + 24; y += 8) wall.push(PLANE.middle - halfWidth(y, squeeze), y);
    for (let y = PLANE.height + 24; y >= -24; y -= 8) wall.push(PLANE.middle + halfWidth(y, squeeze), y);
    moving.poly(wall).fill({ color: groundColour(colour, saturation) });
    moving.stroke({
      color: mix(colour.wall, bloodColour(colour, saturation), 0.35),
      width: 6,
      join: "miter",
    });
  };

  return {
    view,
    draw(circulation, valves, time, still, box, theme) {
      const { traces } = circulation;
      const fit = fitInto(box, { left: 40, top: 0, right: 620, bottom: PLANE.height });
      view.scale.set(fit.scale);
      view.position.set(fit.x, fit.y);
      const squeeze = squeezeAt(traces, time);
      const legs = legTraces(traces);
      // Shut until the valves are computed.
      const open = VALVES.map((each) => valves?.[each.flow] ?? 0);
      if (known !== circulation || !column) {
        known = circulation;
        column = bloodColumn(traces, circulation.request.body.bsa);
        blood.resize(column.count);
      }
      column.move(last ?? time, time);
      last = time;
      if (themed !== theme) drawStill(theme);
      themed = theme;
      drawVein(circulation, squeeze, theme);
      const saturation = saturationOf(circulation, "ivc");
      const colour = Number.parseInt(markColour(theme.colour, saturation).slice(1), 16);
      for (let i = 0; i < column.count; i++) {
        const y = column.y[i]!;
        const free = freeHalfWidth(y, squeeze, open);
        const x = PLANE.middle + column.across[i]! * Math.max(0, free - 7);
        const speed = legs ? Math.abs(valueAt(traces, y < CALF.top ? legs.out : legs.in, time)) : 0;
        blood.set(
          i,
          x,
          y,
          -Math.PI / 2,
          10 + Math.min(26, (14 * speed) / circulation.request.body.bsa),
          10,
          colour,
          shapeOf(saturation >= RICH, still),
          still && i % 2 === 1 ? 0 : 1,
        );
      }
      valveInk.clear();
      VALVES.forEach((valve, i) => {
        for (const { hinge, tip } of leaflets(valve.y, open[i]!)) {
          const bow = (hinge[0] - PLANE.middle) * 0.18 * open[i]!;
          valveInk
            .moveTo(...hinge)
            .quadraticCurveTo((hinge[0] + tip[0]) / 2 - bow, (hinge[1] + tip[1]) / 2 + 8, ...tip)
            .stroke({ color: theme.colour.wallEdge, width: 9, cap: "round" });
        }
      });
      return { fit, open, squeeze };
    },
    release: () => blood.release(),
  };
}
