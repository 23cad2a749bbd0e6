/** What the speaker alone sees of the hall: how many phones are there, how many are lost; saving and ending. */
import { useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { saveFile } from "../../../ui/take-away/save-file.ts";
import { openWindowChannel } from "../windows/window-channel.ts";
import {
  type HallReport,
  type HallToSpeaker,
  type HallToStage,
  hallLineOf,
  readHallToSpeaker,
} from "./hall-messages.ts";

/** ms between calls for the stage, which may have been reloaded */
const CALL = 2000;

/** @param room as in the window's address */
export function HallPhones({ room }: { readonly room: string }) {
  const latest = useSignal<HallReport | null>(null);
  const line = useMemo(
    () =>
      openWindowChannel<HallToStage, HallToSpeaker>(hallLineOf(room), readHallToSpeaker, (message) => {
        if (message.kind === "table") saveFile("hall-counts.csv", `\ufeff${message.csv}`, "text/csv");
        else latest.value = message;
      }),
    [room, latest],
  );
  useEffect(() => {
    const hello = () => line.post({ kind: "hello" });
    hello();
    const calls = setInterval(hello, CALL);
    return () => {
      clearInterval(calls);
      line.close();
    };
  }, [line]);
  const report = latest.value;
  if (!report || (!report.audience && !report.answered)) return null;
  return (
    <section class="hall-phones" aria-label={t("lecture.hall.audience")}>
      {report.audience && <Phones audience={report.audience} say={(message) => line.post(message)} />}
      {report.answered && (
        <button type="button" onClick={() => line.post({ kind: "save" })}>
          {t("lecture.hall.save")}
        </button>
      )}
    </section>
  );
}

interface PhonesProps {
  readonly audience: NonNullable<HallReport["audience"]>;
  readonly say: (message: HallToStage) => void;
}

function Phones({ audience: { open, inviting, code, address, phones, lost }, say }: PhonesProps) {
  const ending = useSignal(false);
  return (
    <>
      <h3>{t("lecture.hall.audience")}</h3>
      <p role="status" class={open ? "" : "hall-gone"}>
        {open ? t("lecture.hall.present", { phones, lost }) : t("lecture.hall.gone")}
      </p>
      {open && (
        <p class="quiet-text">
          {address} <strong>{code}</strong>
        </p>
      )}
      <div class="actions">
        <button
          type="button"
          aria-pressed={inviting}
          disabled={!open}
          onClick={() => say({ kind: "invite", on: !inviting })}
        >
          {t("lecture.hall.showInvite")}
        </button>
        <button
          type="button"
          disabled={!open}
          onClick={() => {
            if (ending.peek()) say({ kind: "end" });
            ending.value = !ending.peek();
          }}
        >
          {t(ending.value ? "lecture.hall.end.sure" : "lecture.hall.end")}
        </button>
      </div>
    </>
  );
}
