import { describe, expect, test } from "vitest";
import { NO_PROGRESS, type Progress, withLesson } from "../../src/lesson/progress/progress.ts";
import { packProgress, unpackProgress } from "../../src/lesson/progress/progress-pack.ts";
import { LONGEST_SUSPEND_DATA, type ScormApi, scormRecord, timespan } from "../../src/lms/scorm.ts";
import { findApi } from "../../src/lms/scorm-window.ts";
import { CHOICE } from "./answers.ts";
import { courseSystem, REPORT, stamp } from "./scorm-system.ts";

const longest = (): Progress => {
  let progress = NO_PROGRESS;
  for (let lesson = 1; lesson <= 10; lesson++) {
    const ids = Array.from({ length: 14 }, (_, step) => `step-number-${lesson}-${step}`);
    progress = withLesson(progress, `${lesson}-a-lesson-with-a-name`, {
      step: ids[13]!,
      seen: ids,
      finished: lesson < 10,
      answers: Object.fromEntries(
        ids.slice(0, 7).map((id, index) => [
          id,
          {
            given: `answer-${index % 3}`,
            right: index % 4 > 0,
            tries: 1 + (index % 2),
            day: `2026-0${1 + (lesson % 9)}-1${index}`,
            note: "the pressure below went up",
          },
        ]),
      ),
      recalled: Object.fromEntries(
        ids
          .slice(0, 4)
          .map((id) => [`${lesson}-a-lesson-with-a-name#${id}`, { right: true, day: "2026-11-25" }]),
      ),
    });
  }
  return progress;
};

describe("SCORM 1.2, against an independent run-time double", () => {
  test("U18 a visit begins, reports at each step, ends, and the next one resumes in the right step within 4,096 characters", async () => {
    const first = courseSystem();
    let clock = 100;
    const voice = scormRecord(first.checked, { now: () => clock, stamp });
    expect(first.api.LMSGetValue("cmi.core.lesson_status")).toBe("incomplete");
    expect(await voice.load()).toBeNull();
    expect(voice.records()).toBe(true);

    const text = packProgress(longest(), LONGEST_SUSPEND_DATA);
    expect(text.length).toBeLessThanOrEqual(LONGEST_SUSPEND_DATA);
    const place = "10-a-lesson-with-a-name#step-number-10-13";
    const report = { ...REPORT, text, place, score: { right: 40, asked: 60 } };
    expect(await voice.report(report)).toBe(true);
    expect(first.api.LMSGetValue("cmi.core.lesson_status")).toBe("incomplete");
    expect(first.api.LMSGetValue("cmi.core.score.raw")).toBe("67");
    clock += 3725.5;
    voice.close();
    voice.close();
    expect(first.faults).toEqual([]);
    expect(first.api.isTerminated()).toBe(true);
    expect(await voice.report(report)).toBe(false);

    // The standard's own run-time gives back what was set; the double keeps it in `cmi`.
    const kept = first.api.cmi;
    const second = courseSystem({
      "cmi.suspend_data": kept.suspend_data,
      "cmi.core.lesson_location": kept.core.lesson_location,
      "cmi.core.lesson_status": kept.core.lesson_status,
    });
    const again = scormRecord(second.checked, { now: () => 0, stamp });
    const resumed = unpackProgress(await again.load());
    expect(resumed).toEqual(longest());
    expect(resumed.lessons["10-a-lesson-with-a-name"]!.step).toBe("step-number-10-13");
    expect(second.faults).toEqual([]);
  });

  test("what is refused of the record itself is reported; the rest of it is kept", async () => {
    const { api, checked } = courseSystem();
    const set = checked.LMSSetValue;
    const voice = scormRecord(
      {
        ...checked,
        LMSSetValue: (element, value) => (element === "cmi.suspend_data" ? "false" : set(element, value)),
      },
      { now: () => 0, stamp },
    );
    expect(await voice.report({ ...REPORT, score: { right: 8, asked: 10 }, completed: true })).toBe(false);
    expect(api.LMSGetValue("cmi.core.lesson_status")).toBe("passed");
  });

  test.each([
    [8, 0.6, "passed"],
    [3, 0.6, "failed"],
    [8, 0.9, "failed"],
    [3, null, "completed"],
  ])("a finished course with %d of 10 right and a mark of %s ends as %s", async (right, passMark, status) => {
    const { api, checked, faults } = courseSystem();
    const voice = scormRecord(checked, { now: () => 0, stamp });
    await voice.report({ ...REPORT, score: { right, asked: 10 }, passMark, completed: true });
    expect(api.LMSGetValue("cmi.core.lesson_status")).toBe(status);
    voice.close();
    expect(faults).toEqual([]);
  });

  test("a course that asks nothing is completed, never failed, and has no score", async () => {
    const { api, checked, faults } = courseSystem();
    const voice = scormRecord(checked, { now: () => 0, stamp });
    await voice.report({ ...REPORT, score: { right: 0, asked: 0 }, completed: true });
    expect(api.LMSGetValue("cmi.core.lesson_status")).toBe("completed");
    expect(api.LMSGetValue("cmi.core.score.raw")).toBe("");
    expect(faults).toEqual([]);
  });

  test.each(["browse", "review"])("in mode %s nothing is recorded", async (mode) => {
    const { api, checked } = courseSystem({ "cmi.core.lesson_mode": mode, "cmi.suspend_data": "earlier" });
    const voice = scormRecord(checked, { now: () => 0, stamp });
    expect(voice.records()).toBe(false);
    expect(await voice.load()).toBe("earlier");
    expect(await voice.report({ ...REPORT, answers: [CHOICE], completed: true })).toBe(true);
    expect(api.LMSGetValue("cmi.suspend_data")).toBe("earlier");
    expect(api.LMSGetValue("cmi.core.lesson_status")).toBe("not attempted");
    expect(api.LMSGetValue("cmi.interactions._count")).toBe("0");
  });

  test("where the earlier record cannot be read nothing is written over it, and the visit ends all the same", async () => {
    const { api, checked } = courseSystem({
      "cmi.suspend_data": "earlier",
      "cmi.core.lesson_status": "passed",
    });
    const voice = scormRecord(
      { ...checked, LMSGetValue: () => "", LMSGetLastError: () => "101" },
      { now: () => 0, stamp },
    );
    expect(await voice.load()).toBeNull();
    expect(await voice.report({ ...REPORT, completed: true })).toBe(false);
    await voice.close();
    expect(api.cmi.suspend_data).toBe("earlier");
    expect(api.cmi.core.lesson_status).toBe("passed");
    expect(api.isTerminated()).toBe(true);
  });

  test("a later visit does not call a passed course incomplete again", () => {
    const { api, checked } = courseSystem({ "cmi.core.lesson_status": "passed" });
    scormRecord(checked, { now: () => 0, stamp });
    expect(api.LMSGetValue("cmi.core.lesson_status")).toBe("passed");
  });

  test("the system is found in a parent or an opener, and its absence is survived", () => {
    const found = (start: Parameters<typeof findApi>[0]) => findApi(start, "API");
    const alone = { parent: null as unknown } as { parent: never };
    alone.parent = alone as never;
    expect(found(alone)).toBeNull();
    const top = { API: courseSystem().checked, parent: null as unknown } as { API: ScormApi; parent: never };
    top.parent = top as never;
    expect(found({ parent: { parent: top } })).toBe(top.API);
    expect(found({ ...alone, opener: top })).toBe(top.API);
    const other = { API: { version: 2 }, parent: top };
    expect(found(other as never)).toBe(top.API);
    const refusing = {
      get API(): never {
        throw new Error("another origin");
      },
      parent: alone,
    };
    expect(found({ parent: refusing as never })).toBeNull();
  });

  test("times are written HHHH:MM:SS.SS", () => {
    expect([0, 61.256, 3725.5, 36_000_000].map(timespan)).toEqual([
      "0000:00:00.00",
      "0000:01:01.25",
      "0001:02:05.50",
      "9999:00:00.00",
    ]);
  });

  test("a record too long for the system gives up notes and seen steps before answers", () => {
    const noisy = longest();
    const notes = Array.from({ length: 10 }, (_, lesson) =>
      Object.values(noisy.lessons[`${lesson + 1}-a-lesson-with-a-name`]!.answers),
    ).flat();
    let seed = 1;
    const letter = () => {
      seed = (seed * 48271) % 2147483647;
      return String.fromCharCode(97 + (seed % 26));
    };
    for (const answer of notes)
      (answer as { note?: string }).note = Array.from({ length: 400 }, letter).join("");
    const text = packProgress(noisy, LONGEST_SUSPEND_DATA);
    expect(text.length).toBeLessThanOrEqual(LONGEST_SUSPEND_DATA);
    expect(Object.keys(unpackProgress(text).lessons["3-a-lesson-with-a-name"]!.answers)).toHaveLength(7);
  });
});
