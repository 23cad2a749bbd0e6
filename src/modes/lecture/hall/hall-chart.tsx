/** The hall's answers as bars, one for each choice or range of numbers, and which of them the model gives. */
import type { ComponentChildren } from "preact";
import { barOf } from "../../../audience/bar-of.ts";
import type { ShownResult } from "../../../audience/line-messages.ts";
import { formatNumber, formatQuantity, t } from "../../../i18n/index.ts";
import type { Question } from "../../../lesson/lesson.ts";
import { InlineView } from "../../../ui/lesson/prose.tsx";
import type { Voice } from "../../../ui/lesson/voice.ts";
import type { HallRun } from "./hall-run.ts";

export function HallChart({ hall, voice }: { readonly hall: HallRun; readonly voice: Voice }) {
  const question = hall.asked.value?.question;
  const result = hall.result.value;
  if (!question || !result) return null;
  const { counts, model } = result;
  const all = counts.reduce((sum, each) => sum + each, 0);
  const bars: readonly HallBar[] =
    hall.choices.value.length > 0
      ? hall.choices.value.map(({ id, say }) => ({
          id,
          label: <InlineView words={say} voice={voice} />,
          model: id === model,
        }))
      : rangesOf(result, question);
  return (
    <section class="hall-chart" aria-label={t("lecture.hall.chart")}>
      <h3>{t("lecture.hall.answers", { count: all })}</h3>
      <ul>
        {bars.map((bar, index) => {
          const count = counts[index] ?? 0;
          const share = all > 0 ? count / all : 0;
          return (
            <li key={bar.id} data-choice={bar.id} data-count={count} class={bar.model ? "model" : ""}>
              <span class="hall-choice">
                {bar.label}
                {bar.model && <strong> {t("lecture.hall.model")}</strong>}
              </span>
              <span class="hall-count">
                {t("lecture.hall.share", {
                  count: formatNumber(count),
                  percent: formatNumber(100 * share),
                })}
              </span>
              <span class="hall-bar" style={{ inlineSize: `${100 * share}%` }} />
            </li>
          );
        })}
      </ul>
      {typeof model === "number" && question.kind === "estimate" && (
        <p class="hall-model">
          {t("lecture.hall.model.number", {
            value: formatQuantity(model, question.format.unit, question.format.digits),
          })}
        </p>
      )}
    </section>
  );
}

interface HallBar {
  readonly id: string;
  readonly label: ComponentChildren;
  readonly model: boolean;
}

function rangesOf({ edges, model }: ShownResult, question: Question): readonly HallBar[] {
  const unit = question.kind === "estimate" ? question.format.unit : "1";
  const digitsOf = (value: number) =>
    Number.isInteger(value) ? 0 : Math.min(2, String(value).split(".")[1]?.length ?? 0);
  return edges.slice(1).map((to, index) => {
    const from = edges[index] ?? to;
    return {
      id: String(index),
      label: t("lecture.hall.range", {
        from: formatNumber(from, digitsOf(from)),
        to: formatQuantity(to, unit, digitsOf(to)),
      }),
      model: typeof model === "number" && barOf(edges, model) === index,
    };
  });
}
