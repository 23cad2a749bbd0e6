/** Counting raised hands in the speaker's window: a key or a press for each, and how far the stage shows it. */
import { t } from "../../../i18n/index.ts";
import type { Key } from "../../../ui/keys.ts";
import { InlineView } from "../../../ui/lesson/prose.tsx";
import type { Voice } from "../../../ui/lesson/voice.ts";
import { type HallCount, type HallEvent, isAnswered, tally } from "./hall.ts";
import type { HallChoice } from "./hall-question.ts";

export interface HallDeskProps {
  readonly count: HallCount;
  readonly choices: readonly HallChoice[];
  readonly voice: Voice;
  readonly say: (event: HallEvent) => void;
}

const raiseFor = (choices: readonly HallChoice[], say: HallDeskProps["say"]) => (index: number) => {
  const choice = choices[index]?.id;
  if (choice) say({ kind: "hand", choice });
};

/** None once no more answers are taken: then the window's own keys have their place again. */
export function hallKeys({ count, choices, say }: Omit<HallDeskProps, "voice">): readonly Key[] {
  if (count.phase !== "open" || choices.length === 0) return [];
  const raise = raiseFor(choices, say);
  return [
    { keys: [..."123456789"], does: "lecture.hall.does.hand", run: (key) => raise(Number(key) - 1) },
    { keys: ["u"], does: "lecture.hall.undo", run: () => say({ kind: "undo" }) },
  ];
}

export function HallDesk({ count, choices, voice, say }: HallDeskProps) {
  const ids = choices.map(({ id }) => id);
  const counts = tally(ids, count);
  const byPhone = count.numbers.length > 0 || Object.keys(count.phones).length > 0;
  const open = count.phase === "open";
  const raise = raiseFor(choices, say);
  return (
    <section class="hall-desk" aria-label={t("lecture.hall.hands")}>
      <h3>{t(byPhone ? "lecture.hall.together" : "lecture.hall.hands")}</h3>
      <p class="quiet-text">{t("lecture.hall.help")}</p>
      <ol>
        {choices.map(({ id, say: words }, index) => (
          <li key={id} data-choice={id} data-count={counts[index]}>
            <button type="button" disabled={!open} onClick={() => raise(index)}>
              <span>
                <InlineView words={words} voice={voice} />
              </span>
              <output>{counts[index]}</output>
            </button>
          </li>
        ))}
      </ol>
      {count.numbers.length > 0 && <p>{t("lecture.hall.numbers", { count: count.numbers.length })}</p>}
      <p role="status">{t(`lecture.hall.phase.${count.phase}`)}</p>
      <div class="actions">
        {count.phase !== "compared" && (
          <button type="button" class="main" onClick={() => say({ kind: "further" })}>
            {t(`lecture.hall.further.${count.phase}`)}
          </button>
        )}
        {!open && (
          <button type="button" onClick={() => say({ kind: "reopen" })}>
            {t("lecture.hall.reopen")}
          </button>
        )}
        <button
          type="button"
          disabled={!open || count.hands.length === 0}
          onClick={() => say({ kind: "undo" })}
        >
          {t("lecture.hall.undo")}
        </button>
        <button type="button" disabled={!isAnswered(count)} onClick={() => say({ kind: "clear" })}>
          {t("lecture.hall.clear")}
        </button>
      </div>
    </section>
  );
}
