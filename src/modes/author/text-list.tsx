/** The own lessons on this device: open, duplicate, rename, save, take back an earlier version, delete once that is agreed to. */
import { useSignal } from "@preact/signals";
import { language, t } from "../../i18n/index.ts";
import { lessonIdOf, lessonTitleOf } from "../../lesson/read/lesson-id.ts";
import { Confirm } from "../../ui/confirm.tsx";
import { Dialog } from "../../ui/dialog.tsx";
import { saveFile } from "../../ui/take-away/save-file.ts";
import { MAX_NAME, type OwnText, type OwnTexts } from "../shared/own/own-texts.ts";
import { copyOfText } from "./first-text.ts";

export interface TextListProps {
  readonly texts: OwnTexts;
  /** id of the text on the desk */
  readonly open: string;
  readonly onOpen: (id: string) => void;
  /** Resolves once the new text is on the desk. */
  readonly onNew: () => Promise<void>;
  readonly onClose: () => void;
}

export function TextList({ texts, open, onOpen, onNew, onClose }: TextListProps) {
  const deleting = useSignal<OwnText | null>(null);
  /** Another text takes its place on the desk first: the desk is never without one. */
  const removeText = async ({ id }: OwnText) => {
    const next = texts.list.peek().find((each) => each.id !== id);
    if (!next) await onNew();
    else if (id === open) onOpen(next.id);
    texts.remove(id);
  };
  const leave = (id: string) => {
    onOpen(id);
    onClose();
  };
  return (
    <Dialog title={t("author.own")} onClose={onClose}>
      <p>{t(texts.keeps.value ? "author.kept" : "author.notKept")}</p>
      <button type="button" onClick={() => void onNew().then(onClose)}>
        {t("author.new")}
      </button>
      <ul class="plain-list own-texts">
        {texts.list.value.map((own) => (
          <OwnTextRow
            key={own.id}
            own={own}
            texts={texts}
            isOpen={own.id === open}
            onOpen={leave}
            onDelete={() => {
              deleting.value = own;
            }}
          />
        ))}
      </ul>
      {deleting.value && (
        <Confirm
          title={t("author.delete.title", { name: deleting.value.name })}
          what={t("author.delete.what")}
          no={t("author.delete.no")}
          yes={t("author.delete.yes")}
          onNo={() => {
            deleting.value = null;
          }}
          onYes={() => {
            const gone = deleting.value;
            deleting.value = null;
            if (gone) void removeText(gone);
          }}
        />
      )}
    </Dialog>
  );
}

interface OwnTextRowProps {
  readonly own: OwnText;
  readonly texts: OwnTexts;
  readonly isOpen: boolean;
  readonly onOpen: (id: string) => void;
  readonly onDelete: () => void;
}

function OwnTextRow({ own, texts, isOpen, onOpen, onDelete }: OwnTextRowProps) {
  return (
    <li aria-label={own.name} aria-current={isOpen ? "true" : undefined}>
      <label>
        <span class="unseen">{t("author.name")}</span>
        <input
          type="text"
          maxLength={MAX_NAME}
          value={own.name}
          onChange={(event) => texts.rename(own.id, event.currentTarget.value)}
        />
      </label>
      <span class="quiet-text">
        {[lessonTitleOf(own.text), when(own.changed)].filter(Boolean).join(" · ")}
      </span>
      <div class="actions">
        <button type="button" onClick={() => onOpen(own.id)}>
          {t("author.open")}
        </button>
        <button type="button" onClick={() => onOpen(copyOfText(texts, own))}>
          {t("author.duplicate")}
        </button>
        <button type="button" onClick={() => saveFile(fileName(own), own.text, "text/markdown")}>
          {t("author.save")}
        </button>
        <button type="button" onClick={onDelete}>
          {t("author.delete")}
        </button>
      </div>
      <label class="check">
        <input
          type="checkbox"
          checked={own.listed}
          onChange={(event) => texts.show(own.id, event.currentTarget.checked)}
        />
        {t("author.listed")}
      </label>
      {own.earlier.length > 0 && (
        <details>
          <summary>{t("author.earlier", { count: own.earlier.length })}</summary>
          <ul>
            {[...own.earlier].reverse().map(({ at, text }) => (
              <li key={at}>
                {when(at)}{" "}
                <button
                  type="button"
                  class="quiet"
                  onClick={() => {
                    texts.write(own.id, text);
                    onOpen(own.id);
                  }}
                >
                  {t("author.takeBack")}
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </li>
  );
}

const when = (at: number): string =>
  new Intl.DateTimeFormat(language(), { dateStyle: "medium", timeStyle: "short" }).format(at);

/** The lesson's id names its file, as the kit expects it. */
function fileName({ name, text }: OwnText): string {
  const id = /^[a-z0-9-]+$/.exec(lessonIdOf(text))?.[0];
  return `${id ?? (name.replaceAll(/[^\p{L}\p{N}]+/gu, "-").replaceAll(/^-|-$/g, "") || "lesson")}.md`;
}
