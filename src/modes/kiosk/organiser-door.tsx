/** The way in for staff: the name held for three seconds, then a code on a number pad. Documented, not secret from staff. */
import { useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { codeLock } from "./code-lock.ts";
import { NumberPad } from "./number-pad.tsx";

/** s */
const HOLD = 3;

/** One for the page: closing the pad gives no further tries. */
const lock = codeLock({ now: () => performance.now(), date: Date.now, storage: () => localStorage });

export function OrganiserDoor({ onOpen }: { readonly onOpen: () => void }) {
  const asking = useSignal(false);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const release = () => clearTimeout(timer.current);
  const close = () => {
    asking.value = false;
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
        <NumberPad
          lock={lock}
          onClose={close}
          onOpen={() => {
            close();
            onOpen();
          }}
        />
      )}
    </>
  );
}
