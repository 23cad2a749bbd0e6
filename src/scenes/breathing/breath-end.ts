/** The way of lungs and dome from one end of the breath to the other: a tinted band, so that a still picture shows how far they move. */
import { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import type { LungShape } from "../anatomy/lung-shape.ts";
import { CHEST_AT, chestFrame, onPlane } from "../circuit/chest-plan.ts";
import { descentAt, lungHeight, sunkAt } from "../circuit/sinking.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { lungSize, stretchTrace } from "./chest.ts";
import { drawnLarger, largerOf } from "./larger.ts";
import { airOf } from "./lung-air.ts";
import { signOf } from "./rib-cage.ts";

/** Change of the lungs' size, in parts, that is too little to be seen. */
const UNSEEN = 0.02;
/** Of the band, and of its two edges. */
const TINT = { band: 0.34, edges: 0.6 } as const;

/** Linear sizes of the lungs against rest at both ends of the breath; null when nothing moves. */
export function endsOf({ traces }: Circulation): { readonly out: number; readonly in: number } | null {
  const stretch = stretchTrace(traces);
  if (!stretch) return null;
  const ends = { out: lungSize(Math.min(...stretch)), in: lungSize(Math.max(...stretch)) };
  return ends.in - ends.out < UNSEEN ? null : ends;
}

/** From the apex down the outer side to the base; what lies towards the heart is hidden by it. */
function outerSide(lung: LungShape): readonly Point[] {
  const { outline } = lung;
  const n = outline.length;
  const extreme = (sign: number) =>
    outline.reduce((best, [, y], i) => (sign * y > sign * entryAt(outline, best)[1] ? i : best), 0);
  const [top, low] = [extreme(1), extreme(-1)];
  const way = (step: 1 | -1): Point[] => {
    const line: Point[] = [];
    for (let i = top; i !== low; i = (i + step + n) % n) line.push(entryAt(outline, i));
    return [...line, entryAt(outline, low)];
  };
  const reach = (line: readonly Point[]) => Math.max(...line.map(([x]) => signOf(lung) * x));
  const [one, other] = [way(1), way(-1)];
  return reach(one) > reach(other) ? one : other;
}

/** Plane units, for lungs of a size. */
export function outlinesAt(size: number): readonly (readonly Spot[])[] {
  const frame = chestFrame("extracardiac");
  const { lungs, abdomen } = anatomyOf(frame);
  const fall = descentAt(size);
  const down = fall / CHEST_AT.scale;
  return [
    ...lungs.map((lung) => {
      const [hx, hy] = lung.hilum;
      const root = hy - sunkAt(onPlane(lung.hilum), fall) / CHEST_AT.scale;
      return outerSide(lung).map(
        ([x, y]): Point => [hx + size * (x - hx), root + lungHeight(size) * (y - hy)],
      );
    }),
    abdomen.diaphragm.map(([x, y]): Point => [x, y - down]),
  ].map((line) => line.map(onPlane));
}

export interface BreathEnds {
  /** invisible when nothing moves */
  readonly view: Graphics;
  /** Once for each circulation and theme. */
  set(circulation: Circulation, theme: Theme): void;
}

export function breathEnds(): BreathEnds {
  const view = new Graphics();
  return {
    view,
    set(circulation, theme) {
      const sizes = endsOf(circulation);
      view.clear();
      view.visible = sizes !== null;
      if (!sizes) return;
      const larger = largerOf(circulation.traces);
      const [out, full] = [sizes.out, sizes.in].map((size) => outlinesAt(drawnLarger(size, larger)));
      out?.forEach((line, i) => {
        const other = entryAt(full ?? [], i);
        view.poly([...line, ...other.toReversed()].flat()).fill({ color: airOf(theme), alpha: TINT.band });
        for (const edge of [line, other])
          view
            .poly(edge.flat(), false)
            .stroke({ color: theme.colour.pressure, width: 1.6, alpha: TINT.edges });
      });
    },
  };
}
