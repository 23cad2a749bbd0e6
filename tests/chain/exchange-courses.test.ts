import { expect, test } from "vitest";
import { exchangeCourses } from "../../src/chain/exchange-courses.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

const circulation = solve(START.request);

test("a circulation's days are solved once", () => {
  const courses = exchangeCourses();
  expect(courses.of(circulation)).toBe(courses.of(circulation));
  expect(courses.of(circulation)!.days.at(-1)).toBe(21);
});

test("no course is given for a circulation that has not converged or is missing", () => {
  const courses = exchangeCourses();
  expect(courses.of(null)).toBeNull();
  expect(courses.of({ ...circulation, run: { ...circulation.run, converged: false } })).toBeNull();
});
