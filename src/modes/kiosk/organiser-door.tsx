/** The way in for staff: the name held for three seconds, then a code on a number pad. Documented, not secret from staff. */
import { useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { Dialog } from "../../ui/dialog.tsx";
import { organiser } from "./organiser-settings.ts";

/** s */
const HOLD = 3;

export function OrganiserDoor({ onOpen }: { readonly onOpen: () => void }) {
  const asking = useSignal(false);
  const typed = useSignal("");
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const release = () => clearTimeout(timer.current);
  const close = () => {
    asking.value = false;
    typed.value = "";
  };
  const press = (digit: string) => {
    typed.value = `${typed.value}${digit}`.slice(-8);
    if (typed.value.endsWith(organiser.value.code)) {
      close();
      onOpen();
    }
  };
  return (
    <>
      <header
        class="wordmark kiosk-mark"
        onPointerDown={() => {
          release();
          timer.current = setTimeout(() => {
            asking.value = true;
          }, HOLD * 1000);
        }}
        onPointerUp={release}
        onPointerLeave={release}
        onPointerCancel={release}
      >
        {t("name")}
      </header>
      {asking.value && (
        <Dialog title={t("organiser.code")} onClose={close}>
          <p role="status">{"•".repeat(typed.value.length)}</p>
          <div class="number-pad">
            {[..."1234567890"].map((digit) => (
              <button type="button" key={digit} onClick={() => press(digit)}>
                {digit}
              </button>
            ))}
          </div>
        </Dialog>
      )}
    </>
  );
}
