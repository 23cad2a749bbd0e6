/** The chest: the circuit's own schematic from close by, with lungs, ribs and diaphragm that move with the breath. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { wordSetting } from "../../sim/parameters/parameters.ts";
import { vesselsOf } from "../circuit/anatomy.ts";
import { drawVessels } from "../circuit/body-drawing.ts";
import { fenestrated } from "../circuit/circuit-pane.ts";
import { type Laid, layVessels } from "../circuit/dots.ts";
import { flowing } from "../circuit/flowing.ts";
import { overOrgans, paintedChest } from "../circuit/painted-chest.ts";
import { drawSilhouette, fillTrunk } from "../circuit/silhouette.ts";
import { curve, type Spot, traceCurve } from "../drawing/curve-drawing.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { drawAirways } from "./airways.ts";
import { lungSize, stretchTrace } from "./chest.ts";

/** From the neck to below the liver. */
const CHEST = { left: 130, top: 84, right: 870, bottom: 706 } as const;

const HIDDEN = /Kidney|Leg|gut|portal|carotid|liver|hepatic|upper|descending/;
const RIBS: readonly Spot[] = [
  [420, 166],
  [330, 176],
  [238, 214],
  [190, 300],
  [178, 400],
  [186, 500],
  [206, 580],
];
/** Device pixels of a CSS pixel for which the chest is painted. */
const DENSE = 1.25;
/** Plane units of the arrow on the chest wall for each mmHg. */
const ARROW = 4.5;
const LONGEST_ARROW = 70;
/** Plane units from the wall to where an arrow begins. */
const INWARD = 20;

/** Where the plane lies in its box, and the vessels on it. */
export interface Shown {
  readonly fit: Fit;
  readonly vessels: readonly Laid[];
}

export interface Thorax {
  readonly view: Container;
  draw(circulation: Circulation, time: number, still: boolean, box: Box, theme: Theme): Shown;
  release(): void;
}

export function thorax(): Thorax {
  const view = new Container();
  const mask = new Graphics();
  const [body, airways, chest] = [new Graphics(), new Graphics(), new Graphics()];
  const [back, front] = [new Graphics(), new Graphics()];
  const painted = paintedChest();
  const trunk = fillTrunk(new Graphics());
  painted.organs.mask = trunk;
  const blood = flowing();
  view.addChild(
    mask,
    body,
    trunk,
    painted.organs,
    chest,
    airways,
    ...overOrgans(painted, blood, { behind: back, front }),
  );
  view.mask = mask;
  let known: Circulation | null = null;
  let themed: Theme | null = null;
  let laid: readonly Laid[] = [];

  const drawChest = (circulation: Circulation, time: number, theme: Theme): void => {
    const { traces } = circulation;
    // In a Valsalva manoeuvre the throat is shut: whatever presses on the lungs, their air stays in.
    const inValsalva = wordSetting(circulation.request, "breathing") === "valsalva";
    const stretch = inValsalva ? null : stretchTrace(traces);
    const size = stretch ? lungSize(valueAt(traces, stretch, time)) : 1;
    const pleural = traces.pressures.pleural ? valueAt(traces, traces.pressures.pleural, time) : 0;
    const { colour } = theme;
    chest.clear();
    for (const side of [RIBS, RIBS.map(([x, y]): Spot => [1000 - x, y])]) {
      traceCurve(chest, curve(side.map(([x, y]): Spot => [500 + (x - 500) * (1 + (size - 1) * 0.85), y])));
      chest.stroke({ color: colour.hair, width: 2.4, cap: "round", alpha: 0.8 });
    }
    // Suction pulls the wall outward, squeeze pushes it inward: the arrow's length is the pressure.
    for (const side of [-1, 1]) {
      const at = 500 + side * 322 * (1 + (size - 1) * 0.85) - side * INWARD;
      const tip = at - side * Math.min(LONGEST_ARROW, pleural * ARROW);
      const start = pleural < 0 ? at : at + side * 2;
      arrow(chest, start, tip, 400, theme.colour.pressure);
    }
  };

  return {
    view,
    draw(circulation, time, still, box, theme) {
      const fit = fitInto(box, CHEST);
      view.scale.set(fit.scale);
      view.position.set(fit.x, fit.y);
      if (known !== circulation || themed !== theme) {
        known = circulation;
        themed = theme;
        const shown = vesselsOf(circulation.request.stage, fenestrated(circulation), true).filter(
          ({ name, painted }) => painted || !HIDDEN.test(name),
        );
        laid = layVessels(shown);
        blood.follow(laid, circulation);
        drawSilhouette(body, theme);
        drawAirways(airways, theme);
        back.clear();
        front.clear();
        const isBehind = ({ vessel }: Laid) => vessel.behind === true;
        drawVessels(back, laid.filter(isBehind), circulation, theme);
        drawVessels(
          front,
          laid.filter((each) => !isBehind(each)),
          circulation,
          theme,
        );
        mask
          .clear()
          .rect(0, CHEST.top, 1000, CHEST.bottom - CHEST.top)
          .fill(0xffffff);
      }
      drawChest(circulation, time, theme);
      painted.draw({ circulation, time, still, close: true }, fit.scale * DENSE, theme);
      blood.move(time, still, theme);
      return { fit, vessels: laid };
    },
    release() {
      blood.release();
      painted.release();
    },
  };
}

function arrow(ink: Graphics, from: number, to: number, y: number, colour: string): void {
  const way = Math.sign(to - from);
  if (Math.abs(to - from) < 2) return;
  const head = Math.min(14, Math.abs(to - from) * 0.6);
  for (const dy of [-70, 0, 70]) {
    ink
      .moveTo(from, y + dy)
      .lineTo(to - way * head * 0.6, y + dy)
      .stroke({ color: colour, width: 4, cap: "round" });
    ink
      .poly([to, y + dy, to - way * head, y + dy - head * 0.55, to - way * head, y + dy + head * 0.55])
      .fill({ color: colour });
  }
}
