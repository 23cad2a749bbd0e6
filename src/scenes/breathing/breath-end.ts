/** How the dome stands at both ends of the breath: two thin lines, so that a still picture shows how far it moves. */
import { Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
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
/** Plane units: width of the lines, and dash and gap of the one that is breathed out. */
const LINE = 2;
const DASH = [9, 6] as const;
/** Plane units: where along the dome each line is named, clear of the arrow beside the stomach. */
const NAMED = { out: 724, in: 772 } as const;

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
      const draw = (end: "out" | "in"): Spot => {
        const dome = domeAt(drawnLarger(sizes[end], larger)).flat();
        const style = { color: colour.pressure, width: LINE, alpha: 0.9 };
        if (end === "out") dashed(view, dome, DASH, style);
        else view.poly(dome, false).stroke(style);
        return [NAMED[end], heightAt(dome, NAMED[end])];
      };
      return { out: draw("out"), in: draw("in") };
    },
  };
}
