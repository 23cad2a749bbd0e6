/** Digits and then Enter: the stop to go to, from either window. */
import type { Signal } from "@preact/signals";
import type { LectureActs } from "./lecture-keys.ts";

/** @param go is given the stop's number, from 1 */
export const typedStop = (
  typed: Signal<string>,
  go: (number: number) => void,
): Pick<LectureActs, "digit" | "enter"> => ({
  digit(digit) {
    typed.value = `${typed.peek()}${digit}`.slice(-3);
  },
  enter() {
    const number = Number(typed.peek());
    typed.value = "";
    if (!number) return false;
    go(number);
    return true;
  },
});
