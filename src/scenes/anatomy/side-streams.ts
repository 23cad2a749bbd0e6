/** Marks of blood in the vessels beyond the pathway's openings, moved by the computed flow, as tracers with short trails. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { ChestFrame } from "../../sim/geometry/geometry.ts";
import type { Tracers } from "../../sim/tracers/tracers.ts";
import { flowTrace, meanOf, type Passage, passage, valueAt } from "../drawing/trace-clock.ts";
import { type Course, coursesOf, OVERLAP, WITHIN } from "./courses.ts";

/** Marks for each square millimetre of a 5-year-old's lumen. */
const DENSE = 0.62;
/** Steps whose multiples, taken modulo 1, fill an interval evenly in two directions (roots of x^3 = x + 1). */
const STEPS = [0.7548776662466927, 0.5698402909980532] as const;
/** s of way that a trail shows */
const TRAIL = 0.16;

const part = (value: number): number => value - Math.floor(value);

export interface SideStreams {
  readonly marks: Tracers;
  /** 0..1: how far each has come out of the fade at either end */
  readonly shown: Float32Array;
}

interface Moving {
  readonly course: Course;
  readonly blood: Passage;
  readonly flow: Float64Array;
  /** index of its first mark, and of the one after its last */
  readonly from: number;
  readonly to: number;
}

export interface SideFlow {
  /** Where the marks are at `time` (s of blood time); null while nothing is solved. */
  at(frame: ChestFrame, circulation: Circulation | null, time: number): SideStreams | null;
}

export function sideFlow(): SideFlow {
  let laidFor: ChestFrame | null = null;
  let solved: Circulation | null = null;
  let moving: readonly Moving[] = [];
  let streams: SideStreams | null = null;
  return {
    at(frame, circulation, time) {
      if (!circulation) return null;
      if (frame !== laidFor || circulation !== solved || !streams) {
        laidFor = frame;
        solved = circulation;
        [moving, streams] = lay(coursesOf(frame), circulation, frame.scale);
      }
      for (const each of moving) advance(each, streams, circulation, time, frame.scale);
      return streams;
    },
  };
}

function lay(
  courses: readonly Course[],
  circulation: Circulation,
  size: number,
): readonly [readonly Moving[], SideStreams] {
  let count = 0;
  const moving = courses.flatMap((course): Moving[] => {
    const flow = flowTrace(circulation.traces.flows, course.flow);
    if (!flow) return [];
    const from = count;
    count += Math.max(2, Math.round((DENSE * course.area) / size ** 2));
    return [{ course, flow, blood: passage(circulation.traces, flow), from, to: count }];
  });
  const marks = {
    count,
    position: new Float32Array(2 * count),
    trail: new Float32Array(4 * count),
    trailLength: 2,
    origin: new Uint8Array(count),
    age: new Float32Array(count),
    speed: new Float32Array(count),
    dyed: new Uint8Array(count),
  };
  for (const { course, from, to } of moving)
    for (let i = from; i < to; i++)
      marks.origin[i] = originOf(course.carries, (i - from + 0.5) / (to - from), i, circulation);
  return [moving, { marks, shown: new Float32Array(count) }];
}

/** Which origin the mark has whose place among its fellows is `place` (0..1): a lung's are mixed as the model mixes them. */
function originOf(
  carries: Course["carries"],
  place: number,
  index: number,
  circulation: Circulation,
): number {
  if (typeof carries === "number") return carries;
  const { shares, flows, traces } = circulation;
  if (!shares) return 0;
  const [upper, lower] = [flows.svc * shares.svc[carries], flows.ivc * shares.ivc[carries]];
  const liver = traces.flows.hepaticVein ? meanOf(traces, traces.flows.hepaticVein) : flows.ivc / 2;
  const pick = part(place + index * STEPS[1]) * (upper + lower);
  if (pick < upper) return 0;
  return pick - upper < lower * Math.min(1, liver / Math.max(1e-6, flows.ivc)) ? 1 : 2;
}

function advance(
  { course, blood, flow, from, to }: Moving,
  { marks, shown }: SideStreams,
  { traces }: Circulation,
  time: number,
  size: number,
): void {
  const area = (Math.PI * course.widest ** 2) / 4;
  const total = lastOf(course.delay);
  const reach = (1000 * course.share * blood.passed(time)) / area;
  const speed = (course.share * valueAt(traces, flow, time)) / 60000 / (area * 1e-6);
  for (let i = from; i < to; i++) {
    const across = 2 * part(0.5 + i * STEPS[1]) - 1;
    // Laminar flow in a round vessel: twice the mean in the middle, none at the wall.
    const profile = 2 * (1 - (WITHIN * across) ** 2) * 0.9 + 0.1;
    const along = total * part(part(0.5 + i * STEPS[0]) + (reach * profile) / total);
    const back = 1000 * Math.abs(speed) * profile * TRAIL;
    const own = put(course, along, across, marks.position, 2 * i);
    put(course, Math.max(0, along - back / 2), across, marks.trail, 4 * i);
    put(course, Math.max(0, along - back), across, marks.trail, 4 * i + 2);
    marks.speed[i] = Math.abs(speed) * profile * own.slowed;
    const length = lastOf(course.line.run);
    const rise = Math.min(1, own.run / (OVERLAP * 2 * size));
    const fall = Math.min(1, (length - own.run) / (OVERLAP * size));
    shown[i] = Math.min(rise, fall);
  }
}

const found = { run: 0, slowed: 1 };

/** Writes the place `along` (delay, mm) into `out`; returns how far that is by length, and the speed there over that at the widest. */
function put(
  { line, room, delay }: Course,
  along: number,
  across: number,
  out: Float32Array,
  index: number,
): typeof found {
  let [low, high] = [0, delay.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (entryAt(delay, middle) <= along) low = middle;
    else high = middle;
  }
  const span = entryAt(delay, high) - entryAt(delay, low) || 1;
  const w = Math.min(1, (along - entryAt(delay, low)) / span);
  const [ax, ay] = entryAt(line.points, low);
  const [bx, by] = entryAt(line.points, high);
  const step = entryAt(line.run, high) - entryAt(line.run, low) || 1;
  const side = across * (entryAt(room, low) + (entryAt(room, high) - entryAt(room, low)) * w);
  out[index] = ax + (bx - ax) * w - ((by - ay) / step) * side;
  out[index + 1] = ay + (by - ay) * w + ((bx - ax) / step) * side;
  found.run = entryAt(line.run, low) + step * w;
  found.slowed = step / span;
  return found;
}
