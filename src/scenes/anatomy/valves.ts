/** The heart's valves: leaflets that hang in the inlet, and the outflow's cusps. */
import { Container, Graphics } from "pixi.js";
import type { Theme } from "../theme/theme.ts";
import { drawHanging, drawSheet } from "./hanging-valve.ts";
import { CUSPS, type Cusp, cuspLine, INLET } from "./leaflets.ts";
import { smoothLine } from "./placing.ts";
import type { Standing } from "./standing.ts";
import { type Tissue, tissue } from "./tones.ts";

/** In the ventricle's own lengths, in its frame: x along the axis, y across. */
export interface Valves {
  readonly view: Container;
  set(theme: Theme): void;
  move(standing: Standing): void;
}

/** A cusp's thickness, with its edges and within them. */
const THICK = [1.3, 0.85] as const;
const SHEET = { alpha: 0.66, dark: 0 };

export function valves(): Valves {
  const view = new Container();
  const [inlet, outlet] = [new Graphics(), new Graphics()];
  view.addChild(inlet, outlet);
  let [look, drawn] = [tissue("valve", { name: "light" }), ""];
  return {
    view,
    set(theme) {
      look = tissue("valve", theme);
      drawn = "";
    },
    move({ atrioventricular, semilunar }) {
      const key = `${atrioventricular} ${semilunar}`;
      if (key === drawn) return;
      drawn = key;
      drawHanging(inlet.clear(), INLET, atrioventricular, look);
      outlet.clear();
      for (const cusp of CUSPS) drawCusp(outlet, cusp, semilunar, look);
    },
  };
}

/** One that is cut as the thickness of its tissue, the one behind as a sheet with a firm free edge. */
function drawCusp(ink: Graphics, cusp: Cusp, open: number, look: Tissue): void {
  const line = cuspLine(cusp, open);
  drawSheet(ink, { joint: smoothLine([...cusp.hangs].reverse(), 4), edge: line }, look, SHEET);
  THICK.forEach((width, i) => {
    ink.poly(line.flat(), false).stroke({
      color: i ? look.body : look.shade,
      width: cusp.whole ? 0.5 * width : width,
      cap: "round",
      join: "round",
    });
  });
}
