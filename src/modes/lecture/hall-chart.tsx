/** The hall's answers as bars, one for each choice, and which of them the model gives. */
import { formatNumber, t } from "../../i18n/index.ts";
import { InlineView } from "../../ui/lesson/prose.tsx";
import type { Voice } from "../../ui/lesson/voice.ts";
import { tally } from "./hall.ts";
import { choicesOf } from "./hall-question.ts";
import type { HallRun } from "./hall-run.ts";

export function HallChart({ hall, voice }: { readonly hall: HallRun; readonly voice: Voice }) {
  const asked = hall.asked.value;
  const count = hall.count.value;
  if (!asked || !count || (count.phase !== "shown" && count.phase !== "compared")) return null;
  const choices = choicesOf(asked.question, voice);
  const counts = tally(
    choices.map(({ id }) => id),
    count.hands,
  );
  const all = counts.reduce((sum, each) => sum + each, 0);
  const truth = count.phase === "compared" ? hall.truth.value : null;
  return (
    <section class="hall-chart" aria-label={t("lecture.hall.chart")}>
      <h3>{t("lecture.hall.answers", { count: all })}</h3>
      <ul>
        {choices.map(({ id, say }, index) => {
          const share = all > 0 ? (counts[index] ?? 0) / all : 0;
          return (
            <li key={id} data-choice={id} data-count={counts[index]} class={id === truth ? "model" : ""}>
              <span class="hall-choice">
                <InlineView words={say} voice={voice} />
                {id === truth && <strong> {t("lecture.hall.model")}</strong>}
              </span>
              <span class="hall-count">
                {t("lecture.hall.share", {
                  count: formatNumber(counts[index] ?? 0),
                  percent: formatNumber(100 * share),
                })}
              </span>
              <span class="hall-bar" style={{ inlineSize: `${100 * share}%` }} />
            </li>
          );
        })}
      </ul>
    </section>
  );
}
