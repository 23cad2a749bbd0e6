/** What the hall answered, with the same bars as on the stage, one's own answer marked, and what the model says. */
import type { HallAnswer, PhoneQuestion, ShownResult } from "../audience/line-messages.ts";
import { own } from "./seat.ts";
import { t, writeAmount, writeNumber } from "./words.ts";

interface ResultProps {
  readonly question: PhoneQuestion;
  readonly result: ShownResult;
}

interface Bar {
  readonly say: string;
  readonly own: boolean;
  readonly model: boolean;
}

export function ResultView({ question, result }: ResultProps) {
  const { counts, model } = result;
  const all = counts.reduce((sum, each) => sum + each, 0);
  const bars = question.choices.length > 0 ? ofChoices(question, model) : ofNumbers(result, question.unit);
  return (
    <>
      <p>{t("phone.answers", { count: all })}</p>
      <ul class="bars">
        {bars.map((bar, index) => {
          const count = counts[index] ?? 0;
          const percent = all > 0 ? (100 * count) / all : 0;
          const marks = [bar.own && t("phone.own"), bar.model && t("phone.model")].filter(Boolean);
          return (
            <li key={index} class={bar.model ? "model" : ""} data-count={count}>
              <span>
                {bar.say}
                {marks.length > 0 && <strong> ({marks.join(", ")})</strong>}
              </span>
              <span class="count">{t("phone.share", { count, percent })}</span>
              <span class="bar" style={{ inlineSize: `${percent}%` }} />
            </li>
          );
        })}
      </ul>
      {typeof model === "number" && (
        <p>
          <strong>{t("phone.model.number", { value: writeAmount(model, question.unit) })}</strong>
        </p>
      )}
    </>
  );
}

const ofChoices = ({ choices }: PhoneQuestion, model: HallAnswer | null): readonly Bar[] =>
  choices.map(({ id, say }) => ({ say, own: own.value === id, model: model === id }));

function ofNumbers({ edges, model }: ShownResult, unit: string): readonly Bar[] {
  const isIn = (value: HallAnswer | null, index: number) =>
    typeof value === "number" && barOf(edges, value) === index;
  return edges.slice(1).map((to, index) => ({
    say: t("phone.range", { from: writeNumber(edges[index] ?? to), to: writeAmount(to, unit) }),
    own: isIn(own.value, index),
    model: isIn(model, index),
  }));
}

/** A bar holds its lower end; the last one its upper end too. -1 = outside. */
function barOf(edges: readonly number[], value: number): number {
  const last = edges.length - 2;
  if (value === edges.at(-1)) return last;
  return edges.findIndex(
    (from, index) => index <= last && value >= from && value < (edges[index + 1] ?? from),
  );
}
