/** Help, last in the same bar of every mode: what is what, the keys, the cautions, version and privacy. */
import type { ComponentChildren } from "preact";
import { fieldKernel } from "../../../chain/field-kernel.ts";
import { t } from "../../../i18n/index.ts";
import { VERSION } from "../../../ui/app-version.ts";
import { Cautions } from "../../../ui/cautions.tsx";
import { Dialog } from "../../../ui/dialog.tsx";
import { DocsLink } from "./docs-link.tsx";

export interface HelpProps {
  /** Message keys of the paragraphs that this setting needs. */
  readonly paragraphs: readonly string[];
  /** Controls of the mode, before all else. */
  readonly children?: ComponentChildren;
  readonly onKeys: () => void;
  readonly onClose: () => void;
}

function Kernel() {
  const { gpu, vectors, grids } = fieldKernel();
  const cells = [...new Set(grids.map(Math.round))].join(", ");
  return (
    <p>
      {t("help.gpu", { gpu })} {gpu !== "computes" && t("help.kernel", { vectors: vectors ? "yes" : "no" })}{" "}
      {cells && t("help.grid", { gpu, cells })}
    </p>
  );
}

export const Help = ({ paragraphs, children, onKeys, onClose }: HelpProps) => (
  <Dialog title={t("help.title")} onClose={onClose}>
    {children}
    {paragraphs.map((key) => (
      <p key={key}>{t(key)}</p>
    ))}
    <Kernel />
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
