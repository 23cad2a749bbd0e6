/** Marks of blood in the vessels beyond the pathway's openings, moved by the computed flow, as tracers with short trails. */
import type { Departing } from "../../chain/departures.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Distance } from "../../sim/geometry/distance.ts";
import type { ChestFrame } from "../../sim/geometry/geometry.ts";
import type { Tracers } from "../../sim/tracers/tracers.ts";
import { leftOf, part, STEPS } from "../drawing/even-spread.ts";
import { flowTrace, meanOf, type Passage, passage, valueAt } from "../drawing/trace-clock.ts";
import { shortTrails } from "../layers/joined-tracers.ts";
import { coursesOf, WITHIN } from "./courses.ts";
import { DENSE, markDensity } from "./mark-density.ts";
import { type Course, OVERLAP } from "./side-course.ts";
import { mixtureOf, originAt } from "./side-mixture.ts";
import { DESCENT, type Ventricle } from "./standing.ts";

/** s of way that a trail shows */
const TRAIL = 0.16;
/** mm of a 5-year-old that a trail reaches back: from farther its straight stretches would leave the vessel's bends. */
const REACH = 5;

interface SideStreams {
  readonly marks: Tracers;
  /** 0..1: how far each has come out of the fade at either end */
  readonly shown: Float32Array;
  /** 1 for blood from the lungs, 2 for the heart's, which may be mixed */
  readonly rich: Uint8Array;
  /** 1..0: part of its own colour that is left in each, on its way into mixed blood */
  readonly unmixed: Float32Array;
  /** how often each has gone its way: it comes in anew with what then comes in */
  readonly turns: Int32Array;
}

/** What the marks are moved by; `redrawn`: all are what comes in now. */
interface Now extends Required<Pick<Computed, "departing" | "sections" | "kept">> {
  readonly time: number;
  readonly size: number;
  /** of the lungs over rest, linear */
  readonly swell: number;
  readonly redrawn: boolean;
}

interface Moving {
  readonly course: Course;
  readonly blood: Passage;
  readonly flow: Float64Array;
  /** parts by origin, as the circulation has them */
  readonly mixture: readonly number[];
  /** part of the flow that goes this way, and mm2 of lumen that it has */
  readonly share: number;
  readonly lumen: number;
  /** index of its first mark, and of the one after its last */
  readonly from: number;
  readonly to: number;
}

export interface SideFlow {
  /** Where the marks are at `time` (s of blood time) in a chest whose lungs have this linear size against rest; null while nothing is solved. */
  at(
    frame: ChestFrame,
    circulation: Circulation | null,
    time: number,
    lungs: number,
    computed?: Computed,
  ): SideStreams | null;
}

/** What the computed plane tells. */
interface Computed {
  /** mm from its lumen */
  readonly pathway?: Distance;
  /** parts by origin of what leaves it for each lung: that is what goes on there; the circulation's own while it is not known */
  readonly departing?: Departing | null;
  /** of each ventricle over its fullest, linear, where its blood draws together with it */
  readonly sections?: Readonly<Record<Ventricle, number>> | null;
  /** part of the marks that has room where they are drawn small */
  readonly kept?: number;
}

/** @param coursesIn the ways in a chest */
export function sideFlow(coursesIn: typeof coursesOf = coursesOf): SideFlow {
  let laidFor: ChestFrame | null = null;
  let solved: Circulation | null = null;
  let moving: readonly Moving[] = [];
  let streams: SideStreams | null = null;
  let shownAt = Number.NaN;
  let mixed: Departing | null = null;
  return {
    at(frame, circulation, time, lungs, { pathway, departing = null, sections = null, kept = 1 } = {}) {
      if (!circulation) return null;
      const anew = frame !== laidFor || circulation !== solved || !streams;
      if (anew || !streams) {
        laidFor = frame;
        solved = circulation;
        [moving, streams] = lay(
          coursesIn(frame, pathway),
          circulation,
          markDensity(frame).beyond / frame.scale ** 2,
        );
      }
      // Where blood stands still none comes in that could bring another mixture.
      const redrawn = anew || (time === shownAt && departing !== mixed);
      [shownAt, mixed] = [time, departing];
      const now = { time, size: frame.scale, swell: lungs - 1, departing, sections, kept, redrawn };
      for (const each of moving) advance(each, streams, circulation, now);
      return streams;
    },
  };
}

function lay(
  courses: readonly Course[],
  circulation: Circulation,
  perArea: number,
): readonly [readonly Moving[], SideStreams] {
  let count = 0;
  const pooled = poolOf(
    courses.filter((course) => course.pooled),
    circulation,
  );
  const moving = courses.flatMap((course): Moving[] => {
    const flow = flowTrace(circulation.traces.flows, course.flow);
    if (!flow) return [];
    const from = count;
    const [share, lumen, area] = course.pooled
      ? pooled(course)
      : [course.share, lumenOf(course), course.area];
    count += Math.max(2, Math.round(DENSE * area * perArea));
    const blood = passage(circulation.traces, flow);
    const mixture = mixtureOf(course.carries, circulation);
    return [{ course, flow, blood, mixture, share, lumen, from, to: count }];
  });
  const rich = new Uint8Array(count);
  for (const { course, from, to } of moving) {
    if (course.carries === "rich") rich.fill(1, from, to);
    if (course.carries === "arterial") rich.fill(2, from, to);
  }
  const streams = {
    marks: shortTrails(count),
    shown: new Float32Array(count),
    rich,
    unmixed: new Float32Array(count).fill(1),
    turns: new Int32Array(count),
  };
  return [moving, streams];
}

const lumenOf = ({ widest }: Course): number => (Math.PI * widest ** 2) / 4;

/** Of courses that meet in one chamber, each one's share of its flow, mm2 of lumen and area of marks: by the part that it brings of all that comes. */
function poolOf(courses: readonly Course[], { traces, flows }: Circulation) {
  // What collaterals bring into the lungs comes back with the lungs' own.
  const back = traces.flows.pulmonaryVein ? meanOf(traces, traces.flows.pulmonaryVein) : 0;
  const returned = Math.max(1, back / Math.max(1e-6, flows.left + flows.right));
  const shareOf = ({ share, carries }: Course) => share * (carries === "rich" ? returned : 1);
  const brings = (course: Course): number => {
    const flow = flowTrace(traces.flows, course.flow);
    return flow ? shareOf(course) * meanOf(traces, flow) : 0;
  };
  const lengthOf = ({ run }: Course) => run[run.length - 1]!;
  const sum = (of: (course: Course) => number) => courses.reduce((total, course) => total + of(course), 0);
  const [all, lumen, width] = [sum(brings), sum(lumenOf), sum((course) => course.area / lengthOf(course))];
  return (course: Course): readonly [share: number, lumen: number, area: number] => {
    const part = brings(course) / Math.max(1e-6, all);
    return [shareOf(course), Math.max(1, part * lumen), part * width * lengthOf(course)];
  };
}

function advance(
  { course, blood, flow, mixture, share, lumen, from, to }: Moving,
  { marks, shown, unmixed, turns }: SideStreams,
  { traces }: Circulation,
  { time, size, swell: breath, departing, sections, kept, redrawn }: Now,
): void {
  const beats = course.rides?.beats;
  const swell = beats ? (sections?.[beats] ?? 1) - 1 : breath;
  const { carries } = course;
  const entering = (carries === "left" || carries === "right" ? departing?.[carries] : null) ?? mixture;
  const total = course.delay[course.delay.length - 1]!;
  const reach = (1000 * share * blood.passed(time)) / lumen;
  const speed = (share * valueAt(traces, flow, time)) / 60000 / (lumen * 1e-6);
  for (let i = from; i < to; i++) {
    // Each mark has its rank: where fewer show, the same ones stay.
    const place = part(0.5 + i * STEPS[0]);
    shown[i] = 0;
    if (leftOf(kept, place) <= 0) continue;
    const across = 2 * part(0.5 + i * STEPS[1]) - 1;
    // Laminar flow in a round vessel: twice the mean in the middle, none at the wall.
    const profile = 2 * (1 - (WITHIN * across) ** 2) * 0.9 + 0.1;
    const way = part(i * i * STEPS[1]) + (reach * profile) / total;
    const turn = Math.floor(way);
    if (redrawn || turn !== turns[i]) {
      turns[i] = turn;
      marks.origin[i] = originAt(entering, part(i * STEPS[1] + turn * STEPS[0]));
    }
    const along = total * (way - turn);
    find(course, stretchOf(course, along), along, across);
    ride(course, swell, size);
    marks.position[2 * i] = found.x;
    marks.position[2 * i + 1] = found.y;
    if (course.unmixed) unmixed[i] = course.unmixed[found.at]!;
    marks.speed[i] = Math.abs(speed) * profile * found.slowed;
    const rise = found.run / (OVERLAP * size);
    const fall = (course.run[course.run.length - 1]! - found.run) / (OVERLAP * size);
    const rank = leftOf(kept * found.seen, place);
    shown[i] = Math.max(0, Math.min(1, rise, fall, rank));
    // A trail lies right behind its head; one that is not shown needs none.
    if (shown[i] === 0) {
      marks.trail.fill(found.x, 4 * i, 4 * i + 4);
      marks.trail[4 * i + 1] = marks.trail[4 * i + 3] = found.y;
      continue;
    }
    const reached = (REACH * size) / Math.max(0.05, found.slowed);
    const back = Math.min(1000 * Math.abs(speed) * profile * TRAIL, reached);
    for (let k = 0; k < 2; k++) {
      trailed(course, Math.max(0, along - (back * (k + 1)) / 2), across);
      ride(course, swell, size);
      marks.trail[4 * i + 2 * k] = found.x;
      marks.trail[4 * i + 2 * k + 1] = found.y;
    }
  }
}

/** The same for a trail's next point; it ends where something lies before it. */
function trailed(course: Course, along: number, across: number): void {
  const { x, y } = found;
  find(course, found.at, along, across);
  if (found.seen < COVERED) [found.x, found.y] = [x, y];
}

/** Part of the marks of which less shows nothing. */
const COVERED = 0.05;

/** The place found last (mm): its stretch, how far it is by length, and the speed there over that at the widest. */
const found = { x: 0, y: 0, at: 0, run: 0, slowed: 1, seen: 1 };

/** Moves the place found last as breath or beat moves the part that it lies in. @param swell of the lungs over rest or of a ventricle over its fullest, linear */
function ride({ rides }: Course, swell: number, size: number): void {
  if (!rides) return;
  const part = swell * rides.held[found.at]!;
  if (rides.about === "diaphragm") found.y -= part * DESCENT * size;
  else {
    found.x += part * (found.x - rides.about[0]);
    found.y += part * (found.y - rides.about[1]);
  }
}

/** The stretch in which `along` (delay, mm) lies. */
function stretchOf({ delay }: Course, along: number): number {
  let [low, high] = [0, delay.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (delay[middle]! <= along) low = middle;
    else high = middle;
  }
  return low;
}

/** Writes into `found` the place `along` and `across` a course, in the stretch `at` or before it. */
function find({ x, y, run, room, delay, seen }: Course, at: number, along: number, across: number): void {
  let low = at;
  while (low > 0 && delay[low]! > along) low--;
  const high = low + 1;
  const span = delay[high]! - delay[low]! || 1;
  const w = Math.min(1, (along - delay[low]!) / span);
  const [dx, dy] = [x[high]! - x[low]!, y[high]! - y[low]!];
  const step = run[high]! - run[low]! || 1;
  const side = (across * (room[low]! + (room[high]! - room[low]!) * w)) / step;
  found.x = x[low]! + dx * w - dy * side;
  found.y = y[low]! + dy * w + dx * side;
  found.at = low;
  found.run = run[low]! + step * w;
  found.slowed = step / span;
  found.seen = seen[low]! * (1 - w) + seen[high]! * w;
}
