/** A slide says what stands still: numbers of the settled flow, and where those are that only run live. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readLesson } from "../../../../src/lesson/read/read.ts";
import { readsFlow, slideWords } from "../../../../src/modes/lecture/deck/slide-words.ts";
import { stepStop } from "../../../../src/modes/lecture/talk/own-stops.ts";
import { type DrawnStop, findStops } from "../../../../src/modes/lecture/talk/stops.ts";
import type { FieldReadings } from "../../../../src/sim/flow-field/flow-field.ts";

const text = readFileSync("lessons/en/03-pathways.md", "utf8");
const race = "Blood washes the [[dye]] out. In the chamber, some of it turns and turns.";

/** The step with its wash-out times, its plain text begun by a sentence of one's own. */
function stop(sentence: string): DrawnStop {
  const lesson = readLesson(text.replace(race, sentence), "03-pathways.md").value!;
  return findStops([stepStop(lesson.id, "race")], [lesson]).found[0] as DrawnStop;
}
const TURNS = "{{ 100 * field.recirculatingArea | % 0 }} of the chamber turns.";

const said = (of: DrawnStop, field: Partial<FieldReadings> | null) => {
  const fields = [field as FieldReadings | null];
  const { body, notes } = slideWords(
    of,
    { glossary: {}, sources: {} },
    { exactly: () => null },
    {
      ...{ fields, reader: 1, link: "" },
    },
  );
  return [...body, notes].join("\n");
};

test("only a number that a still picture can have is waited for", () => {
  expect(readsFlow(stop(race))).toBe(false);
  expect(readsFlow(stop(TURNS))).toBe(true);
});

test("what only the live state measures is not being measured on paper", () => {
  const words = said(stop(race), null);
  expect(words).toContain("takes (measured in the live state) in the chamber");
  expect(words).not.toContain("being measured");
});

test("a flow's number stands on a slide once the flow has settled, and not before", () => {
  const reading = { recirculatingArea: 0.31 };
  expect(said(stop(TURNS), { ...reading, settled: false })).not.toContain("31");
  expect(said(stop(TURNS), { ...reading, settled: true })).toMatch(/31\s*% of the chamber turns/);
});
