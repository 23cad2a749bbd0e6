/** The record to hand in as one page that reads and prints without the kit: per lesson what was asked, given and right. */
import { direction, language, t } from "../../i18n/index.ts";
import { inMarkup } from "../../i18n/markup.ts";
import { quizOf } from "../../lesson/judge/quiz.ts";
import { type Lesson, stepOfKey } from "../../lesson/lesson.ts";
import type { Answered } from "../../lesson/model/situation.ts";
import { type Attempt, type LessonProgress, type Progress, scoreOf } from "../../lesson/progress/progress.ts";
import { inlinesOf, wordsOf } from "../../lesson/prose.ts";
import { VERSION } from "../../ui/app-version.ts";
import { cautionSentences } from "../../ui/cautions.tsx";
import { answerInWords } from "./record-answers.ts";
import { NO_CHECKSUM, withChecksum } from "./record-checksum.ts";

export interface RecordOptions {
  readonly progress: Progress;
  readonly lessons: readonly Lesson[];
  /** RFC 3339 */
  readonly date: string;
  readonly answered: Answered;
  /** Of the learner, as typed; "" = none. */
  readonly name: string;
}

export function recordPage(options: RecordOptions): string {
  const body = [head(options), ...lessonsOf(options), quizResults(options.progress), cautions()].join("\n");
  return withChecksum(`<!doctype html><html lang="${language()}" dir="${direction()}"><meta charset="utf-8"><title>${inMarkup(t("study.record"))}</title>
<style>${STYLE}</style>
<main>${body}</main>
<footer><p><strong>${inMarkup(t("study.record.checksum", { checksum: NO_CHECKSUM }))}</strong> ${inMarkup(t("study.record.checksum.limits"))}</p></footer></html>`);
}

const STYLE = `body{font:16px/1.45 sans-serif;max-width:44rem;margin:2rem auto;padding:0 1rem}h2{margin:1.5em 0 .25em}dl{display:grid;grid-template-columns:9rem 1fr;gap:.1rem .75rem;margin:.25rem 0 .75rem}dt{font-weight:600}dd{margin:0;overflow-wrap:anywhere;white-space:pre-line}li{break-inside:avoid}footer{border-top:1px solid;margin-top:1.5rem;font-size:.9em}@page{size:A4;margin:15mm}@media print{body{margin:0;font-size:12pt}}`;

type Row = readonly [name: string, value: string];

const rows = (pairs: readonly Row[]): string =>
  `<dl>${pairs.map(([name, value]) => `<dt>${inMarkup(name)}</dt><dd>${inMarkup(value)}</dd>`).join("")}</dl>`;

function head({ name, date }: RecordOptions): string {
  const named: readonly Row[] = name.trim() ? [[t("study.record.name"), name.trim()]] : [];
  return [
    `<h1>${inMarkup(`${t("name")}: ${t("study.record")}`)}</h1>`,
    rows([...named, [t("study.record.date"), date.slice(0, 10)]]),
    `<p>${inMarkup(t("study.made", { version: VERSION, date: date.slice(0, 10) }))}</p>`,
  ].join("");
}

const lessonsOf = (options: RecordOptions): readonly string[] =>
  options.lessons.flatMap((lesson) => {
    const done = options.progress.lessons[lesson.id];
    return done ? [lessonPart(lesson, done, options)] : [];
  });

function lessonPart(lesson: Lesson, done: LessonProgress, { lessons, answered }: RecordOptions): string {
  const state = t(`study.record.${done.finished ? "finished" : "begun"}`, {
    seen: done.seen.length,
    steps: lesson.steps.length,
  });
  const items = [
    ...lesson.steps.flatMap(({ id, question }, index) => {
      const attempt = done.answers[id];
      return question && attempt ? [answerItem(lesson, index, attempt, answered)] : [];
    }),
    ...lesson.steps.flatMap((step) => {
      const text = done.written?.[step.id];
      return text ? [taskItem(step, text)] : [];
    }),
  ];
  const again = Object.entries(done.recalled).map(([key, recalled]) => againRow(key, recalled, lessons));
  return [
    `<h2>${inMarkup(lesson.title)}</h2>`,
    `<p>${inMarkup(state)} ${inMarkup(t("lesson.score", { ...scoreOf(done) }))}</p>`,
    items.length > 0 ? `<ol>${items.join("")}</ol>` : "",
    again.length > 0 ? `<h3>${inMarkup(t("study.record.again"))}</h3>${rows(again)}` : "",
  ].join("");
}

function answerItem(lesson: Lesson, index: number, attempt: Attempt, answered: Answered): string {
  const { asked, given, right, mistake } = answerInWords(lesson, index, attempt, answered);
  const verdict = attempt.right === null ? "open" : attempt.right ? "fits" : "differs";
  return item(asked, [
    [t("study.record.given"), given],
    ...(right ? [[t("study.record.right"), right] as const] : []),
    ...(mistake ? [[t("study.record.mistake"), mistake] as const] : []),
    [t("study.record.result"), `${t(`study.answer.${verdict}`, { tries: attempt.tries })} (${attempt.day})`],
    ...(attempt.note ? [[t("lesson.surprise"), attempt.note] as const] : []),
  ]);
}

function taskItem({ task, title }: Lesson["steps"][number], text: string): string {
  const plain = task && ![...inlinesOf(task.ask)].some(({ kind }) => kind === "figure");
  return item(plain ? wordsOf(task.ask) : title, [[t("study.record.given"), text]]);
}

const item = (asked: string, pairs: readonly Row[]): string =>
  `<li><strong>${inMarkup(asked)}</strong>${rows(pairs)}</li>`;

/** `key`: `lesson#step` */
function againRow(
  key: string,
  { right, day }: LessonProgress["recalled"][string],
  lessons: readonly Lesson[],
): Row {
  const title = stepOfKey(lessons, key)?.step.title ?? key;
  return [day, `${title}: ${t(right ? "study.record.known" : "study.record.notKnown")}`];
}

function quizResults(progress: Progress): string {
  const results = quizOf(progress).results.map(
    ({ day, right, asked }) => `<li>${day}: ${inMarkup(t("study.quiz.result", { right, asked }))}</li>`,
  );
  return results.length > 0 ? `<h2>${inMarkup(t("study.quiz"))}</h2><ul>${results.join("")}</ul>` : "";
}

const cautions = (): string => {
  const sentences = cautionSentences().map((sentence) => `<li>${inMarkup(sentence)}</li>`);
  return `<h2>${inMarkup(t("caution.title"))}</h2><ul>${sentences.join("")}</ul>`;
};
