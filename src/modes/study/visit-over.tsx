/** Told once where a course system's visit has ended and the page is open still: what is answered from here on stays here. */
import { useSignal } from "@preact/signals";
import { t } from "../../i18n/index.ts";
import { Dialog } from "../../ui/dialog.tsx";
import type { KeptProgress } from "./kept-progress.ts";
import { LeaveLink } from "./leave-link.tsx";

export function VisitOver(kept: Pick<KeptProgress, "wayBack" | "end">) {
  const closed = useSignal(false);
  if (closed.value) return null;
  const close = () => {
    closed.value = true;
  };
  return (
    <Dialog title={t("study.over.title")} urgent ownButtons onClose={close}>
      <p>{t("study.over.what")}</p>
      <div class="actions">
        <LeaveLink {...kept} />
        <button type="button" onClick={close}>
          {t("study.over.stay")}
        </button>
      </div>
    </Dialog>
  );
}
