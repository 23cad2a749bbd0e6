/** Asks whether anyone is still there, before the kiosk returns to its start. */
import { t } from "../../i18n/index.ts";
import { Dialog } from "../../ui/dialog.tsx";

/** `left`: s until it returns */
export const StillThere = ({ left, onStay }: { readonly left: number; readonly onStay: () => void }) => (
  <Dialog title={t("kiosk.still")} urgent ownButtons onClose={onStay}>
    <p class="kiosk-count" role="timer">
      {t("kiosk.returning", { seconds: left })}
    </p>
    <button type="button" class="main" onClick={onStay}>
      {t("kiosk.stay")}
    </button>
  </Dialog>
);
