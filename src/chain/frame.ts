/** All that a picture needs, and nothing else. Pictures read it; they never compute. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { ExchangeCourse } from "../sim/exchange/index.ts";
import type { FieldShape, FlowField } from "../sim/flow-field/flow-field.ts";
import type { FieldMeans } from "../sim/flow-field/means.ts";
import type { PathwayGeometry } from "../sim/geometry/geometry.ts";
import type { Tracers } from "../sim/tracers/tracers.ts";
import type { SceneState } from "../state/scene-state.ts";
import type { Departing } from "./departures.ts";
import type { LegValves } from "./leg-valves.ts";
import type { Sweep } from "./running-sweep.ts";

export interface LooseBody {
  /** mm */
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
  readonly angle: number;
  /** where it is: in the pathway, or gone through an opening of that name */
  readonly place: string;
}

/** How far a field has run. */
export interface FlowMoment {
  /** s of its own time since it began from rest */
  readonly time: number;
  /** s of its own time since its walls or its inflow last changed */
  readonly unchanged: number;
}

/** What a pane showed before the last change. */
export interface Before {
  readonly circulation: Circulation | null;
  /** null where no plane is drawn */
  readonly geometry: PathwayGeometry | null;
}

export interface Pane {
  readonly circulation: Circulation | null;
  /** What its blood is drawn by until that has come; left out where nothing is known. */
  readonly foreseen?: Pick<Circulation, "saturations"> | null;
  /** Left out when nothing has been changed, or the change need no longer be seen. */
  readonly before?: Before | undefined;
  /** The field runs at the first pane's inflow. */
  readonly equalInflow?: boolean;
  readonly geometry: PathwayGeometry | null;
  readonly shape: FieldShape | null;
  readonly field: FlowField | null;
  /** What maps show: means over the window of the field's readings. */
  readonly means?: FieldMeans | null;
  readonly tracers: Tracers | null;
  /** Of what that is mixed which has left of late by each opening; null until blood has gone through the field. */
  readonly departing?: Departing | null;
  /** What has gone through the fenestration, in the atrium; `undiluted`: part of each tracer's blood that is still the pathway's own, 1..0. */
  readonly throughHole?: { readonly tracers: Tracers; readonly undiluted: Float32Array } | null;
  readonly clots: readonly LooseBody[];
  /** The days after the operation; only while the exchange scene is shown. */
  readonly exchange?: ExchangeCourse | null;
  /** The leg veins' valves; only while the calf scene is shown. */
  readonly legValves?: LegValves | null;
  /** wash-out curve of the running dye pulse: s since release, fraction still inside; once known, s between which pulses leave */
  readonly washOut: {
    readonly time: readonly number[];
    readonly left: readonly number[];
    readonly band?: readonly [least: number, most: number];
  } | null;
}

export interface Frame {
  readonly state: SceneState;
  readonly panes: readonly Pane[];
  /** s of blood time on the running clock (the traces repeat on it) */
  readonly time: number;
  /** blood seconds in one wall-clock second, as achieved: what "shown at 0.4x" says */
  readonly pace: number;
  /** Each step down taken, as word keys ("fieldOff", "fieldLost", ...), said on screen in words. */
  readonly degraded: readonly string[];
  /** The whole frame is to stand still (reduced motion or paused). */
  readonly still: boolean;
  /** The sweep that the scene shows (growth, exercise), as far as it is answered. */
  readonly sweep?: Sweep | null;
}
