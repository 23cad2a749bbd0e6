/** The talk's counts as a table: one row for each answer, hands and phones apart; no phone can be told from it. */
import { t } from "../../../i18n/index.ts";
import { findStep, type Question } from "../../../lesson/lesson.ts";
import type { Library } from "../../../lesson/library/library.ts";
import type { Voice } from "../../../ui/lesson/voice.ts";
import { type Cell, writeCsv } from "../../../ui/take-away/csv.ts";
import { plainText } from "../deck/plain-text.ts";
import type { HallCount } from "../hall/hall.ts";

export function countsTable(counts: readonly HallCount[], library: Library): string {
  const head = ["question", "asked", "answer", "hands", "phones", "all"].map((name) =>
    t(`lecture.hall.table.${name}`),
  );
  return writeCsv([head, ...counts.flatMap((count) => rowsOf(count, library)), [t("caution.short")]]);
}

function rowsOf({ question: key, hands, phones, numbers }: HallCount, library: Library): readonly Cell[][] {
  const question = findQuestion(key, library);
  const ask = question ? plainText(question.ask, voiceOfTable(library)) : "";
  const row = (answer: Cell, raised: number, sent: number): Cell[] => [
    ...[key, ask, answer],
    ...[raised, sent, raised + sent],
  ];
  const ids = new Set([...choicesIn(question, library).keys(), ...hands, ...Object.keys(phones)]);
  const distinct = [...new Set(numbers)].sort((a, b) => a - b);
  return [
    ...[...ids].map((id) =>
      row(
        choicesIn(question, library).get(id) ?? id,
        hands.filter((choice) => choice === id).length,
        Object.hasOwn(phones, id) ? (phones[id] ?? 0) : 0,
      ),
    ),
    ...distinct.map((number) => row(number, 0, numbers.filter((each) => each === number).length)),
  ];
}

function findQuestion(key: string, { lessons }: Library): Question | null {
  const [id, step = ""] = key.split("#");
  const lesson = lessons.find((each) => each.id === id);
  return lesson?.steps[findStep(lesson, step)]?.question ?? null;
}

/** By id. */
function choicesIn(question: Question | null, library: Library): ReadonlyMap<string, string> {
  if (!question || !("answers" in question)) return new Map();
  return new Map(question.answers.map(({ id, say }) => [id, plainText(say, voiceOfTable(library))]));
}

/** Of a question long past the model's numbers are no longer there. */
const voiceOfTable = ({ glossary, sources }: Library): Voice => ({
  ...{ version: "plain", glossary, sources, follow: null },
  number: () => t("lesson.waiting"),
  amount: () => null,
});
