/** Digits to press, and what was pressed as dots. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { Dialog } from "../../ui/dialog.tsx";
import type { CodeLock } from "./code-lock.ts";
import { useLeaveWhenQuiet } from "./leave-when-quiet.ts";
import { LONGEST_CODE, organiser } from "./organiser-settings.ts";

export interface NumberPadProps {
  readonly lock: CodeLock;
  readonly onOpen: () => void;
  readonly onClose: () => void;
}

export function NumberPad({ lock, onOpen, onClose }: NumberPadProps) {
  const typed = useSignal("");
  const wrong = useSignal(false);
  const rests = useSignal(lock.rests());
  useLeaveWhenQuiet(onClose);
  useEffect(() => {
    const timer = setInterval(() => {
      rests.value = lock.rests();
    }, 500);
    return () => clearInterval(timer);
  }, [lock]);
  const tryIt = () => {
    if (lock.opens(typed.value, organiser.value.code)) {
      onOpen();
      return;
    }
    typed.value = "";
    wrong.value = true;
    rests.value = lock.rests();
  };
  const waits = rests.value > 0;
  return (
    <Dialog title={t("organiser.code")} onClose={onClose}>
      <p role="status">
        {waits
          ? t("organiser.rests", { seconds: Math.ceil(rests.value / 1000) })
          : typed.value
            ? "•".repeat(typed.value.length)
            : t(wrong.value ? "organiser.wrong" : "organiser.type")}
      </p>
      <div class="number-pad">
        {[..."1234567890"].map((digit) => (
          <button
            type="button"
            key={digit}
            disabled={waits}
            onClick={() => {
              typed.value = `${typed.value}${digit}`.slice(0, LONGEST_CODE);
            }}
          >
            {digit}
          </button>
        ))}
        <button
          type="button"
          disabled={waits || typed.value === ""}
          onClick={() => {
            typed.value = typed.value.slice(0, -1);
          }}
          aria-label={t("organiser.back")}
        >
          ⌫
        </button>
        <button type="button" class="main" disabled={waits || typed.value === ""} onClick={tryIt}>
          {t("organiser.enter")}
        </button>
      </div>
    </Dialog>
  );
}
