/** The moving part of the schematic: every dot goes as far as the model's blood went since the last drawing. */
import type { Container } from "pixi.js";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { fromLitresPerMinute, toMillilitre } from "../../sim/units.ts";
import { lungsAt, sectionOf, type Ventricle } from "../anatomy/standing.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { type Streaks, shapeOf, streaks } from "../drawing/streaks.ts";
import { flowTrace, meanOf, type Passage, passage, valueAt } from "../drawing/trace-clock.ts";
import { markColour, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { bloodAlong, isRich, saturationAlong } from "./circuit-blood.ts";
import { type Dots, type Laid, layDots, placeDot, reachPerMillilitre } from "./dots.ts";
import { dimOf, type Emphasis, NO_EMPHASIS } from "./emphasis.ts";
import { fadeOf } from "./fading.ts";
import { seenAlong, seenAt } from "./hidden.ts";
import type { Extent } from "./proportions.ts";
import { type Hung, lungHeight, sunkAt } from "./sinking.ts";
import type { Vessel } from "./vessel.ts";

/** Plane units of streak for each plane unit a second. */
const STRETCH = 0.1;
const LONGEST_STILL = 34;
/** No longer than marks lie apart, or they would join into chains. */
const LONGEST_MOVING = 18;
/** Most widths of a mark in its length: a longer one would leave a small vessel's bends. */
const SLENDER = 4;

interface Stream {
  readonly blood: Passage;
  readonly flow: Float64Array;
  /** L/min */
  readonly mean: number;
  readonly perMillilitre: number;
}

/** Most of a vessel's width that a mark takes. */
const FILLS = 0.8;

/** A part of the body, larger: beyond its extent no mark is seen. */
export interface Part {
  /** size of the marks over that in a whole body, and their number; as many when left out */
  readonly grain: number;
  readonly number?: number;
  readonly extent: Extent;
  /** plane units by which the dome, and with it what lies in the chest, stands lower */
  readonly fall?: number;
  /** how the heart's own blood goes down where the vessels stay */
  readonly hung?: Hung;
}

export const WHOLE: Part = {
  grain: 1,
  extent: { left: -Infinity, top: -Infinity, right: Infinity, bottom: Infinity },
};

export interface Flowing {
  /** under the heart and the vessels in front */
  readonly behind: Container;
  readonly front: Container;
  /** Call when the vessels or the circulation changed; dots keep their places while the lines of the vessels stay. `larger`: by which the lungs' movement is drawn. */
  follow(laid: readonly Laid[], circulation: Circulation, larger?: number): void;
  /** `still`: nothing moves; darts as long as the mean flow is fast point the way. `part`: what of the body is enlarged. */
  move(time: number, still: boolean, theme: Theme, emphasis?: Emphasis, part?: Part): void;
  release(): void;
}

/** Plane units: no mark fills a small vessel, none is a slab in a large one. */
const markWidth = ({ bed, width }: Vessel): number =>
  bed ? 5.5 : Math.min(8, 4.5 + 0.12 * width, Math.max(2.6, 0.55 * width));

function streamOf(vessel: Vessel, { traces, request }: Circulation): Stream | null {
  const flow = flowTrace(traces.flows, vessel.flow);
  if (!flow) return null;
  return {
    flow,
    mean: meanOf(traces, flow),
    blood: passage(traces, flow),
    perMillilitre: reachPerMillilitre(vessel, request.body.bsa),
  };
}

/** Plane units beyond an extent where a mark still reaches into it. */
const REACHES = 28;
const isIn = ({ left, top, right, bottom }: Extent, x: number, y: number): boolean =>
  x > left - REACHES && x < right + REACHES && y > top - REACHES && y < bottom + REACHES;

/** By how much lungs and ventricles are wider than they are drawn. */
const swellings = (circulation: Circulation, time: number, still: boolean) => {
  const of = (name: Ventricle) => (still ? 0 : sectionOf(circulation, name, time) - 1);
  return {
    lungs: lungsAt(circulation, time, still) - 1,
    ventricle: of("ventricle"),
    rightVentricle: of("rightVentricle"),
  };
};

interface Swelling {
  readonly swell: number;
  readonly fall: number;
  readonly beats: Ventricle | undefined;
}

/** Plane units by which a mark stands lower as what holds it swells and goes down: a lung as a whole, with its root. */
const lowered = (at: Spot, about: Spot, { swell, fall, beats }: Swelling): number =>
  (fall === 0 || beats ? swell : lungHeight(1 + swell) - 1) * (at[1] - about[1]) +
  sunkAt(beats ? at : about, fall);

/** Plane units by which a height of a heart that hangs beside its vessels stands lower. */
const hungAt = (y: number, hung: Hung | undefined): number =>
  hung ? hung.part * Math.max(0, y - hung.hinge) : 0;

/** As the vessels are drawn: what is pointed at lies over what it crosses, its blood too. */
const layerOf = ({ vessel }: Laid, lit: ReadonlySet<string>): 0 | 1 =>
  vessel.behind && !lit.has(vessel.name) ? 0 : 1;

/** Dots laid anew where vessels or the marks' size have changed, and shared out anew where something else is pointed at. */
function dotKeeper(layers: readonly [Streaks, Streaks]) {
  let [dots, fine]: [Dots | null, string] = [null, ""];
  /** what was pointed at when the dots were shared out between the two layers */
  let shared: ReadonlySet<string> | null = null;
  return {
    forget() {
      dots = null;
    },
    of(laid: readonly Laid[], size: readonly [grain: number, part: number], lit: ReadonlySet<string>): Dots {
      const isNew = !dots || String(size) !== fine;
      const all = isNew || !dots ? layDots(laid, ...size) : dots;
      if (isNew || shared !== lit) {
        const front = all.vessel.filter((vessel) => layerOf(entryAt(laid, vessel), lit) === 1).length;
        layers[0].resize(all.count - front);
        layers[1].resize(front);
      }
      [dots, fine, shared] = [all, String(size), lit];
      return all;
    },
  };
}

export function flowing(): Flowing {
  const layers: readonly [Streaks, Streaks] = [streaks(), streaks()];
  let laid: readonly Laid[] = [];
  const keeper = dotKeeper(layers);
  let seen: ReturnType<typeof seenAlong> = [];
  let streams: readonly (Stream | null)[] = [];
  let circulation: Circulation | null = null;
  let reach = new Float64Array(0);
  let [last, larger]: [number | null, number] = [null, 1];
  const out = new Float64Array(6);

  return {
    behind: layers[0].view,
    front: layers[1].view,
    follow(nextLaid, nextCirculation, times = 1) {
      larger = times;
      const stays =
        nextLaid.length === laid.length && nextLaid.every(({ line }, i) => line === laid[i]?.line);
      laid = nextLaid;
      if (!stays) {
        keeper.forget();
        seen = seenAlong(laid);
        reach = new Float64Array(laid.length);
      }
      circulation = nextCirculation;
      streams = laid.map(({ vessel }) => streamOf(vessel, nextCirculation));
    },
    move(time, still, theme, emphasis = NO_EMPHASIS, part = WHOLE) {
      if (!circulation) return;
      const { grain, number = 1, extent, fall = 0, hung } = part;

      const { lit } = emphasis;
      const all = keeper.of(laid, [grain, number], lit);
      const before = last ?? time;
      last = time;
      const speed = streams.map((stream, i) => {
        if (!stream) return 0;
        reach[i] =
          entryAt(reach, i) +
          (stream.blood.passed(time) - stream.blood.passed(before)) * stream.perMillilitre;
        const flow = still ? stream.mean : valueAt(present(circulation).traces, stream.flow, time);
        return toMillilitre(fromLitresPerMinute(flow)) * stream.perMillilitre;
      });
      const counts: [number, number] = [0, 0];
      const swellOf = swellings(circulation, time, still);
      for (let i = 0; i < all.count; i++) {
        const index = entryAt(all.vessel, i);
        const each = entryAt(laid, index);
        placeDot(each, entryAt(all.start, i), entryAt(all.across, i), entryAt(reach, index), out);
        const [x, y] = [entryAt(out, 0), entryAt(out, 1)];
        const { about: [aboutX, aboutY] = [x, y], beats, hangs } = each.vessel;
        const swell = beats ? swellOf[beats] : larger * swellOf.lungs;
        const saturation = saturationAlong(circulation, each.vessel, entryAt(out, 4));
        const width = Math.min(FILLS * each.vessel.width, grain * markWidth(each.vessel) * (still ? 2.3 : 1));
        // In a still fewer and larger marks, so that each can be read as an arrow.
        const left = (still && i % (number < 1 ? 2 : 3) !== 0) || !isIn(extent, x, y);
        const length = Math.min(
          still ? LONGEST_STILL : LONGEST_MOVING,
          SLENDER * width,
          width + grain * Math.abs(entryAt(speed, index) * entryAt(out, 5)) * STRETCH * (still ? 2 : 1),
        );
        const layer = layerOf(each, lit);
        layers[layer].set(counts[layer]++, {
          x: x + swell * (x - aboutX),
          y: y + lowered([x, y], [aboutX, aboutY], { swell, fall, beats }) + (hangs ? hungAt(y, hung) : 0),
          angle:
            Math.atan2(entryAt(out, 3), entryAt(out, 2)) + (still && entryAt(speed, index) < 0 ? Math.PI : 0),
          length,
          width,
          colour: tintOf(markColour(theme.colour, saturation)),
          shape: shapeOf(isRich(bloodAlong(each.vessel, entryAt(out, 4)), saturation), still),
          alpha: left
            ? 0
            : (1 - dimOf(emphasis, each.vessel.name)) *
              fadeOf(each.vessel, entryAt(out, 4)) *
              (lit.has(each.vessel.name) ? 1 : seenAt(seen[index], entryAt(out, 4))),
        });
      }
    },
    release() {
      for (const layer of layers) layer.release();
    },
  };
}
