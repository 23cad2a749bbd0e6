/** The text equivalent of whichever scene is shown, from the very Frame that is drawn. */
import { signal } from "@preact/signals";
import { speakQuantity, t } from "../../../i18n/index.ts";
import type { Reading } from "../../../scenes/circuit/circuit-reading.ts";
import { hasPathway } from "../../../sim/parameters/request.ts";
import { readingOf } from "../../../ui/pathway-sentences.ts";
import type { Context } from "../mode.ts";
import type { Readers } from "./scene-readers.ts";

const readers = signal<Readers | null>(null);
let asked = false;

/** Null until they have come; where they do not come, the scene doesn't either, and says so. */
function readersHere(): Readers | null {
  if (!readers.value && !asked) {
    asked = true;
    import("./scene-readers.ts").then(
      ({ READERS }) => {
        readers.value = READERS;
      },
      () => {
        asked = false;
      },
    );
  }
  return readers.value;
}

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
  const { scene } = session.scene.value;
  if (scene === "pathway" && !without)
    return readingOf(circulation, readings, spoken ? speakQuantity : undefined);
  const reader = readersHere()?.[scene === "pathway" ? "circuit" : scene];
  const frame = stage.frame();
  const reading = frame && reader?.(frame);
  return reading ? [t(reading.key, inWords(reading))] : [t("reading.waiting")];
}
