import { expect, test } from "vitest";
import { exchangeCourses } from "../../src/chain/exchange-courses.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { solveExchange } from "../../src/sim/exchange/index.ts";
import type { CirculationRequest } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const circulation = solve(START.request);
const tight = { ...START.request, set: { pulmonaryResistanceIndex: 2.5 } };
const asked: CirculationRequest[] = [];
const answer = async (request: CirculationRequest) => {
  asked.push(request);
  return solve(request);
};

test("a circulation's days are solved once, from lungs that are tight at first", async () => {
  const courses = exchangeCourses(answer);
  expect(courses.of(circulation)).toBeNull();
  await courses.begin(circulation);
  const course = courses.of(circulation)!;
  expect(courses.of(circulation)).toBe(course);
  expect(asked).toEqual([tight]);
  expect(course).toEqual(solveExchange(circulation, { firstDays: solve(tight) }));
  expect(course.days.at(-1)).toBe(21);
});

test("where nothing has been completed the days are those of the circulation alone", async () => {
  const courses = exchangeCourses(() => Promise.reject(new Error("not to be asked")));
  const glenn = solve({ ...START.request, stage: "glenn" });
  await courses.begin(glenn);
  expect(courses.of(glenn)).toEqual(solveExchange(glenn));
});

test("no course is given for a circulation that has not converged or is missing, nor without its first days", async () => {
  const courses = exchangeCourses(answer);
  expect(courses.of(null)).toBeNull();
  const unsettled = { ...circulation, run: { ...circulation.run, converged: false } };
  await courses.begin(unsettled);
  expect(courses.of(unsettled)).toBeNull();
  const failing = exchangeCourses(() => Promise.reject(new Error("the solver stopped")));
  await failing.begin(circulation);
  expect(failing.of(circulation)).toBeNull();
});
