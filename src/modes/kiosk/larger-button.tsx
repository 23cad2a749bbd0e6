/** Larger text, for this visit alone. */
import type { Signal } from "@preact/signals";
import { t } from "../../i18n/index.ts";

export const LargerButton = ({ larger }: { readonly larger: Signal<boolean> }) => (
  <button
    type="button"
    onClick={() => {
      larger.value = !larger.value;
    }}
  >
    {t(larger.value ? "kiosk.smaller" : "kiosk.larger")}
  </button>
);
