/** The lesson's text as a form or as it is written, and what the checker found in it: two views of the one text. */
import { useMemo, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { lineOfFault } from "../../lesson/edit/field-of-fault.ts";
import type { Library } from "../../lesson/library/library.ts";
import { Choice } from "../../ui/choice.tsx";
import type { Context } from "../shared/mode.ts";
import type { OwnTexts } from "../shared/own/own-texts.ts";
import type { Draft } from "./draft.ts";
import { FaultList } from "./fault-list.tsx";
import { goToField, LessonForm } from "./form/lesson-form.tsx";
import { textHistory } from "./form/text-history.ts";
import { RenameNote } from "./rename-note.tsx";
import { SourceText, type SourceTextHandle } from "./source-text.tsx";
import { type AuthorView, isNarrow, viewsOf } from "./views.ts";

export interface SourcePaneProps {
  readonly context: Context;
  readonly draft: Draft;
  readonly texts: OwnTexts;
  readonly library: Library;
  readonly view: AuthorView;
  /** On which one works (1-based). */
  readonly line: number;
  readonly onLine: (line: number) => void;
}

export function SourcePane({ context, draft, texts, library, view: shown, line, onLine }: SourcePaneProps) {
  const source = useRef<SourceTextHandle>(null);
  const { place, address, session } = context;
  const { more } = place.value;
  const asText = shown === "text";
  const { id, text, listed } = draft.own.value;
  const faults = draft.faults.value;
  // Another text begins without one; the same text keeps it whichever way it is shown.
  const history = useMemo(textHistory, [id]);
  return (
    <section class="author-source" aria-label={t("author.text")}>
      <Choice
        label={t("author.view")}
        quietLabel
        value={shown}
        words={viewsOf(isNarrow.value)}
        nameOf={(view) => t(`author.view.${view}`)}
        onChoose={(view) => address.go({ more: { ...more, view: view === "form" ? "" : view } })}
      />
      {shown === "picture" ? null : asText ? (
        <SourceText
          ref={source}
          text={text}
          faulty={faults.map(lineOfFault)}
          at={line}
          onText={draft.write}
          onLine={onLine}
        />
      ) : (
        <LessonForm
          {...{ history, text, faults, library, session, line, onLine }}
          onText={draft.write}
          figures={draft.figures.value}
          onFigures={draft.setFigures}
        />
      )}
      <RenameNote {...{ texts, library, draft }} />
      <FaultList
        faults={faults}
        refusedFile={draft.refusedFile.value}
        check={draft.check.value}
        busy={draft.busy.value}
        text={text}
        onGo={(at, fault) => {
          if (asText) source.current?.goTo(at);
          else {
            onLine(at);
            goToField(text, fault);
          }
        }}
        onFix={(next) => (asText ? source.current?.exchange(next) : draft.write(next))}
      />
      {shown !== "picture" && faults.length === 0 && draft.lesson.value && (
        <label class="check author-listed">
          <input
            type="checkbox"
            checked={listed}
            onChange={(event) => texts.show(id, event.currentTarget.checked)}
          />
          {t("author.listed")}
        </label>
      )}
    </section>
  );
}
