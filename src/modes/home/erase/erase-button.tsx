/** "Erase everything on this computer": what it needs is fetched when it is pressed. */
import { type Signal, useSignal } from "@preact/signals";
import type { FunctionComponent } from "preact";
import { t } from "../../../i18n/index.ts";

type EraseDialog = FunctionComponent<{ readonly onClose: () => void }>;

export function EraseButton() {
  const dialog: Signal<EraseDialog | null> = useSignal(null);
  const Open = dialog.value;
  return (
    <>
      <button
        type="button"
        onClick={() =>
          void import("./erase-dialog.tsx").then((module) => {
            dialog.value = module.EraseDialog;
          })
        }
      >
        {t("home.erase")}
      </button>
      {Open && (
        <Open
          onClose={() => {
            dialog.value = null;
          }}
        />
      )}
    </>
  );
}
