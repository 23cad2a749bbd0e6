/** What puts the later scenes into words, fetched with the first of them. */
import type { Frame } from "../../../chain/frame.ts";
import { readBreathing } from "../../../scenes/breathing/breathing-reading.ts";
import { readCalf } from "../../../scenes/calf/calf-reading.ts";
import { type Reading, readCircuit } from "../../../scenes/circuit/circuit-reading.ts";
import { readExchange } from "../../../scenes/exchange/exchange-reading.ts";
import { readExercise } from "../../../scenes/exercise/exercise-reading.ts";
import { readGrowth } from "../../../scenes/growth/growth-reading.ts";
import type { SceneName } from "../../../state/scene-state.ts";

export type Readers = Readonly<Record<Exclude<SceneName, "pathway">, (frame: Frame) => Reading | null>>;

export const READERS: Readers = {
  circuit: readCircuit,
  breathing: readBreathing,
  calf: readCalf,
  exchange: readExchange,
  growth: readGrowth,
  exercise: readExercise,
};
