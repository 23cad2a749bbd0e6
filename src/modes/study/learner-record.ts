/** A record to hand in: a page that reads without the kit, or data. Each carries cautions, version and date. */
import type { Chain } from "../../chain/contract.ts";
import { direction, formatQuantity, language, t } from "../../i18n/index.ts";
import { inMarkup } from "../../i18n/markup.ts";
import type { Lesson, Question, Words } from "../../lesson/lesson.ts";
import { type Attempt, type Progress, scoreOf, writeProgress } from "../../lesson/progress.ts";
import { inlinesOf, wordsOf } from "../../lesson/prose.ts";
import { type Answered, namesRead, requestsOf, situationOf } from "../../lesson/situation.ts";
import { statesAround } from "../../lesson/states.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import { VERSION } from "../../ui/app-version.ts";
import { cautionSentences } from "../../ui/cautions.tsx";
import { formatFigure, numberIn } from "../../ui/lesson/voice.ts";
import { saveFile } from "../../ui/take-away/save-file.ts";
import { knownAnswers } from "../shared/lesson/known-answers.ts";

export async function saveRecord(
  chain: Chain,
  progress: Progress,
  lessons: readonly Lesson[],
  form: "html" | "json",
): Promise<void> {
  const date = new Date().toISOString();
  const content =
    form === "html"
      ? recordPage(progress, lessons, date, await numbersUnkept(chain, progress, lessons))
      : JSON.stringify(
          { ...JSON.parse(writeProgress(progress)), kit: VERSION, date, cautions: cautionSentences() },
          null,
          2,
        );
  const type = form === "html" ? "text/html" : "application/json";
  saveFile(`lungward-record-${date.slice(0, 10)}.${form}`, new Blob([content], { type }));
}

/** What the model says now for questions whose numbers an earlier version did not keep. */
async function numbersUnkept(
  chain: Chain,
  progress: Progress,
  lessons: readonly Lesson[],
): Promise<Answered> {
  const known = knownAnswers(chain);
  const requests = lessons.flatMap((lesson) =>
    lesson.steps.flatMap((step, index) => {
      const attempt = progress.lessons[lesson.id]?.answers[step.id];
      if (!attempt || attempt.numbers || !step.question || !hasFigure(step.question.ask)) return [];
      return requestsOf(namesRead(step), statesAround(lesson, index));
    }),
  );
  await known.fetch(requests);
  return known.exactly;
}

const hasFigure = (words: Words): boolean => [...inlinesOf(words)].some(({ kind }) => kind === "figure");

/** The question with the numbers that the learner saw in it. */
function askedAs(lesson: Lesson, index: number, { numbers }: Attempt, answered: Answered): string {
  const situation = situationOf(statesAround(lesson, index), answered);
  return wordsOf(present(entryAt(lesson.steps, index).question).ask, (figure) => {
    const kept = numbers?.[figure.written];
    return kept === undefined ? numberIn(situation, figure) : formatFigure(kept, figure);
  });
}

/** What was typed, what the model had, and the mistake by name; nothing for other questions. */
function typedInWords(question: Question, { given, typed }: Attempt): string {
  if (!typed || typeof given !== "number" || !("format" in question)) return "";
  const { unit, digits } = question.format;
  const mistakes = question.kind === "number" ? question.mistakes : [];
  const mistake = mistakes.find(({ id }) => id === typed.mistake);
  return [
    t("study.answer.typed", {
      given: formatQuantity(given, unit, Math.max(digits, 2)),
      truth: formatQuantity(typed.truth, unit, Math.max(digits, 2)),
    }),
    ...(mistake ? [wordsOf(mistake.say, () => "\u2026")] : []),
  ].join(" ");
}

/** `date`: RFC 3339 */
export function recordPage(
  progress: Progress,
  lessons: readonly Lesson[],
  date: string,
  answered: Answered,
): string {
  const rows = lessons.flatMap((lesson) => {
    const done = progress.lessons[lesson.id];
    if (!done) return [];
    const answers = lesson.steps.flatMap(({ id, question }, index) => {
      const attempt = done.answers[id];
      if (!question || !attempt) return [];
      const verdict = attempt.right === null ? "open" : attempt.right ? "fits" : "differs";
      const typed = typedInWords(question, attempt);
      const note = attempt.note ? `<br><em>${inMarkup(attempt.note)}</em>` : "";
      return [
        `<li>${inMarkup(askedAs(lesson, index, attempt, answered))} <strong>${inMarkup(t(`study.answer.${verdict}`, { tries: attempt.tries }))}</strong>${typed && `<br>${inMarkup(typed)}`}${note}</li>`,
      ];
    });
    const score = inMarkup(t("lesson.score", { ...scoreOf(done) }));
    const state = inMarkup(
      t(`study.state.${done.finished ? "finished" : "begun"}`, {
        seen: done.seen.length,
        steps: lesson.steps.length,
      }),
    );
    return [`<h2>${inMarkup(lesson.title)}</h2><p>${state} ${score}</p><ul>${answers.join("")}</ul>`];
  });
  const cautions = cautionSentences()
    .map((sentence) => `<li>${inMarkup(sentence)}</li>`)
    .join("");
  return `<!doctype html><html lang="${language()}" dir="${direction()}"><meta charset="utf-8"><title>${inMarkup(t("study.record"))}</title>
<style>body{font:16px/1.5 sans-serif;max-width:42rem;margin:2rem auto;padding:0 1rem}@page{size:A4;margin:15mm}</style>
<h1>${inMarkup(t("study.record"))}</h1><p>${inMarkup(t("study.made", { version: VERSION, date: date.slice(0, 10) }))}</p>
${rows.join("\n")}<h2>${inMarkup(t("caution.title"))}</h2><ul>${cautions}</ul></html>`;
}
