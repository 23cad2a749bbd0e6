/** Tracers of one pane between two moments of its field, their dye, and the held moment of a picture that stands still. */
import type { Circulation } from "../sim/circulation/answer.ts";
import type { FieldShape, FlowField } from "../sim/flow-field/flow-field.ts";
import type { PathwayGeometry } from "../sim/geometry/geometry.ts";
import {
  advance,
  beginDye,
  fill,
  freeJet,
  type Jet,
  recordWashOut,
  resettle,
  type Supply,
  TracerCloud,
  type TracerPlane,
  tracerPlane,
  type WashOut,
  washOutSeconds,
} from "../sim/tracers/index.ts";
import type { Tracers } from "../sim/tracers/tracers.ts";
import type { FieldLink } from "./field-link.ts";
import { holeOf, jetSpeed } from "./pane-jet.ts";

/** s of blood time for which a pulse of dye enters */
const PULSE = 0.5;
/** s after which a wash-out curve ends, whatever is left */
const LONGEST_CURVE = 60;
/** s of blood time that a trail spans, and its points: a few millimetres at the speed of venous blood */
const TRAIL = 0.045;
const TRAIL_POINTS = 3;
/** s of blood time in one stride, so that trails keep their spacing when drawings are rare; most strides in a drawing */
const STRIDE = TRAIL / TRAIL_POINTS;
const MAX_STRIDES = 5;
/** s of blood time that tracers are led through a still field before they are shown in it, and the stride of it */
const LED = 4;
const LED_STEP = 1 / 30;
const LED_STEPS_A_FRAME = 2;
/** s of field time at which a still picture takes the field anew, until it has settled */
const LOOKS = [0, 0.5, 1, 2, 4];
/** Part of all tracers that may be under way beyond the fenestration. */
const IN_JET = 0.25;

/** Blood moves; it is held where it is; or nothing may move at all and the picture is led to a state that teaches. */
export type Motion = "moving" | "held" | "still";

export interface Shown {
  readonly shape: FieldShape;
  readonly field: FlowField;
  readonly tracers: Tracers | null;
  /** what has gone through the fenestration and is still seen in the atrium */
  readonly jet: Pick<Jet, "tracers" | "undiluted"> | null;
  /** the two moments between which blood was moved, and how far between them */
  readonly from: FlowField;
  readonly blend: number;
}

export interface PaneTracers {
  readonly washOut: WashOut | null;
  /** s until nine tenths of the last pulse had left; undefined while they have not */
  readonly washOutTime: number | undefined;
  /** Releases a pulse; earlier dye loses its mark. */
  dye(): void;
  /** Null until there is a field. `time`: s of the page's clock. */
  follow(
    link: FieldLink,
    geometry: PathwayGeometry,
    circulation: Circulation | null,
    time: number,
    step: number,
    motion: Motion,
  ): Shown | null;
}

export function paneTracers(count: number, random: () => number): PaneTracers {
  const cloud = new TracerCloud(count, TRAIL_POINTS, TRAIL);
  const jet = freeJet(Math.ceil(IN_JET * count), TRAIL_POINTS, TRAIL, random);
  let pierced = "";
  let leak = -1;
  let plane: TracerPlane | null = null;
  let planeId = -1;
  let washOut: WashOut | null = null;
  let sinceDye = 0;
  /** s of the field's time that is shown */
  let shownTime = 0;
  let held: FlowField | null = null;
  let looks = 0;
  let led = 0;

  const supplyOf = (field: FlowField, circulation: Circulation | null): Supply => ({
    inflow: Object.fromEntries(field.readings.openings.map(({ name, flow }) => [name, flow])),
    hepaticShare: hepaticShareOf(circulation),
  });

  const settlePlane = (link: FieldLink, geometry: PathwayGeometry, first: Supply) => {
    plane = tracerPlane(link.shape!, geometry.openings);
    planeId = link.shapeId;
    held = null;
    looks = 0;
    led = 0;
    if (cloud.count === 0) fill(cloud, plane, cloud.capacity, first, random);
    else resettle(cloud, plane, random);
  };

  /** The jet starts anew where the hole or its law has changed. */
  const pierce = (geometry: PathwayGeometry, circulation: Circulation | null) => {
    const hole = holeOf(geometry, circulation);
    const key = JSON.stringify([geometry.name, hole]);
    if (key === pierced) return;
    pierced = key;
    leak = hole ? geometry.openings.findIndex(({ name }) => name === "fenestration") : -1;
    jet.lay(hole);
  };

  const move = (
    from: FlowField,
    to: FlowField,
    blend: number,
    seconds: number,
    supply: Supply,
    speed: number,
  ) => {
    const strides = Math.min(MAX_STRIDES, Math.max(1, Math.round(seconds / STRIDE)));
    const step = { from, to, blend, seconds: seconds / strides, supply };
    for (let n = 0; n < strides; n++) {
      jet.advance(step.seconds);
      advance(cloud, plane!, step, random, (tracer, opening, across, left) => {
        if (opening === leak) jet.take(cloud, tracer, across, speed, left);
      });
    }
    if (!washOut || sinceDye > LONGEST_CURVE) return;
    sinceDye += seconds;
    recordWashOut(washOut, cloud, sinceDye);
  };

  /** The moment that a still picture shows: copied, since the worker's arrays go back to it. */
  const hold = (field: FlowField): FlowField => {
    const due =
      held === null ||
      (!held.readings.settled &&
        (field.readings.settled || field.time >= (LOOKS[looks] ?? Number.POSITIVE_INFINITY)));
    if (!due && held) return held;
    while (looks < LOOKS.length && LOOKS[looks]! <= field.time) looks++;
    led = 0;
    held = { ...field, u: field.u.slice(), v: field.v.slice(), pressure: field.pressure.slice() };
    return held;
  };

  return {
    get washOut() {
      return washOut;
    },
    get washOutTime() {
      return washOut ? washOutSeconds(washOut) : undefined;
    },
    dye() {
      washOut = beginDye(cloud, PULSE);
      sinceDye = 0;
    },
    follow(link, geometry, circulation, time, step, motion) {
      const { shape, field } = link;
      if (!shape || !field || field.u.length === 0) return null;
      const supply = supplyOf(field, circulation);
      if (planeId !== link.shapeId) settlePlane(link, geometry, firstSupply(circulation));
      pierce(geometry, circulation);
      if (motion === "held") {
        const moment = hold(field);
        return { shape, field: moment, tracers: cloud, jet, from: moment, blend: 1 };
      }
      if (motion === "still") {
        const moment = hold(field);
        for (let n = 0; n < LED_STEPS_A_FRAME && led < LED; n++, led += LED_STEP) {
          move(moment, moment, 1, LED_STEP, supply, jetSpeed(geometry, circulation));
        }
        const shown = led >= LED;
        return {
          shape,
          field: moment,
          tracers: shown ? cloud : null,
          jet: shown ? jet : null,
          from: moment,
          blend: 1,
        };
      }
      held = null;
      looks = 0;
      const before = link.previous ?? field;
      shownTime = Math.min(field.time, Math.max(before.time, shownTime + step));
      const span = field.time - before.time;
      const blend = span > 0 ? (shownTime - before.time) / span : 1;
      if (step > 0) move(before, field, blend, step, supply, jetSpeed(geometry, circulation, time));
      return { shape, field, tracers: cloud, jet, from: before, blend };
    },
  };
}

/** Before the field has been measured the circulation says what enters. */
const firstSupply = (circulation: Circulation | null): Supply => ({
  inflow: { ivc: circulation?.flows.ivc ?? 1, svc: circulation?.flows.svc ?? 1 },
  hepaticShare: hepaticShareOf(circulation),
});

/** Part of the lower body's return that comes from liver and gut. */
function hepaticShareOf(circulation: Circulation | null): number {
  const { splanchnic, legs } = circulation?.traces.flows ?? {};
  if (!splanchnic || !legs) return 0.5;
  const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
  const [liver, rest] = [sum(splanchnic), sum(legs)];
  return liver + rest > 0 ? Math.min(1, Math.max(0, liver / (liver + rest))) : 0.5;
}
