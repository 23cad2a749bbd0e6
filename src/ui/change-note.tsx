/** Says what the small numbers compare with, and ends the comparison. */
import { t } from "../i18n/index.ts";

export const ChangeNote = ({ onHide }: { readonly onHide: () => void }) => (
  <p class="change-note">
    {t("change.note")}{" "}
    <button type="button" class="quiet" data-item="forget" onClick={onHide}>
      {t("change.hide")}
    </button>
  </p>
);
