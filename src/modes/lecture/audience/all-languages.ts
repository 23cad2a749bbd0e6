/** A lesson's question and words in every language that the kit speaks, for phones that speak another than the stage. */
import type { AskedQuestion, StepWords } from "../../../audience/line-messages.ts";
import { LONGEST_TEXT, MAX_CHOICES } from "../../../audience/room-code.ts";
import { fetchMessages, inLanguage, LANGUAGES, unitSymbol } from "../../../i18n/index.ts";
import type { Lesson, Question, Step } from "../../../lesson/lesson.ts";
import { type Library, loadLibrary } from "../../../lesson/library/library.ts";
import type { Situation } from "../../../lesson/model/figure-paths.ts";
import type { Voice } from "../../../ui/lesson/voice.ts";
import { voiceOf } from "../../shared/lesson/voice-of.ts";
import { plainText } from "../deck/plain-text.ts";
import { hallAsks } from "../hall/first-of-order.ts";
import { choicesOf, type HallQuestion } from "../hall/hall-question.ts";
import { cutText } from "./cut-text.ts";

/** null for a question that a phone cannot put, or whose numbers are not there yet. */
export async function questionForPhones(
  { key, question, lesson, step }: HallQuestion,
  situation: Situation,
): Promise<AskedQuestion | null> {
  const id = lesson.steps[step]?.id;
  const written = await inEach(lesson.id, situation, (voice, { steps }) => {
    const found = steps.find((each) => each.id === id)?.question;
    if (!found) return undefined;
    const own = hallAsks(found);
    return {
      ask: cutText(plainText(own.ask, voice), LONGEST_TEXT.ask),
      choices: choicesIn(own, voice),
      unit: unitOf(own),
    };
  });
  const languages = Object.entries(written);
  const ask = mapped(languages, ({ ask: words }) => words);
  // In the order in which they stand on the stage.
  const shown = "answers" in question ? question.answers.map((answer) => answer.id) : null;
  const ids = shown ?? languages[0]?.[1].choices.map((choice) => choice.id) ?? [];
  if (languages.length === 0 || (ids.length === 0 && question.kind !== "estimate")) return null;
  const choices = ids.slice(0, MAX_CHOICES).map((choice) => ({
    id: choice,
    say: mapped(languages, (words) => words.choices.find((each) => each.id === choice)?.text ?? ""),
  }));
  const unit = mapped(languages, (words) => words.unit);
  return { key, ask, choices, unit: Object.keys(unit).length > 0 ? unit : null };
}

/** The plain words of a step, with the model's numbers of this moment. */
export async function wordsForPhones(
  lesson: Lesson,
  step: Step,
  situation: Situation,
): Promise<{ readonly words: StepWords; readonly whole: boolean }> {
  let whole = true;
  const words = await inEach(lesson.id, situation, (voice, { steps }) => {
    const own = steps.find((each) => each.id === step.id);
    if (!own) return undefined;
    const heard: Voice = {
      ...voice,
      number(figure) {
        const text = voice.number(figure);
        if (!/\d/.test(text)) whole = false;
        return text;
      },
    };
    const text = plainText(own.plain.prose, heard);
    return { title: cutText(own.title, LONGEST_TEXT.title), text: cutText(text, LONGEST_TEXT.step) };
  });
  return { words, whole };
}

/** What is written of a lesson, by language; a language whose texts do not come is left out. */
async function inEach<T>(
  id: string,
  situation: Situation,
  write: (voice: Voice, lesson: Lesson) => T | undefined,
): Promise<Record<string, T>> {
  const written: Record<string, T> = {};
  for (const tag of LANGUAGES) {
    const library: Library | null = await Promise.all([loadLibrary(tag), fetchMessages(tag)]).then(
      ([found]) => found,
      () => null,
    );
    const lesson = library?.lessons.find((each) => each.id === id);
    if (!library || !lesson) continue;
    const own = inLanguage(tag, () => write(voiceOf(library, situation, "plain", null), lesson));
    if (own !== undefined) written[tag] = own;
  }
  return written;
}

const choicesIn = (question: Question, voice: Voice) =>
  choicesOf(question, voice).map(({ id, say }) => ({
    id,
    text: cutText(plainText(say, voice), LONGEST_TEXT.ask),
  }));

const unitOf = (question: Question): string =>
  question.kind === "estimate" ? unitSymbol(question.format.unit) : "";

/** Without the languages in which it is empty. */
const mapped = <T>(
  languages: readonly (readonly [string, T])[],
  write: (words: T) => string,
): Record<string, string> =>
  Object.fromEntries(
    languages.map(([tag, words]) => [tag, write(words)] as const).filter(([, text]) => text !== ""),
  );
