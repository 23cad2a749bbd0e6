/** What is asked for, as one small plain record. Lessons, keys, fingers and sliders only edit it; everything else is derived from it. */
import {
  CASES,
  type CirculationRequest,
  hasPlane,
  type ParameterValue,
  type Stage,
} from "../sim/parameters/request.ts";

export const SCENES = ["pathway", "circuit", "breathing", "calf", "exchange", "growth", "exercise"] as const;
export type SceneName = (typeof SCENES)[number];

export const COLOURINGS = ["origin", "speed", "age", "oxygen"] as const;
export type Colouring = (typeof COLOURINGS)[number];

export const OVERLAYS = ["none", "speed", "pressure", "loss"] as const;
export type Overlay = (typeof OVERLAYS)[number];

/** ratio of blood time to wall-clock time that is asked for */
export const PLAY_SPEEDS = { min: 0.1, max: 2, step: 0.1 } as const;

/** mm */
export const CLOT_SIZES = { min: 0.5, max: 12 } as const;
export const MAX_CLOTS = 12;

/** % of the body in which the first of two pathways is seen, up to the divider that is drawn across it */
export const SWIPES = { min: 0, max: 100, step: 1 } as const;

/** panes beside the first */
export const MAX_BESIDE = 2;

export interface View {
  readonly colouring: Colouring;
  readonly overlay: Overlay;
  readonly labels: boolean;
  readonly handles: boolean;
  readonly streamlines: boolean;
  readonly gradeLine: boolean;
  readonly ledger: boolean;
  /** within PLAY_SPEEDS */
  readonly playSpeed: number;
  readonly paused: boolean;
  /** s into the cycle of beat and breath at which all that follows the circulation is held; left out while it runs. Not part of a link. */
  readonly moment?: number | undefined;
  /** How many dye pulses have been asked for; each rise releases one. */
  readonly dye: number;
  /** The one element or place that is highlighted (key of the geometry's stations and places). */
  readonly focus: string | null;
  /** "whole" or the name of a place to zoom to. */
  readonly camera: string;
  /** within SWIPES: two pathways lie one over the other in one body; null: side by side */
  readonly swipe: number | null;
  /** mm: diameters of clots to release, empty = none */
  readonly clots: readonly number[];
}

/** A further pane beside the first: what differs from the request. */
export interface Beside {
  readonly stage?: Stage;
  readonly set?: Readonly<Record<string, ParameterValue>>;
}

export interface SceneState {
  readonly version: 1;
  readonly scene: SceneName;
  readonly request: CirculationRequest;
  /** at most MAX_BESIDE */
  readonly beside: readonly Beside[];
  readonly view: View;
  /** Names of settings that came with the scene and go with it, as long as nobody sets them (`enter-scene.ts`). Not part of a link. */
  readonly lent?: readonly string[];
}

export const START: SceneState = {
  version: 1,
  scene: "pathway",
  request: {
    kind: "circulation",
    stage: "extracardiac",
    body: CASES.caseA,
    volumeRule: "hold-atrial-pressure",
    set: {},
  },
  beside: [],
  view: {
    colouring: "origin",
    overlay: "none",
    labels: true,
    handles: false,
    streamlines: false,
    gradeLine: true,
    ledger: false,
    playSpeed: 0.5,
    paused: false,
    dye: 0,
    focus: null,
    camera: "whole",
    swipe: null,
    clots: [],
  },
};

/** The request of pane `index` (0 = the first), with that pane's differences applied. */
export function paneRequest(state: SceneState, index: number): CirculationRequest {
  if (index === 0) return state.request;
  const beside = state.beside[index - 1];
  if (!beside) throw new Error(`no pane ${index}`);
  return {
    ...state.request,
    stage: beside.stage ?? state.request.stage,
    set: { ...state.request.set, ...beside.set },
  };
}

/** The requests of all panes, the first one's first. */
export const paneRequests = (state: SceneState): CirculationRequest[] =>
  [0, ...state.beside.map((_, i) => i + 1)].map((pane) => paneRequest(state, pane));

/** Whether a computed flow field is in the picture, into which dye can be released. */
export const showsField = (state: SceneState): boolean =>
  state.scene === "pathway" && paneRequests(state).some(({ stage }) => hasPlane(stage));

/** Whether two pathways can lie one over the other: no more than two, and both in a plane. */
export const canSwipe = (state: SceneState): boolean =>
  state.scene === "pathway" &&
  state.beside.length === 1 &&
  paneRequests(state).every(({ stage }) => hasPlane(stage));

/** % of the body in which the first pathway is seen; null where each has a picture of its own. */
export const swipeOf = (state: SceneState): number | null => (canSwipe(state) ? state.view.swipe : null);
