/** The places of a lesson's right answers, over many readers: a place that gives them away is a fault. */

import { entryAt } from "../../sim/checked/present.ts";
import { dealAnswers } from "../judge/deal.ts";
import { rightAnswer } from "../judge/questions.ts";
import type { Lesson } from "../lesson.ts";
import { situationOf, statesOfQuestion } from "../model/situation.ts";
import type { Refuse } from "../read/read-prose.ts";
import type { Solve } from "./check-model.ts";

const READERS = 60;
/** Two right answers are often at one place by chance; three let a reader guess. */
const FEWEST_QUESTIONS = 3;
/** Of all right answers, over all readers. */
const LARGEST_SHARE = 2 / 3;

const REMEDY =
  "right answers spread over the places: write the right one first where there is no scale, or turn a scale round";

/** @returns share of the right answers at each place, first place first; empty without questions of choice */
export function checkPlaces(lesson: Lesson, solve: Solve, refuse: Refuse): readonly number[] {
  const right = lesson.steps.map(({ question }, index) =>
    question && "answers" in question
      ? (rightAnswer(question.answers, situationOf(statesOfQuestion(lesson, index), solve))?.id ?? null)
      : null,
  );
  const counts: number[] = [];
  let alike = 0;
  for (let reader = 0; reader < READERS; reader++) {
    const places = placesFor(dealAnswers(lesson, reader), right);
    for (const place of places) counts[place] = (counts[place] ?? 0) + 1;
    if (places.length >= FEWEST_QUESTIONS && new Set(places).size === 1) alike++;
  }
  const all = counts.reduce((sum, count) => sum + count, 0);
  const shares = Array.from(counts, (count = 0) => count / all);
  if (alike > 0) refuse(1, `all right answers at one place for ${alike} of ${READERS} readers`, REMEDY);
  const worst = shares.findIndex((share) => share > LARGEST_SHARE);
  if (all >= FEWEST_QUESTIONS * READERS && worst >= 0)
    refuse(
      1,
      `${Math.round(100 * entryAt(shares, worst))} % of the right answers at place ${worst + 1}`,
      REMEDY,
    );
  return shares;
}

const placesFor = (dealt: Lesson, right: readonly (string | null)[]): readonly number[] =>
  dealt.steps.flatMap(({ question }, index) =>
    question && "answers" in question && right[index] !== null
      ? [question.answers.findIndex(({ id }) => id === right[index])]
      : [],
  );
