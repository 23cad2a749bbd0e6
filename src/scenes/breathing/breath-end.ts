/** How the dome stands at both ends of the breath: two short marks on each side, so that a still picture shows how far it moves. */
import { Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { CHEST_AT, chestFrame, onPlane } from "../circuit/chest-plan.ts";
import { descentAt } from "../circuit/sinking.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { dashed, heightAt } from "../layers/path-line.ts";
import type { Theme } from "../theme/theme.ts";
import { drawnLarger, largerOf } from "./larger.ts";
import { lungSize, stretchTrace } from "./lung-stretch.ts";

/** Change of the lungs' size, in parts, that is too little to be seen. */
const UNSEEN = 0.02;
/** Plane units: width of the marks and of their light rim, and dash and gap of the one that is breathed out. */
const [LINE, RIM] = [2.6, 5.6];
const DASH = [9, 6] as const;
/** Plane units: from where to where along the dome, beside its arrows; the first end is joined from mark to mark, the last is named. */
const MARKS = [
  [248, 320],
  [788, 722],
] as const;
/** Plane units from one spot of a mark to the next. */
const STEP = 4;

/** Linear sizes of the lungs against rest at both ends of the breath; null when nothing moves. */
export function endsOf({ traces }: Circulation): { readonly out: number; readonly in: number } | null {
  const stretch = stretchTrace(traces);
  if (!stretch) return null;
  const ends = { out: lungSize(Math.min(...stretch)), in: lungSize(Math.max(...stretch)) };
  return ends.in - ends.out < UNSEEN ? null : ends;
}

/** Plane units: where the dome reaches the lowest ribs that are drawn. */
const AT_RIBS = 604;

/** Plane units, for lungs of a size. */
export function domeAt(size: number): readonly Spot[] {
  const { abdomen } = anatomyOf(chestFrame("extracardiac"));
  const down = descentAt(size) / CHEST_AT.scale;
  return abdomen.diaphragm.map(([x, y]) => onPlane([x, y - down])).filter(([, y]) => y < AT_RIBS);
}

/** Where each line is named, plane units. */
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
      const domes = {
        out: domeAt(drawnLarger(sizes.out, larger)).flat(),
        in: domeAt(drawnLarger(sizes.in, larger)).flat(),
      };
      const at = (end: "out" | "in", x: number): Spot => [x, heightAt(domes[end], x)];
      for (const [color, width] of [
        [colour.stage, RIM],
        [colour.pressure, LINE],
      ] as const)
        for (const [from, to] of MARKS) {
          const steps = Math.round(Math.abs(to - from) / STEP);
          const mark = (end: "out" | "in") =>
            Array.from({ length: steps + 1 }, (_, i) => at(end, from + ((to - from) * i) / steps)).flat();
          const style = { color, width, alpha: 1 };
          dashed(view, mark("out"), DASH, style);
          view.poly(mark("in"), false).stroke(style);
          view
            .moveTo(...at("out", from))
            .lineTo(...at("in", from))
            .stroke({ ...style, width: width - 1 });
        }
      const [named] = MARKS[1];
      return { out: at("out", named), in: at("in", named) };
    },
  };
}
