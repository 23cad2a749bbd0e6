/** Raised hands: what counts, what is taken back, and what is refused. */
import { expect, test } from "vitest";
import {
  HALL_PHASES,
  type HallCount,
  type HallEvent,
  hearHall,
  MAX_HANDS,
  startHall,
  tally,
} from "../../../../src/modes/lecture/hall/hall.ts";
import { readToRoom } from "../../../../src/modes/lecture/windows/window-messages.ts";

const hear = (events: readonly HallEvent[], from: HallCount = startHall("lesson#step")) =>
  events.reduce(hearHall, from);
const hand = (choice: string): HallEvent => ({ kind: "hand", choice });

test("hands add up by choice; the last one is taken back, wherever it was", () => {
  const count = hear([hand("more"), hand("less"), hand("more"), hand("less"), { kind: "undo" }]);
  expect(tally(["less", "same", "more"], count)).toEqual([1, 0, 2]);
  expect(hear([{ kind: "undo" }]).hands).toEqual([]);
});

test("once locked no hand counts until it is opened again; starting again empties and opens", () => {
  const locked = hear([hand("more"), { kind: "further" }, hand("more")]);
  expect(locked).toMatchObject({ phase: "locked", hands: ["more"] });
  expect(hear([{ kind: "reopen" }, hand("more")], locked).hands).toHaveLength(2);
  expect(hear([{ kind: "clear" }], locked)).toEqual(startHall("lesson#step"));
});

test("each press goes one phase further, and the last stays", () => {
  const further: HallEvent = { kind: "further" };
  const phases = [0, 1, 2, 3, 4].map((presses) => hear(Array(presses).fill(further)).phase);
  expect(phases).toEqual([...HALL_PHASES, "compared"]);
});

test("no more hands than any hall has", () => {
  const full = { ...startHall("a#b"), hands: Array(MAX_HANDS).fill("x") as string[] };
  expect(hear([hand("x")], full)).toBe(full);
});

test("answers to choices that are not there are not counted", () => {
  const count = { ...startHall("x"), hands: ["a", "b", "constructor"], phones: { b: 4 } };
  expect(tally(["a", "constructor", "toString"], count)).toEqual([1, 1, 0]);
});

test("hands and phones are one count", () => {
  expect(tally(["a", "b"], { ...hear([hand("a")]), phones: { a: 3, b: 2 } })).toEqual([4, 2]);
});

test("a message with a choice that is no name, or with an unknown event, is none", () => {
  expect(readToRoom({ kind: "hall", event: hand("more") })).toEqual({ kind: "hall", event: hand("more") });
  for (const event of [
    hand("<b>"),
    hand(""),
    hand("x".repeat(61)),
    { kind: "open" },
    { kind: "undo", more: 1 },
  ])
    expect(readToRoom({ kind: "hall", event })).toBeNull();
});
