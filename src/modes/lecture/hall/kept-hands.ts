/** Hands raised in a talk, as a reload of its window finds them again; no other talk counts them. */
import * as v from "valibot";
import { windowKept } from "../windows/window-kept.ts";
import { type HallCount, hallCount } from "./hall.ts";

const MAX_QUESTIONS = 300;
const KEPT = windowKept(
  "lungward.lecture.hall",
  v.object({ list: v.string(), counts: v.pipe(v.array(hallCount), v.maxLength(MAX_QUESTIONS)) }),
);

/** @param list names the talk */
export function handsOf(list: string): readonly HallCount[] {
  const kept = KEPT.read();
  return kept?.list === list ? kept.counts : [];
}

export const keepHands = (list: string, counts: readonly HallCount[]): void =>
  KEPT.write({ list, counts: [...counts] });

export const forgetHands = (): void => KEPT.write(null);
