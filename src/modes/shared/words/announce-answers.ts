/** Announces to a screen reader, once and politely, what an edit changed: after the answer has arrived, as words with units. */
import { effect } from "@preact/signals";
import { language, speakQuantity, t } from "../../../i18n/index.ts";
import { present } from "../../../sim/checked/present.ts";
import { announce } from "../../../ui/announce.tsx";
import { type Figure, figuresOf } from "../../../ui/figures.ts";
import type { Session } from "../session.ts";

/** Until the returned function is called. */
export function tellAnswers(session: Session): () => void {
  const { chain } = session;
  const current = (): readonly Figure[] => figuresOf(chain.circulations.value[0] ?? null);
  const spoken = ({ value, unit, digits, band }: Figure) => speakQuantity(present(value), unit, digits, band);
  let announced = new Map<string, Figure>();
  let announcedEdits = session.edits.peek();
  return effect(() => {
    const figures = current().filter(({ value }) => value !== null);
    if (chain.solving.value) return;
    const edits = session.edits.value;
    const before = announced;
    announced = new Map(figures.map((figure) => [figure.name, figure]));
    if (edits === announcedEdits) return;
    const changed = figures.filter((figure) => {
      const earlier = before.get(figure.name);
      return earlier && spoken(earlier) !== spoken(figure);
    });
    if (changed.length === 0) return;
    announcedEdits = edits;
    const list = new Intl.ListFormat(language(), { type: "conjunction" }).format(
      changed.map((figure) =>
        t("announce.figure", { name: t(`figure.${figure.name}`), value: spoken(figure) }),
      ),
    );
    announce(t("announce.changed", { list }));
  });
}
