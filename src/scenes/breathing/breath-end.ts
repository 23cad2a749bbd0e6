/** How lungs and dome stand at both ends of the breath: two thin lines, so that a still picture shows how far they move. */
import { Graphics } from "pixi.js";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import type { LungShape } from "../anatomy/lung-shape.ts";
import { CHEST_AT, chestFrame, onPlane } from "../circuit/chest-plan.ts";
import { descentAt, lungHeight, sunkAt } from "../circuit/sinking.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { dashed, heightAt } from "../layers/path-line.ts";
import type { Theme } from "../theme/theme.ts";
import { lungSize, stretchTrace } from "./chest.ts";
import { drawnLarger, largerOf } from "./larger.ts";
import { signOf } from "./rib-cage.ts";

/** Change of the lungs' size, in parts, that is too little to be seen. */
const UNSEEN = 0.02;
/** Plane units: width of the lines, and dash and gap of the one that is breathed out. */
const LINE = 2;
const DASH = [9, 6] as const;
/** Plane units: where along the dome both lines are named. */
const NAMED = 752;

/** Linear sizes of the lungs against rest at both ends of the breath; null when nothing moves. */
export function endsOf({ traces }: Circulation): { readonly out: number; readonly in: number } | null {
  const stretch = stretchTrace(traces);
  if (!stretch) return null;
  const ends = { out: lungSize(Math.min(...stretch)), in: lungSize(Math.max(...stretch)) };
  return ends.in - ends.out < UNSEEN ? null : ends;
}

/** From the apex down the outer side to where the lung is widest; the base and what lies towards the heart are hidden. */
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
  const outer = ([x]: Point) => signOf(lung) * x;
  const widest = (line: readonly Point[]) =>
    line.reduce((best, spot, i) => (outer(spot) > outer(entryAt(line, best)) ? i : best), 0);
  const sides = [way(1), way(-1)].map((line) => line.slice(0, widest(line) + 1));
  return sides.reduce((a, b) => (outer(lastOf(a)) > outer(lastOf(b)) ? a : b));
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

/** Where each line is named, plane units: the upper one from above, the lower one from below. */
export type NamedEnds = Readonly<Record<"out" | "in", Spot>>;

export interface BreathEnds {
  /** invisible when nothing moves */
  readonly view: Graphics;
  /** Once for each circulation and theme. @returns null when nothing moves */
  set(circulation: Circulation, theme: Theme): NamedEnds | null;
}

export function breathEnds(): BreathEnds {
  const view = new Graphics();
  return {
    view,
    set(circulation, { colour }) {
      const sizes = endsOf(circulation);
      view.clear();
      view.visible = sizes !== null;
      if (!sizes) return null;
      const larger = largerOf(circulation.traces);
      const draw = (end: "out" | "in"): Spot => {
        const lines = outlinesAt(drawnLarger(sizes[end], larger));
        const dome = lastOf(lines).flat();
        const style = { color: colour.pressure, width: LINE, alpha: 0.9 };
        for (const line of lines.map((each) => each.flat()))
          if (end === "out") dashed(view, line, DASH, style);
          else view.poly(line, false).stroke(style);
        return [NAMED, heightAt(dome, NAMED)];
      };
      return { out: draw("out"), in: draw("in") };
    },
  };
}
