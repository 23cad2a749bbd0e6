/** Where lungs and dome stand at the other end of the breath: dashed outlines, so that a still picture shows how far they move, and with the lungs the wall beside them. */
import { Container, Graphics } from "pixi.js";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import type { LungShape } from "../anatomy/lung-shape.ts";
import { DESCENT, lungsAt } from "../anatomy/standing.ts";
import { chestFrame, onPlane } from "../circuit/chest-plan.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { dashes } from "../drawing/plot.ts";
import type { Theme } from "../theme/theme.ts";
import { lungSize, stretchTrace } from "./chest.ts";
import { drawnLarger, largerOf } from "./larger.ts";
import { signOf } from "./rib-cage.ts";

/** Change of the lungs' size, in parts, that is too little to be seen. */
const UNSEEN = 0.02;
/** Part of the breath, next to the end of expiration, over which the outline of full inspiration takes the place of that of its beginning. */
const NEAR = 0.3;
/** Plane units on and off. */
const DASH = [8, 6] as const;

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
  const down = (size - 1) * DESCENT * frame.scale;
  return [
    ...lungs.map((lung) => {
      const [hx, hy] = lung.hilum;
      return outerSide(lung).map(([x, y]): Point => [hx + size * (x - hx), hy + size * (y - hy)]);
    }),
    abdomen.diaphragm.map(([x, y]): Point => [x, y - down]),
  ].map((line) => line.map(onPlane));
}

export type BreathEnd = "in" | "out";

export interface BreathEnds {
  readonly view: Container;
  /** Once for each circulation and theme. */
  set(circulation: Circulation, theme: Theme): void;
  /** @returns which end is seen now; null when nothing moves */
  move(circulation: Circulation, time: number): BreathEnd | null;
}

export function breathEnds(): BreathEnds {
  const view = new Container();
  const ends = { out: new Graphics(), in: new Graphics() };
  view.addChild(ends.out, ends.in);
  return {
    view,
    set(circulation, { colour }) {
      const sizes = endsOf(circulation);
      view.visible = sizes !== null;
      if (!sizes) return;
      for (const end of ["out", "in"] as const) {
        const ink = ends[end].clear();
        const size = drawnLarger(sizes[end], largerOf(circulation.traces));
        const pieces = outlinesAt(size).flatMap((line) => dashes(line, DASH));
        for (const [color, width] of [
          [colour.stage, 4],
          [colour.ink, 2],
        ] as const)
          for (const piece of pieces) {
            ink.moveTo(...entryAt(piece, 0));
            for (const spot of piece.slice(1)) ink.lineTo(...spot);
            ink.stroke({ color, width, alpha: 0.75 });
          }
      }
    },
    move(circulation, time) {
      if (!view.visible) return null;
      const { out, in: full } = present(endsOf(circulation));
      const part = (lungsAt(circulation, time, false) - out) / (full - out);
      ends.out.alpha = Math.min(1, Math.max(0, part / NEAR));
      ends.in.alpha = 1 - ends.out.alpha;
      return ends.out.alpha < 0.5 ? "in" : "out";
    },
  };
}
