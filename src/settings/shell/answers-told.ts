/** Tells a screen reader, once and politely, what an edit changed: after the answer has arrived, as words with units. */
import { effect } from "@preact/signals";
import { announce } from "../../interface/announce.tsx";
import { type Figure, figuresOf } from "../../interface/figures.ts";
import { language, speakQuantity, t } from "../../words/index.ts";
import type { Session } from "../session.ts";

/** Until the returned function is called. */
export function tellAnswers(session: Session): () => void {
  const { chain } = session;
  const current = (): readonly Figure[] => figuresOf(chain.circulations.value[0] ?? null, null);
  const spoken = ({ value, unit, digits }: Figure) => speakQuantity(value!, unit, digits);
  let told = new Map<string, string>();
  let toldEdits = session.edits.peek();
  return effect(() => {
    const figures = current().filter(({ value }) => value !== null);
    if (chain.solving.value) return;
    const edits = session.edits.value;
    const now = new Map(figures.map((figure) => [figure.name, spoken(figure)]));
    const changed = figures.filter(({ name }) => told.has(name) && told.get(name) !== now.get(name));
    told = now;
    if (changed.length === 0 || edits === toldEdits) return;
    toldEdits = edits;
    const list = new Intl.ListFormat(language(), { type: "conjunction" }).format(
      changed.map((figure) =>
        t("announce.figure", { name: t(`figure.${figure.name}`), value: now.get(figure.name)! }),
      ),
    );
    announce(t("announce.changed", { list }));
  });
}
