// @vitest-environment happy-dom
/** A course of three lessons, imported and taken in a course system by each standard, in two visits. */
import { describe, expect, test } from "vitest";
import { cmi5Record } from "../../src/lms/cmi5.ts";
import { readLaunch } from "../../src/lms/cmi5-launch.ts";
import { type ScormApi, scormRecord } from "../../src/lms/scorm.ts";
import { findApi, type Windowed } from "../../src/lms/scorm-window.ts";
import { type Scorm2004Api, scorm2004Record } from "../../src/lms/scorm2004.ts";
import { nameOf } from "./cmi5-rules.ts";
import { FORGETFUL } from "./cmi5-visit.ts";
import { cmi5System } from "./course-systems/cmi5-system.ts";
import { readManifest } from "./course-systems/scorm-manifest.ts";
import { courseOf, LESSONS, packaged, questionCount, study, titles } from "./course-systems/three-lessons.ts";
import { courseSystem } from "./scorm-system.ts";
import { courseSystem as courseSystem2004 } from "./scorm2004-system.ts";

const clock = { now: () => 0, stamp: () => new Date().toISOString() };
/** The page in a frame of the course system's. */
const framed = (api: object): Windowed => {
  const outer: Windowed = { ...api, parent: null as unknown as Windowed };
  (outer as { parent: Windowed }).parent = outer;
  return { parent: outer };
};

const SCORM = {
  scorm12: {
    open: (earlier: Record<string, unknown>) => {
      const { api, checked, faults } = courseSystem(earlier);
      const found = findApi(framed({ API: checked }), "API") as ScormApi;
      return { voice: scormRecord(found, clock), get: (element: string) => api.LMSGetValue(element), faults };
    },
    status: ["cmi.core.lesson_status"],
    unfinished: ["incomplete"],
    won: ["passed"],
    score: "cmi.core.score.raw",
  },
  scorm2004: {
    open: (earlier: Record<string, unknown>) => {
      const { api, checked, faults } = courseSystem2004(earlier);
      const found = findApi(framed({ API_1484_11: checked }), "API_1484_11") as Scorm2004Api;
      return {
        voice: scorm2004Record(found, clock),
        // A session that is over answers no question of its page; what was kept is read past it.
        get: (element: string) => String(api.getCMIValue(element)),
        faults,
      };
    },
    status: ["cmi.completion_status", "cmi.success_status"],
    unfinished: ["incomplete", "unknown"],
    won: ["completed", "passed"],
    score: "cmi.score.raw",
  },
} as const;

describe.each(["scorm12", "scorm2004"] as const)("by %s", (standard) => {
  const { open, status, unfinished, won, score } = SCORM[standard];
  const imported = async (apart: boolean) => {
    const files = await packaged(standard, apart);
    const items = readManifest(files["imsmanifest.xml"]!, standard, Object.keys(files));
    return { files, items };
  };

  test("as one item: incomplete after one lesson, resumed at the second, passed at the end", async () => {
    const { files, items } = await imported(false);
    expect(items.length).toBe(1);
    const course = courseOf(files, items[0]!.href);
    expect(course.lessons).toEqual(LESSONS);
    const first = open({});
    expect(await study(first.voice, course, 1)).toEqual({ begun: 0, keeps: true });
    expect(status.map(first.get)).toEqual(unfinished);
    expect(first.get("cmi.interactions._count")).toBe(String(questionCount(LESSONS.slice(0, 1))));
    const kept = Object.fromEntries(
      ["cmi.suspend_data", status[0]].map((element) => [element, first.get(element)]),
    );
    const second = open(kept);
    expect(await study(second.voice, course, 2)).toEqual({ begun: 1, keeps: true });
    expect(status.map(second.get)).toEqual(won);
    expect(second.get(score)).toBe("100");
    expect(second.get("cmi.interactions._count")).toBe(String(questionCount(LESSONS.slice(1))));
    expect([...first.faults, ...second.faults]).toEqual([]);
  });

  test("as three items: each is listed, opened and judged by itself", async () => {
    const { files, items } = await imported(true);
    expect(items.map(({ title }) => title)).toEqual(titles);
    for (const [index, { href }] of items.entries()) {
      const course = courseOf(files, href);
      expect(course.lessons).toEqual([LESSONS[index]]);
      const system = open({});
      await study(system.voice, course, 1, index !== 1);
      expect(status.map(system.get)).toEqual(index === 1 ? [...won.slice(0, -1), "failed"] : won);
      expect(system.faults).toEqual([]);
    }
  });
});

describe("by cmi5", () => {
  const HOME = "https://course.example";
  const visit = async (
    files: Record<string, string>,
    launched: ReturnType<ReturnType<typeof cmi5System>["launch"]>,
    count: number,
    right = true,
  ) => {
    const { address, session } = launched;
    const voice = cmi5Record(readLaunch(address.slice(address.indexOf("?")))!, {
      ...clock,
      ask: (url, init) => session.answer(new Request(url, init)),
      id: () => crypto.randomUUID(),
      keeper: FORGETFUL,
    });
    return study(voice, courseOf(files, address), count, right);
  };
  const verbs = (found: readonly Parameters<typeof nameOf>[0][]) =>
    found.map(nameOf).filter((name) => name !== "answered");

  test("as one unit: in two visits, then satisfied; a third one says nothing twice", async () => {
    const files = await packaged("cmi5", false);
    const system = cmi5System(files["cmi5.xml"]!, HOME);
    const [unit] = system.units;
    expect(unit).toMatchObject({ masteryScore: 0.6, moveOn: "CompletedOrPassed" });
    const first = system.launch(unit!);
    expect(await visit(files, first, 1)).toEqual({ begun: 0, keeps: true });
    expect(verbs(first.session.statements)).toEqual(["initialized", "terminated"]);
    expect(system.isSatisfied(unit!)).toBe(false);
    const second = system.launch(unit!);
    expect(await visit(files, second, 2)).toEqual({ begun: 1, keeps: true });
    expect(verbs(second.session.statements)).toEqual(["initialized", "passed", "completed", "terminated"]);
    expect(system.isSatisfied(unit!)).toBe(true);
    const third = system.launch(unit!);
    expect(await visit(files, third, 1)).toEqual({ begun: 3, keeps: true });
    expect(verbs(third.session.statements)).toEqual(["initialized", "terminated"]);
    const sessions = [first, second, third].map(({ session }) => session);
    expect(sessions.flatMap(({ refused }) => refused)).toEqual([]);
    const answered = sessions
      .flatMap(({ statements }) => statements)
      .filter((each) => nameOf(each) === "answered");
    expect(answered.length).toBe(questionCount(LESSONS));
  });

  test("as three units: each is launched and judged by itself", async () => {
    const files = await packaged("cmi5", true);
    const system = cmi5System(files["cmi5.xml"]!, HOME);
    expect(system.units.map(({ title }) => title)).toEqual(titles);
    for (const [index, unit] of system.units.entries()) {
      const launched = system.launch(unit);
      await visit(files, launched, 1, index !== 1);
      expect(verbs(launched.session.statements)[1]).toBe(index === 1 ? "failed" : "passed");
      expect(launched.session.refused).toEqual([]);
      expect(system.isSatisfied(unit)).toBe(true);
    }
  });
});
