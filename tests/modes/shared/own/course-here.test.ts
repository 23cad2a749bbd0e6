// @vitest-environment happy-dom
import { beforeEach, expect, test, vi } from "vitest";

const COURSE = {
  version: 1,
  lessons: ["a"],
  textVersion: "plain",
  passMark: 0.5,
  completedWhen: "seen",
  own: [{ file: "mine.md", text: "# Mine" }],
};
const open = async (text: string | null) => {
  document.body.innerHTML = text === null ? "" : '<script type="application/json" id="course"></script>';
  if (text !== null) document.getElementById("course")!.textContent = text;
  return import("../../../../src/modes/shared/own/course-here.ts");
};

beforeEach(() => vi.resetModules());

test("a kit that is no package has no course, and no fault", async () => {
  const { courseHere, courseFault } = await open(null);
  expect([courseHere(), courseFault()]).toEqual([null, null]);
});

test("a page has the course that it was packaged with", async () => {
  const { courseHere, courseFault } = await open(JSON.stringify(COURSE));
  expect([courseHere(), courseFault()]).toEqual([COURSE, null]);
});

test("a damaged course is a fault, not the whole kit", async () => {
  const { courseHere, courseFault } = await open(JSON.stringify({ ...COURSE, passMark: 2 }));
  expect(courseHere()).toBeNull();
  expect(courseFault()).toMatchObject({ path: "course.passMark", found: "2" });
  const { ownLessonFiles } = await import("../../../../src/modes/shared/own/own-lessons.ts");
  expect(await ownLessonFiles()).toEqual({ files: [], faults: [courseFault()] });
});

test.each([null, "{", JSON.stringify(COURSE)])(
  "what the page holds is looked for once: %.10s",
  async (text) => {
    const { courseHere, courseFault } = await open(text);
    courseHere();
    const looks = vi.spyOn(document, "getElementById");
    courseHere();
    courseFault();
    expect(looks).not.toHaveBeenCalled();
    looks.mockRestore();
  },
);
