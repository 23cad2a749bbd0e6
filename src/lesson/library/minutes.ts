/** How long a lesson takes someone alone, from its words and tasks. */
import type { Lesson, Question, Step } from "../lesson.ts";
import { countWords, wordsOf } from "../prose.ts";
import { wordsIn } from "../read/references.ts";

/** A minute: half of what adults read silently (238: Brysbaert 2019, J Mem Lang 109:104047, from memory), since words are compared with a picture and numbers. */
const WORDS = 120;

/** s, beside reading (common practice, no source): a look at the picture; thinking and answering; a question asked again at the end. */
const LOOK = 20;
const ANSWER: Readonly<Record<Question["kind"], number>> = {
  predict: 25,
  choose: 25,
  order: 40,
  estimate: 40,
  goal: 90,
  number: 150,
};
const WRITE = 120;
const RECALL = 30;

/** The longer of the two versions counts. */
export function minutesOf(lesson: Lesson): number {
  const seconds = lesson.steps.map(secondsOf).reduce((sum, each) => sum + each, 0);
  return (seconds + RECALL * lesson.recall.length) / 60;
}

function secondsOf({ plain, technical, caution, question, task }: Step): number {
  const count = (content: Parameters<typeof wordsOf>[0]) => countWords(wordsOf(content));
  const versions = [plain, technical].map((part) => (part ? count(part.prose) : 0));
  const read = Math.max(...versions) + (caution ? count(caution.prose) : 0);
  const asked = question ? wordsRead(question).reduce((sum, words) => sum + count(words), 0) : 0;
  const acts = (question ? ANSWER[question.kind] : 0) + (task ? WRITE : 0);
  return LOOK + ((read + asked) * 60) / WORDS + acts;
}

/** Of a question the reasons of the answers not given are not read. */
function wordsRead(question: Question): readonly Parameters<typeof wordsOf>[0][] {
  if ("answers" in question) {
    const [first] = question.answers;
    return [question.ask, ...question.answers.map(({ say }) => say), ...(first ? [first.because] : [])];
  }
  if (question.kind === "number") return [question.ask, question.right, ...question.solution];
  return wordsIn(question).slice(0, 3);
}
