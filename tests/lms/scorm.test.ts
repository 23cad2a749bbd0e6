import { Scorm12API } from "scorm-again";
import { describe, expect, test } from "vitest";
import { NO_PROGRESS, type Progress, withLesson } from "../../src/lesson/progress.ts";
import { packProgress, unpackProgress } from "../../src/lesson/progress-pack.ts";
import type { ReportedAnswer } from "../../src/lms/record-adapter.ts";
import { LONGEST_SUSPEND_DATA, type ScormApi, scormRecord, timespan } from "../../src/lms/scorm.ts";
import { findApi } from "../../src/lms/scorm-window.ts";
import { CHOICE, NUMBER, ORDER } from "./answers.ts";

const stamp = () => "2026-11-29T09:30:05.123Z";
const REPORT = {
  text: "x",
  place: "a#b",
  score: { right: 1, asked: 2 },
  passMark: 0.6,
  answers: [],
  progress: 0,
  completed: false,
};

/** An independent run-time double: it checks each element's name, type and range, and remembers. */
function courseSystem(earlier?: Record<string, unknown>) {
  const api = new Scorm12API({ autocommit: false });
  if (earlier) api.loadFromFlattenedJSON(earlier as Parameters<typeof api.loadFromFlattenedJSON>[0], "");
  const faults: string[] = [];
  const checked = Object.fromEntries(
    (["LMSInitialize", "LMSFinish", "LMSGetValue", "LMSSetValue", "LMSCommit"] as const).map((name) => [
      name,
      (...given: [string, string]) => {
        const answer = (api[name] as (...each: string[]) => string | boolean)(...given);
        if (api.LMSGetLastError() !== "0")
          faults.push(`${name} ${given.join(" ")}: ${api.LMSGetErrorString(api.LMSGetLastError())}`);
        return answer;
      },
    ]),
  ) as unknown as ScormApi;
  return { api, checked, faults };
}

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

  test("choices, orders and numbers are interactions, each written once and after those of an earlier visit", async () => {
    const first = courseSystem();
    const voice = scormRecord(first.checked, { now: () => 0, stamp });
    await voice.report({ ...REPORT, answers: [CHOICE] });
    await voice.report({ ...REPORT, answers: [CHOICE, ORDER, NUMBER] });
    voice.close();
    expect(first.faults).toEqual([]);
    const { interactions } = JSON.parse(JSON.stringify(first.api.cmi));
    const kept: Record<string, unknown>[] = Object.values(interactions);
    expect(
      kept.map(({ id, type, time, student_response, result }) => [id, type, time, student_response, result]),
    ).toEqual([
      ["04-energy-loss_narrow-ask", "choice", "09:30:05", "b", "wrong"],
      ["04-energy-loss_order", "sequencing", "09:30:05", "b,a,c", "wrong"],
      ["15-numbers_power", "numeric", "09:30:05", "2.6", "correct"],
    ]);
    expect(JSON.stringify(interactions)).toContain('"pattern":"c"');
    expect(JSON.stringify(interactions)).toContain('"pattern":"a,b,c"');
    expect(JSON.stringify(interactions)).toContain('"pattern":"2.5"');
  });

  test("a system that refuses interactions keeps the record; they are tried again with the next report", async () => {
    const { api, checked } = courseSystem();
    let refuses = true;
    const set = checked.LMSSetValue;
    const refused: string[] = [];
    const picky: ScormApi = {
      ...checked,
      LMSSetValue: (element, value) => {
        if (!refuses || !element.startsWith("cmi.interactions.")) return set(element, value);
        refused.push(element);
        return "false";
      },
    };
    const voice = scormRecord(picky, { now: () => 0, stamp });
    expect(await voice.report({ ...REPORT, answers: [CHOICE, NUMBER] })).toBe(true);
    expect(api.LMSGetValue("cmi.suspend_data")).toBe("x");
    expect(refused).toEqual(["cmi.interactions.0.id", "cmi.interactions.0.id"]);
    refuses = false;
    expect(await voice.report({ ...REPORT, answers: [CHOICE, NUMBER] })).toBe(true);
    expect(JSON.parse(JSON.stringify(api.cmi)).interactions).toMatchObject({
      0: { id: "04-energy-loss_narrow-ask", result: "wrong" },
      1: { id: "15-numbers_power", result: "correct" },
    });
  });

  test("one refused element of an interaction costs neither the rest of it nor the next one", async () => {
    const { api, checked, faults } = courseSystem();
    const set = checked.LMSSetValue;
    let refuses = true;
    const voice = scormRecord(
      {
        ...checked,
        LMSSetValue: (element, value) =>
          refuses && element === "cmi.interactions.0.student_response" ? "false" : set(element, value),
      },
      { now: () => 0, stamp },
    );
    expect(await voice.report({ ...REPORT, answers: [CHOICE, NUMBER] })).toBe(true);
    const kept = () => JSON.parse(JSON.stringify(api.cmi)).interactions;
    expect(kept()).toMatchObject({
      0: { student_response: "", result: "wrong" },
      1: { student_response: "2.6" },
    });
    refuses = false;
    await voice.report({ ...REPORT, answers: [CHOICE, NUMBER] });
    expect(kept()[0].student_response).toBe("b");
    expect(api.LMSGetValue("cmi.interactions._count")).toBe("2");
    expect(faults).toEqual([]);
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

  test("an answer that no one pattern makes right has none", async () => {
    const { api, checked, faults } = courseSystem();
    const goal: ReportedAnswer = { ...NUMBER, correct: null };
    await scormRecord(checked, { now: () => 0, stamp }).report({ ...REPORT, answers: [goal] });
    expect(JSON.stringify(api.cmi)).not.toContain("pattern");
    expect(faults).toEqual([]);
  });

  test("what no sign names is left out, the result stays: an option of an earlier lesson, more options than signs", async () => {
    const many = Array.from({ length: 40 }, (_, index) => ({ id: `o${index}`, say: "" }));
    const { api, checked, faults } = courseSystem();
    const answers: readonly ReportedAnswer[] = [
      { ...CHOICE, given: "gone" },
      { ...ORDER, correct: ["falls", "gone", "rises"] },
      { ...CHOICE, step: "many", options: many, given: "o35", correct: "o36" },
      { ...CHOICE, step: "empty", options: [] },
    ];
    expect(await scormRecord(checked, { now: () => 0, stamp }).report({ ...REPORT, answers })).toBe(true);
    const { interactions } = JSON.parse(JSON.stringify(api.cmi));
    const patternOf = ({ correct_responses }: { correct_responses: Record<string, { pattern: string }> }) =>
      Object.values(correct_responses).map(({ pattern }) => pattern);
    expect(
      [0, 1, 2, 3].map((index) => [interactions[index].student_response, patternOf(interactions[index])]),
    ).toEqual([
      ["", ["c"]],
      ["b,a,c", []],
      ["9", []],
      ["", []],
    ]);
    expect([0, 1, 2, 3].map((index) => interactions[index].result)).toEqual(Array(4).fill("wrong"));
    expect(faults).toEqual([]);
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
