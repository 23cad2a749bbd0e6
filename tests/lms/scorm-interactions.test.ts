/** Answers as interactions of SCORM 1.2, and course systems that refuse some of them. */
import { expect, test } from "vitest";
import type { ReportedAnswer } from "../../src/lms/record-adapter.ts";
import { type ScormApi, scormRecord } from "../../src/lms/scorm.ts";
import { CHOICE, NUMBER, ORDER } from "./answers.ts";
import { courseSystem, REPORT, stamp } from "./scorm-system.ts";

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
