/** The text equivalent of whichever scene is shown, from the very Frame that is drawn. */
import type { Frame } from "../../chain/frame.ts";
import { speakQuantity, t } from "../../i18n/index.ts";
import { readBreathing } from "../../scenes/breathing/breathing-reading.ts";
import { readCalf } from "../../scenes/calf/calf-reading.ts";
import { type Reading, readCircuit } from "../../scenes/circuit/circuit-reading.ts";
import { readExchange } from "../../scenes/exchange/exchange-reading.ts";
import { readExercise } from "../../scenes/exercise/exercise-reading.ts";
import { readGrowth } from "../../scenes/growth/growth-reading.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import type { SceneName } from "../../state/scene-state.ts";
import { readingOf } from "../../ui/pathway-sentences.ts";
import type { Context } from "./mode.ts";

const READERS: Readonly<Partial<Record<SceneName, (frame: Frame) => Reading | null>>> = {
  circuit: readCircuit,
  breathing: readBreathing,
  calf: readCalf,
  exchange: readExchange,
  growth: readGrowth,
  exercise: readExercise,
};

/** Stages stand in the readers' arguments by their own names. */
const inWords = ({ args }: Reading) =>
  Object.fromEntries(
    Object.entries(args).map(([name, value]) => [
      name,
      /^(stage|otherStage)$/.test(name) ? t(`stage.${value}`) : value,
    ]),
  );

/** Sentences; `spoken`: units as words for a voice; `still`: without what only a moving flow shows. Follows the scene, the answers and the readings. */
export function sceneReading(
  { session, stage }: Context,
  { spoken = false, still = false } = {},
): readonly string[] {
  const { chain } = session;
  const circulation = chain.circulations.value[0] ?? null;
  const readings = (!still && chain.readings.value[0]) || null;
  // Where no pathway leads to the lungs its sentences would speak of what isn't there.
  const without = circulation !== null && !hasPathway(circulation.request.stage);
  const reader = READERS[session.scene.value.scene] ?? (without ? readCircuit : undefined);
  if (!reader) return readingOf(circulation, readings, spoken ? speakQuantity : undefined);
  const frame = stage.frame();
  const reading = frame && reader(frame);
  return reading ? [t(reading.key, inWords(reading))] : [t("reading.waiting")];
}
