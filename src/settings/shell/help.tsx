/** Help, last in the same bar of every setting: what is what, the keys, the cautions, version and privacy. */
import { Cautions } from "../../interface/cautions.tsx";
import { Dialog } from "../../interface/dialog.tsx";
import { VERSION } from "../../interface/version.ts";
import { t } from "../../words/index.ts";
import { DocsLink } from "./docs-link.tsx";

export interface HelpProps {
  /** Message keys of the paragraphs that this setting needs. */
  readonly paragraphs: readonly string[];
  readonly onKeys: () => void;
  readonly onClose: () => void;
}

export const Help = ({ paragraphs, onKeys, onClose }: HelpProps) => (
  <Dialog title={t("help.title")} onClose={onClose}>
    {paragraphs.map((key) => (
      <p key={key}>{t(key)}</p>
    ))}
    <button type="button" onClick={onKeys}>
      {t("help.keys")}
    </button>
    <Cautions />
    <p>
      <DocsLink apart />
    </p>
    <p>{t("help.version", { version: VERSION })}</p>
    <p>{t("help.privacy")}</p>
  </Dialog>
);
