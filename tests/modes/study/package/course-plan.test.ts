import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Library } from "../../../../src/lesson/library/library.ts";
import { readLesson } from "../../../../src/lesson/read/read.ts";
import { type CourseChoice, packageName, planOf } from "../../../../src/modes/study/package/course-plan.ts";
import { servedKit } from "../../../../src/modes/study/package/served-kit.ts";

const lessons = ["03-pathways", "04-energy-loss"].map(
  (id) => readLesson(readFileSync(`lessons/en/${id}.md`, "utf8"), `${id}.md`).value!,
);
const library = { lessons, own: new Set(["04-energy-loss"]) } as unknown as Library;
const own = [{ file: "04-energy-loss.md", text: "mine" }];
const choice: CourseChoice = {
  lessons: ["04-energy-loss", "03-pathways"],
  title: "",
  textVersion: "plain",
  standard: "cmi5",
  apart: false,
  passMark: 0.7,
  completedWhen: "questions",
};

test("one item holds the lessons in their order, the rules and the text of own lessons", () => {
  const plan = planOf(choice, library, own);
  expect(plan.items.map(({ course }) => course)).toEqual([
    {
      version: 1,
      lessons: choice.lessons,
      textVersion: "plain",
      passMark: 0.7,
      completedWhen: "questions",
      own,
    },
  ]);
  expect(plan.title).toBe("How blood reaches the lungs without a pump");
  expect(planOf({ ...choice, title: " Heart " }, library, own).title).toBe("Heart");
  expect(planOf({ ...choice, lessons: ["03-pathways"] }, library, own).title).toBe(lessons[0]!.title);
});

test("each lesson as an item has its own title and only its own text", () => {
  const { items } = planOf({ ...choice, apart: true }, library, own);
  expect(items.map(({ id, title }) => [id, title])).toEqual(
    choice.lessons.map((id) => [id, lessons.find((each) => each.id === id)!.title]),
  );
  expect(items.map(({ course }) => course.own)).toEqual([own, []]);
});

test("another choice or another text is another course; the file says what it is", () => {
  const id = (change: Partial<CourseChoice>, texts = own) =>
    planOf({ ...choice, ...change }, library, texts).id;
  const ids = [id({}), id({ passMark: null }), id({ apart: true }), id({}, [{ ...own[0]!, text: "other" }])];
  expect(new Set(ids).size).toBe(4);
  expect(id({})).toBe(ids[0]);
  expect(packageName(planOf(choice, library, own), "2026-11-29T10:00:00Z")).toBe(
    `${ids[0]}-cmi5-en-2026-11-29.zip`,
  );
});

test("the kit is what its server's list says; without a list there is none, and a missing file is named", async () => {
  const served: Record<string, string> = {
    "files.json": '{"version":"1","files":["a b.js","gone"]}',
    "a%20b.js": "1",
  };
  const get = async (url: string) =>
    url in served ? new Response(served[url]) : new Response("", { status: 404 });
  const kit = (await servedKit(get))!;
  expect(kit.paths).toEqual(["a b.js", "gone"]);
  expect(new TextDecoder().decode(await kit.read("a b.js"))).toBe("1");
  await expect(kit.read("gone")).rejects.toThrow("gone: 404");
  for (const list of ["<html>", "{}"]) expect(await servedKit(async () => new Response(list))).toBeNull();
  expect(await servedKit(() => Promise.reject(new Error("file:")))).toBeNull();
});
