import { expect, test } from "vitest";
import { NO_PROGRESS, type Progress } from "../../../src/lesson/progress/progress.ts";
import {
  LONGEST_PROGRESS_FILE,
  readProgressFile,
  writeProgressFile,
} from "../../../src/lesson/progress/progress-file.ts";

const progress: Progress = {
  version: 1,
  latest: "one",
  reader: 7,
  lessons: {
    one: {
      step: "a",
      seen: ["a"],
      finished: false,
      answers: { a: { given: ["x", "y"], right: false, truth: ["y", "x"], tries: 2, day: "2026-11-29" } },
      recalled: {},
    },
  },
};
const note = { kit: "0.1.0", date: "2026-11-29T09:00:00Z", cautions: ["Invented."] };
const text = writeProgressFile(progress, note);

test("a file gives back the progress that it was made of, with its date", () => {
  expect(readProgressFile(text)).toEqual({ progress, date: note.date, fault: null });
});

test.each([
  ["", 'file: found ""; allowed: JSON'],
  ["[1", 'file: found "[1"; allowed: JSON'],
  ["7", "file: found 7; allowed: an object"],
  [`"${"x".repeat(LONGEST_PROGRESS_FILE)}"`, /^file: found 2000002 characters; allowed: at most 2000000$/],
  [JSON.stringify({ ...NO_PROGRESS, version: 2 }), /^version: found 2; allowed: 1; a newer version/],
  [JSON.stringify({ lessons: {} }), /^version: found undefined; allowed: /],
  [text.replace('"tries": 2', '"tries": 0'), /^lessons\.one\.answers\.a\.tries: found 0; allowed: >=1$/],
  [
    text.replace('"finished": false', '"finished": "no"'),
    /^lessons\.one\.finished: found "no"; allowed: boolean$/,
  ],
  [text.replace('"latest"', '"newest"'), /^newest: found "newest"; allowed: no key of this name$/],
])("%.40s is refused with the key, what was found and what is allowed", (bad, fault) => {
  expect(readProgressFile(bad).fault).toEqual(
    typeof fault === "string" ? fault : expect.stringMatching(fault),
  );
});
