/** Tracers of one pane between two moments of its field, their dye, and the held moment of a picture that stands still. */
import { present } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { FieldShape, FlowField } from "../sim/flow-field/flow-field.ts";
import type { PathwayGeometry } from "../sim/geometry/geometry.ts";
import {
  advance,
  fill,
  freeJet,
  type Hole,
  type Jet,
  resettle,
  type Step,
  type Supply,
  TracerCloud,
  type TracerPlane,
  tracerPlane,
} from "../sim/tracers/index.ts";
import type { Tracers } from "../sim/tracers/tracers.ts";
import {
  countDeparture,
  type Departing,
  type Departures,
  departingNow,
  forget,
  noDepartures,
} from "./departures.ts";
import { type DyePulse, dyePulse } from "./dye-pulse.ts";
import { heldMoment } from "./held-moment.ts";
import type { LatestField } from "./latest-field.ts";
import { holeOf, jetSpeed } from "./pane-jet.ts";
import { firstSupply, type KnownSupply, supplyOf } from "./supply.ts";

/** s of blood time that a trail spans, and its points: a few millimetres at the speed of venous blood */
const TRAIL = 0.045;
const TRAIL_POINTS = 3;
/** s of blood time in one stride, so that trails keep their spacing when drawings are rare; most strides in a drawing */
const STRIDE = TRAIL / TRAIL_POINTS;
const MAX_STRIDES = 5;
/** First drawings of moving blood, in which it goes one stride at most: what nobody has seen yet is soon seen instead. */
const SHORT = 2;
/** s of a field's time from rest from which tracers are led through it */
const FLOWS_FROM = 1;
/** s of blood time that tracers are led through a still field before they are shown in it, and the stride of it */
const LED = 4;
const LED_STEP = 1 / 30;
const LED_STEPS_A_FRAME = 2;
/** s of it that dye has in a picture that stands still: it has come in and not yet left */
const DYE_LED = 0.6;
/** The same for a picture, all at once: blood crosses the pathway in less, and whoever waits for a picture sees nothing in between. */
const LED_STEPS_OF_PICTURE = 60;
/** Room for tracers over their usual number, which the flow moves up and down. */
const SPARE = 1.25;
/** Part of all tracers that moving blood begins with, so that it is soon seen, and the part by which each drawing adds to it. */
const BEGINS_WITH = 1 / 6;
const JOINS = 1 / 80;
/** Part of all tracers that may be under way beyond the fenestration. */
const IN_JET = 0.25;

/**
 * Blood moves; it is held where it is; nothing may move at all and the picture is led to a state that teaches; or a copy is
 * led there at once, through the field as it is now, for a picture apart from the screen, which stays as it was.
 */
type Motion = "moving" | "held" | "still" | "picture";

export interface Shown {
  readonly shape: FieldShape;
  readonly field: FlowField;
  readonly tracers: Tracers | null;
  /** of what that is mixed which has left of late; null until that is known */
  readonly departing: Departing | null;
  /** what has gone through the fenestration and is still seen in the atrium */
  readonly jet: Pick<Jet, "tracers" | "undiluted"> | null;
  /** the two moments between which blood was moved, and how far between them */
  readonly from: FlowField;
  readonly blend: number;
}

/** The pane whose blood it is. */
interface PaneBlood extends KnownSupply {
  readonly geometry: PathwayGeometry;
}

export interface Passing {
  /** s of the page's clock */
  readonly time: number;
  /** s of blood time since the last drawing */
  readonly step: number;
  readonly motion: Motion;
  /** part of its tracers that a pane shows where blood moves: all when left out */
  readonly shown?: number;
}

export interface PaneTracers {
  readonly dye: DyePulse;
  /** Null until there is a field. */
  follow(latest: LatestField, blood: PaneBlood, passing: Passing): Shown | null;
}

export function paneTracers(count: number, random: () => number): PaneTracers {
  const cloud = new TracerCloud(Math.ceil(SPARE * count), TRAIL_POINTS, TRAIL);
  const dye = dyePulse(cloud);
  const moving = mover(cloud, count, random);
  const held = heldMoment();
  let settled: FieldShape | null = null;
  /** s of the field's time that is shown */
  let shownTime = 0;
  /** drawings in which blood moved */
  let moved = 0;
  /** s for which tracers have been led through the still moment `ledIn` */
  let led = 0;
  let ledIn: FlowField | null = null;
  /** it has been shown once: dye that is released in it later is led in before the eye */
  let stands = false;
  /** the pulse that was led in with them */
  let ledDye: DyePulse["washOut"] = null;

  // One order may be built twice: a field that leaves the GPU goes on on the processor's coarser grid.
  const settle = (shape: FieldShape, blood: PaneBlood, part: number) => {
    const { geometry } = blood;
    if (settled === shape) return;
    settled = shape;
    held.forget();
    ledIn = null;
    moving.settle(tracerPlane(shape, geometry.openings), { supply: firstSupply(blood), part }, geometry.name);
  };

  /** Leads tracers a little further through a moment; whether they have once come far enough to be shown. */
  const lead = (moment: FlowField, supply: Supply, speed: number): boolean => {
    if (moment.time < FLOWS_FROM && !moment.readings.settled) return false;
    if (moment !== ledIn) [led, ledDye, stands] = [0, null, false];
    ledIn = moment;
    if (dye.washOut !== ledDye) led = Math.min(led, LED - DYE_LED);
    for (let n = 0; n < LED_STEPS_A_FRAME && led < LED; n++, led += LED_STEP) {
      if (dye.washOut !== ledDye && led >= LED - DYE_LED) {
        dye.begin();
        ledDye = dye.washOut;
      }
      moving.move(ledStep(moment, supply), speed);
    }
    stands ||= led >= LED;
    return stands;
  };

  /** The field as it is now, and a copy of the blood led through it. */
  const apart = (field: FlowField, supply: Supply, speed: number) => {
    const moment = heldMoment().of(field);
    const copy = moving.copy();
    for (let n = 0; n < LED_STEPS_OF_PICTURE; n++) copy.move(ledStep(moment, supply), speed);
    const { tracers, jet, departing } = copy;
    return { field: moment, from: moment, tracers, jet, departing };
  };

  return {
    dye,
    follow(latest, blood, { time, step: passed, motion, shown: part = 1 }) {
      const { shape, field, previous } = latest;
      const { geometry, circulation, foreseen } = blood;
      const flows = field !== null && field.u.length > 0;
      // Once it is known what flows in tracers need not wait for how.
      if (shape && (flows || circulation || foreseen))
        settle(shape, blood, motion === "moving" ? BEGINS_WITH : 1);
      if (!shape || !flows) return null;
      const supply = supplyOf(field, blood);
      moving.pierce(geometry, circulation);
      const shown = { shape, field, from: field, tracers: cloud, jet: moving.jet, blend: 1 };
      if (motion === "picture") return { ...shown, ...apart(field, supply, jetSpeed(geometry, circulation)) };
      if (motion !== "moving") {
        const moment = held.of(field);
        const seen = motion === "held" || lead(moment, supply, jetSpeed(geometry, circulation));
        const now = { ...shown, departing: moving.departing, field: moment, from: moment };
        return seen ? now : { ...now, tracers: null, jet: null };
      }
      held.forget();
      const step = moved < SHORT ? Math.min(passed, STRIDE) : passed;
      const from = previous ?? field;
      shownTime = Math.min(field.time, Math.max(from.time, shownTime + step));
      const span = field.time - from.time;
      const blend = span > 0 ? (shownTime - from.time) / span : 1;
      if (step > 0) {
        moved++;
        // What was led through a moment that stood still has no wash-out.
        if (ledDye) dye.begin();
        ledDye = null;
        moving.join(blood, part, JOINS);
        moving.move({ from, to: field, blend, seconds: step, supply }, jetSpeed(geometry, circulation, time));
        dye.passed(step);
      }
      return { ...shown, departing: moving.departing, from, blend };
    },
  };
}

const ledStep = (moment: FlowField, supply: Supply): Step => ({
  from: moment,
  to: moment,
  blend: 1,
  seconds: LED_STEP,
  supply,
});

/** Moves tracers in the plane, and what leaves through the fenestration beyond it. */
function mover(cloud: TracerCloud, count: number, random: () => number) {
  const newJet = () => freeJet(Math.ceil(IN_JET * cloud.capacity), TRAIL_POINTS, TRAIL, random);
  const jet = newJet();
  let plane: TracerPlane | null = null;
  let hole: Hole | null = null;
  let pierced = "";
  let leak = -1;
  let left = noDepartures(0);
  let mixed: Departing | null = null;
  let walls = "";
  const stride = (into: TracerCloud, beyond: Jet, gone: Departures, step: Step, speed: number) => {
    const strides = Math.min(MAX_STRIDES, Math.max(1, Math.round(step.seconds / STRIDE)));
    const seconds = step.seconds / strides;
    for (let n = 0; n < strides; n++) {
      beyond.advance(seconds);
      forget(gone, seconds);
      advance(into, present(plane), { ...step, seconds }, random, (tracer, opening, across, rest) => {
        countDeparture(gone, opening, present(into.origin[tracer]));
        if (opening === leak) beyond.take(into, tracer, across, speed, rest);
      });
    }
  };
  return {
    jet,
    get departing() {
      return mixed;
    },
    /** Other walls have come: tracers that lie in one are placed again, and those of another pathway, or one with a fenestration more, leave it otherwise. */
    settle(next: TracerPlane, first: { readonly supply: Supply; readonly part: number }, name: string) {
      plane = next;
      const ways = [name, ...next.openings.map((opening) => opening.name)].join();
      if (ways !== walls) [left, mixed] = [noDepartures(next.openings.length), null];
      walls = ways;
      if (cloud.count === 0) fill(cloud, plane, Math.ceil(first.part * count), first.supply, random);
      else resettle(cloud, plane, random);
    },
    /** Further tracers join those that there are, `part` of all at a time, until there are `wanted` of all; what is too many leaves with the flow. */
    join(known: KnownSupply, wanted: number, part: number) {
      const most = Math.ceil(wanted * count);
      cloud.usual = Math.min(cloud.usual, most);
      if (!plane || cloud.usual >= most) return;
      const next = Math.min(most, Math.ceil(cloud.usual + part * count));
      fill(cloud, plane, next, firstSupply(known), random);
    },
    /** The jet restarts where the hole or its law has changed. */
    pierce(geometry: PathwayGeometry, circulation: Circulation | null) {
      const next = holeOf(geometry, circulation);
      const key = JSON.stringify([geometry.name, next]);
      if (key === pierced) return;
      pierced = key;
      hole = next;
      leak = hole ? geometry.openings.findIndex(({ name }) => name === "fenestration") : -1;
      jet.lay(hole);
    },
    /** @param speed m/s of the jet where it begins */
    move(step: Step, speed: number) {
      stride(cloud, jet, left, step, speed);
      mixed = departingNow(left, present(plane).openings);
    },
    /** The blood as it is, to be moved apart from the screen; its jet begins anew, which fills within a second, and no dye is measured. */
    copy() {
      const tracers = structuredClone(cloud);
      const beyond = newJet();
      beyond.lay(hole);
      const gone = structuredClone(left);
      return {
        tracers,
        jet: beyond,
        get departing() {
          return departingNow(gone, present(plane).openings);
        },
        move: (step: Step, speed: number) => stride(tracers, beyond, gone, step, speed),
      };
    },
  };
}
