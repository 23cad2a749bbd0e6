/** The scene on the stage told in words: message key and arguments, from the same numbers as the picture. */
import type { Frame } from "../chain/frame.ts";
import { readBreathing } from "./breathing/reading.ts";
import { readCalf } from "./calf/reading.ts";
import { type Reading, readCircuit } from "./circuit/reading.ts";
import { readExchange } from "./exchange/reading.ts";
import { readExercise } from "./exercise/reading.ts";
import { readGrowth } from "./growth/reading.ts";

const READERS: Readonly<
  Record<Exclude<Frame["state"]["scene"], "pathway">, (frame: Frame) => Reading | null>
> = {
  circuit: readCircuit,
  breathing: readBreathing,
  calf: readCalf,
  exchange: readExchange,
  growth: readGrowth,
  exercise: readExercise,
};

/** Null while there is nothing to tell, and for the pathway, which the page tells from its field's readings as well. */
export function readScene(frame: Frame): Reading | null {
  const { scene } = frame.state;
  return scene === "pathway" ? null : READERS[scene](frame);
}
