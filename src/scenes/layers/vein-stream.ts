/** Blood in the lower vein where no field is computed for it: marks moved by the computed flow, fastest in the middle. */
import { Graphics } from "pixi.js";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { band } from "../../sim/geometry/centreline.ts";
import type { PathwayGeometry, Point } from "../../sim/geometry/geometry.ts";
import type { Tracers } from "../../sim/tracers/tracers.ts";
import type { Colouring } from "../../state/scene-state.ts";
import { part, STEPS } from "../drawing/even-spread.ts";
import { meanOf, passage, valueAt } from "../drawing/trace-clock.ts";
import type { Theme } from "../theme/theme.ts";
import { tint } from "./tint.ts";

/** Marks for each square millimetre of lumen: as dense to the eye as the field's own. */
const DENSE = 0.9;
/** Lengths of the vein by which the middle has moved on before time 0: marks begin in no order that the eye would see. */
const MIXED = 1000;
/** Part of the lumen's half width that marks keep to */
const WITHIN = 0.9;

interface VeinState {
  readonly circulation: Circulation | null;
  /** s of blood time */
  readonly time: number;
  readonly colouring: Colouring;
}

export interface VeinStream {
  readonly view: Graphics;
  /** @param half mm, half width of a mark */
  draw(geometry: PathwayGeometry, state: VeinState, half: number, theme: Theme): void;
}

export function veinStream(): VeinStream {
  const view = new Graphics();
  return {
    view,
    draw(geometry, { circulation, time, colouring }, half, theme) {
      view.clear();
      const marks = streamIn(geometry, circulation, time);
      if (!marks) return;
      const colours = new Uint32Array(marks.count);
      tint(marks, { colouring, circulation, dyeing: false }, theme, colours);
      for (let i = 0; i < marks.count; i++) {
        const [x, y] = [entryAt(marks.position, 2 * i), entryAt(marks.position, 2 * i + 1)];
        const packed = entryAt(colours, i);
        const color = ((packed & 255) << 16) | (packed & 0xff00) | ((packed >> 16) & 255);
        if (marks.origin[i] === 1) view.circle(x, y, 0.85 * half).stroke({ width: 0.6 * half, color });
        else
          view
            .poly([x - 1.2 * half, y, x, y - 1.2 * half, x + 1.2 * half, y, x, y + 1.2 * half])
            .fill({ color });
      }
    },
  };
}

/** Where the marks are at `time`, as tracers without trails; null where the geometry has no such vein. */
export function streamIn(
  { chest }: PathwayGeometry,
  circulation: Circulation | null,
  time: number,
): Tracers | null {
  const outline = chest.lowerVein && band(chest.lowerVein, chest.ivc.width, chest.ivc.width);
  const flow = circulation?.traces.flows.ivc;
  if (!outline || !circulation || !flow) return null;
  const { middle, width, length } = courseOf(outline);
  const area = (Math.PI * width * width) / 4;
  const { traces } = circulation;
  const passed = (1000 * passage(traces, flow).passed(time)) / area;
  const speed = valueAt(traces, flow, time) / 60000 / (area * 1e-6);
  const liver = hepaticShare(circulation);
  const count = Math.round(DENSE * width * length);
  const marks = {
    count,
    position: new Float32Array(2 * count),
    trail: new Float32Array(0),
    trailLength: 0,
    origin: new Uint8Array(count),
    age: new Float32Array(count),
    speed: new Float32Array(count),
    dyed: new Uint8Array(count),
  };
  for (let i = 0; i < count; i++) {
    const across = 2 * part(0.5 + i * STEPS[1]) - 1;
    // Laminar flow in a round vein: twice the mean in the middle, none at the wall.
    const profile = 2 * (1 - (WITHIN * across) ** 2);
    const along = part(part(0.5 + i * STEPS[0]) + (passed / length + MIXED) * profile);
    const [x, y] = middle(along);
    marks.position[2 * i] = x + (across * WITHIN * width) / 2;
    marks.position[2 * i + 1] = y;
    marks.origin[i] = i / count < liver ? 1 : 2;
    marks.speed[i] = Math.abs(speed) * profile;
    marks.age[i] = (along * length) / Math.max(1e-3, 1000 * entryAt(marks.speed, i));
  }
  return marks;
}

/** A band's outline runs up one side and back down the other. */
function courseOf(outline: readonly Point[]) {
  const half = outline.length / 2;
  const line = outline.slice(0, half).map(([x, y], i): Point => {
    const [ox, oy] = entryAt(outline, outline.length - 1 - i);
    return [(x + ox) / 2, (y + oy) / 2];
  });
  const [ax, ay] = entryAt(outline, 0);
  const [bx, by] = lastOf(outline);
  const [from, to] = [entryAt(line, 0), entryAt(line, half - 1)];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const middle = (along: number): Point => {
    const y = from[1] + along * (to[1] - from[1]);
    const i = Math.max(
      1,
      line.findIndex((point) => point[1] >= y),
    );
    const [p, q] = [entryAt(line, i - 1), entryAt(line, i)];
    return [p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1]), y];
  };
  return { middle, length, width: Math.hypot(ax - bx, ay - by) };
}

function hepaticShare({ traces }: Circulation): number {
  const { splanchnic, legs } = traces.flows;
  if (!splanchnic || !legs) return 0.5;
  const [liver, rest] = [meanOf(traces, splanchnic), meanOf(traces, legs)];
  return liver + rest > 0 ? liver / (liver + rest) : 0.5;
}
