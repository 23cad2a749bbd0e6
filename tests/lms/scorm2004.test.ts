import { describe, expect, test } from "vitest";
import { scorm2004Record } from "../../src/lms/scorm2004.ts";
import { CHOICE, NUMBER, ORDER } from "./answers.ts";
import { courseSystem } from "./scorm2004-system.ts";

const CLOCK = { now: () => 0, stamp: () => "2026-11-29T09:30:05.123Z" };
const REPORT = {
  text: "x",
  place: "a#b",
  score: { right: 8, asked: 10 },
  passMark: 0.6,
  answers: [],
  progress: 0.5,
  completed: false,
};

const elementOf = ({ api }: ReturnType<typeof courseSystem>, element: string) =>
  String(api.lmsGetValue(element));

describe("SCORM 2004, against an independent run-time", () => {
  test("a visit begins, reports, ends, and the next one resumes", async () => {
    const first = courseSystem();
    const record = scorm2004Record(first.checked, CLOCK);
    expect(await record.load()).toBeNull();
    expect(await record.report({ ...REPORT, text: "y".repeat(60_000) })).toBe(true);
    expect(elementOf(first, "cmi.completion_status")).toBe("incomplete");
    expect(elementOf(first, "cmi.success_status")).toBe("unknown");
    expect(elementOf(first, "cmi.score.scaled")).toBe("0.8");
    expect(elementOf(first, "cmi.progress_measure")).toBe("0.5");
    record.close();
    record.close();
    expect(await record.report(REPORT)).toBe(false);
    expect(first.faults).toEqual([]);
    const second = courseSystem({ "cmi.suspend_data": "y", "cmi.completion_status": "completed" });
    expect(await scorm2004Record(second.checked, CLOCK).load()).toBe("y");
    expect(elementOf(second, "cmi.completion_status")).toBe("completed");
  });

  test.each([
    [0.6, "passed", {}],
    [0.9, "failed", {}],
    [null, "unknown", {}],
    // The course system's own mark comes first.
    [0.6, "failed", { "cmi.scaled_passing_score": "0.95" }],
  ])("finished with 0.8 and a mark of %s it is %s", async (passMark, status, earlier) => {
    const system = courseSystem(earlier);
    await scorm2004Record(system.checked, CLOCK).report({ ...REPORT, passMark, completed: true });
    expect(elementOf(system, "cmi.success_status")).toBe(status);
    expect(elementOf(system, "cmi.completion_status")).toBe("completed");
    expect(system.faults).toEqual([]);
  });

  test("a course that asks nothing is completed, neither passed nor failed, and has no score", async () => {
    const system = courseSystem();
    const score = { right: 0, asked: 0 };
    await scorm2004Record(system.checked, CLOCK).report({ ...REPORT, score, completed: true });
    expect(elementOf(system, "cmi.success_status")).toBe("unknown");
    expect(elementOf(system, "cmi.completion_status")).toBe("completed");
    expect(elementOf(system, "cmi.score.scaled")).toBe("");
    expect(system.faults).toEqual([]);
  });

  test("where the earlier record cannot be read nothing is written over it", async () => {
    const system = courseSystem({ "cmi.suspend_data": "y", "cmi.completion_status": "completed" });
    const failing = { ...system.checked, GetValue: () => "", GetLastError: () => "301" };
    const record = scorm2004Record(failing, CLOCK);
    expect(await record.load()).toBeNull();
    expect(await record.report(REPORT)).toBe(false);
    expect(elementOf(system, "cmi.suspend_data")).toBe("y");
    expect(elementOf(system, "cmi.completion_status")).toBe("completed");
  });

  test("answers are interactions with the question's text, each written once", async () => {
    const system = courseSystem();
    const record = scorm2004Record(system.checked, CLOCK);
    await record.report({ ...REPORT, answers: [CHOICE] });
    await record.report({
      ...REPORT,
      answers: [CHOICE, ORDER, NUMBER, { ...NUMBER, step: "goal", correct: null }],
    });
    expect(system.faults).toEqual([]);
    expect(elementOf(system, "cmi.interactions._count")).toBe("4");
    const of = (index: number, name: string) => elementOf(system, `cmi.interactions.${index}.${name}`);
    expect(of(0, "id")).toBe("urn:lungward:04-energy-loss:narrow-ask");
    expect(of(0, "description")).toBe("{lang=en}What happens to the pressure of 13.1 mmHg?");
    expect([of(0, "learner_response"), of(0, "correct_responses.0.pattern"), of(0, "result")]).toEqual([
      "same",
      "rises",
      "incorrect",
    ]);
    expect(of(1, "learner_response")).toBe("same[,]falls[,]rises");
    expect([of(2, "learner_response"), of(2, "correct_responses.0.pattern")]).toEqual([
      "2.6",
      "2.375[:]2.625",
    ]);
    expect(of(3, "correct_responses._count")).toBe("0");
  });

  test("who only looks round or back changes nothing", async () => {
    const system = courseSystem({ "cmi.mode": "review", "cmi.completion_status": "completed" });
    const record = scorm2004Record(system.checked, CLOCK);
    expect(record.records()).toBe(false);
    expect(await record.report({ ...REPORT, answers: [CHOICE] })).toBe(true);
    expect(elementOf(system, "cmi.suspend_data")).toBe("");
    expect(elementOf(system, "cmi.completion_status")).toBe("completed");
    expect(elementOf(system, "cmi.interactions._count")).toBe("0");
  });
});
