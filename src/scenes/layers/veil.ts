/** Lights what is pointed at with a ring; a plane on its own also dims all the rest, to 30 % or less, with a slow fade, and keeps its outlines. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import { ease } from "../theme/motion.ts";
import type { Theme } from "../theme/theme.ts";
import { drawContext } from "./context.ts";
import type { Lit } from "./spots.ts";

/** What is left of the rest: 1 - this. */
const COVER = 0.72;
/** Rings in which the edge of the light softens. */
const SOFT = 4;
/** mm: beyond any screen at any camera */
const FAR = 4000;
/** CSS px of the ring and of the outlines, at any camera */
const RING = 3.5;
const LINE = 1.6;

/** A colour under the veil. */
export const veiled = (hex: string, { colour }: Theme): string => mix(hex, colour.stageDeep, COVER);

interface Lighting {
  readonly lit: readonly Lit[];
  /** the rest draws back; not where panes are compared, for then one would be darker than its neighbours */
  readonly dims: boolean;
  /** what stays to be seen of the rest */
  readonly outlines: readonly (readonly Point[])[];
  /** of the camera */
  readonly pxPerMm: number;
}

export interface VeilLayer {
  readonly view: Container;
  draw(lighting: Lighting, elapsed: number, theme: Theme): void;
}

export function veilLayer(): VeilLayer {
  const view = new Container();
  const dark = new Graphics();
  const lines = new Graphics();
  const rings = new Graphics();
  view.addChild(dark, lines, rings);
  let shown = 0;
  let dimmed = 0;
  let last: readonly Lit[] = [];
  let key = "";
  let lined: readonly (readonly Point[])[] = [];
  return {
    view,
    draw({ lit, dims, outlines, pxPerMm }, elapsed, theme) {
      if (lit.length > 0) last = lit;
      shown = ease(shown, lit.length > 0 ? 1 : 0, elapsed);
      dimmed = ease(dimmed, lit.length > 0 && dims ? 1 : 0, elapsed);
      rings.alpha = shown;
      dark.alpha = dimmed;
      lines.alpha = dimmed;
      view.visible = shown > 0.01;
      const now = `${JSON.stringify(last)} ${theme.name} ${pxPerMm}`;
      if (last.length === 0 || (now === key && lined === outlines)) return;
      key = now;
      lined = outlines;
      dark.clear();
      lines.clear();
      drawContext(lines, outlines, last, LINE / pxPerMm, theme);
      rings.clear();
      // One strip for each light, for a shape can have one hole.
      const lights = [...last].sort((a, b) => a.centre[1] - b.centre[1]);
      // Rings add up to the full cover a few millimetres outside the light.
      for (let ring = 0; ring < SOFT; ring++) {
        const alpha = 1 - (1 - COVER) ** (1 / SOFT);
        lights.forEach(({ centre, radius }, i) => {
          const [x, y] = centre;
          const from = i === 0 ? y - FAR : (entryAt(lights, i - 1).centre[1] + y) / 2;
          const to = i === lights.length - 1 ? y + FAR : (y + entryAt(lights, i + 1).centre[1]) / 2;
          dark
            .rect(x - FAR, from, 2 * FAR, to - from)
            .fill({ color: theme.colour.stageDeep, alpha })
            .circle(x, y, radius + 3 + 1.5 * ring)
            .cut();
        });
      }
      for (const { centre, radius } of last)
        rings.circle(...centre, radius + 3).stroke({ width: RING / pxPerMm, color: theme.colour.accent });
    },
  };
}
