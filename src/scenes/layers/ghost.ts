/** The wall as it was before the last change: a dashed outline over the new one. */
import { Graphics } from "pixi.js";
import type { PathwayGeometry } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import { outlineOf, sameShape } from "./outline.ts";
import { dashed } from "./path-line.ts";
import type { Line } from "./wall.ts";

/** CSS px: dash and gap, and width of the line */
const DASH = [7, 5] as const;
const WIDTH = 2;

export interface GhostLayer {
  readonly view: Graphics;
  /** @param before null, or the same shape as now, draws nothing */
  draw(before: PathwayGeometry | null, now: PathwayGeometry, pxPerMm: number, theme: Theme): void;
}

export function ghostLayer(): GhostLayer {
  const view = new Graphics();
  let [of, beside]: (PathwayGeometry | null)[] = [null, null];
  let lines: readonly Line[] = [];
  let drawn = "";
  return {
    view,
    draw(before, now, pxPerMm, theme) {
      if (before !== of || now !== beside) {
        [of, beside] = [before, now];
        lines = before && !sameShape(before, now) ? outlineOf(before) : [];
        drawn = "";
      }
      const key = `${pxPerMm.toFixed(2)} ${theme.name}`;
      if (key === drawn) return;
      drawn = key;
      view.clear();
      const [dash, gap] = DASH;
      const style = { width: WIDTH / pxPerMm, color: theme.colour.ink, alpha: 0.95 };
      for (const { line, closed } of lines)
        dashed(view, closed ? [...line, ...line.slice(0, 2)] : line, [dash / pxPerMm, gap / pxPerMm], style);
    },
  };
}
