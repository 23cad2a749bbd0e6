/** What the chain offers to settings: one writable signal in, derived signals out, and a frame for the picture. */
import type { ReadonlySignal, Signal } from "@preact/signals";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { Fault } from "../sim/faults.ts";
import type { FieldReadings } from "../sim/flow-field/flow-field.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import type { SceneState } from "../state/scene-state.ts";
import type { FlowMoment, Frame } from "./frame.ts";
import type { WorkerPool } from "./worker-pool.ts";

export interface Chain {
  /** The one writable value. Everything else follows from it. */
  readonly scene: Signal<SceneState>;
  /** One for each pane; null until the first answer. The last good answer stays while a new one is under way. */
  readonly circulations: ReadonlySignal<readonly (Circulation | null)[]>;
  /** True from an edit until the circulation that belongs to it has arrived. */
  readonly solving: ReadonlySignal<boolean>;
  /** One for each pane, refreshed about four times a second; null while there is no field. */
  readonly readings: ReadonlySignal<readonly (FieldReadings | null)[]>;
  /** How far each pane's field has run by now; null while there is none. */
  moments(): readonly (FlowMoment | null)[];
  /** Blood seconds in one wall-clock second, as achieved. */
  readonly pace: ReadonlySignal<number>;
  /** Why the last edit was refused or could not be solved; empty when all is well. */
  readonly faults: ReadonlySignal<readonly Fault[]>;
  /** Word keys of each step down the ladder (field off, worker lost ...). */
  readonly degraded: ReadonlySignal<readonly string[]>;
  /** Solves one request beside the panes, for numbers that compare with another state. The answers of equal requests are kept. Rejects when the solver fails on it, which `faults` then says too. */
  answer(request: CirculationRequest): Promise<Circulation>;
  /** Starts workers of their own for one long job beside the panes; whoever asks for them releases them. */
  pool(): WorkerPool;
  /** A frame of another state, for a small picture of it: solved beside the panes, without a flow that has run. */
  still(state: SceneState): Promise<Frame>;
  /** Moves tracers and bodies to now and gives the picture its record; called once for each drawn frame. */
  frame(): Frame;
  /** The present scene for a picture that is not a moment of the screen: tracers led at once through the field as it is now, which then rests until the next frame. */
  picture(): Frame;
  /** Ends workers and frees memory. */
  release(): void;
}
