/** What the page has to say about itself: faults of the last edit, steps down the ladder, broken links. */
import { signal } from "@preact/signals";
import { FaultNote } from "../../interface/fault-note.tsx";
import type { Fault } from "../../sim/faults.ts";
import { t } from "../../words/index.ts";
import type { Session } from "../session.ts";

/** Parts of the page's address that could not be used. */
export const droppedFromLink = signal<readonly Fault[]>([]);

export function Notes({ session }: { readonly session: Session }) {
  const faults = session.chain.faults.value;
  const degraded = session.chain.degraded.value;
  return (
    <div class="notes" role="status">
      {droppedFromLink.value.length > 0 && (
        <FaultNote
          title={t("link.dropped")}
          faults={droppedFromLink.value}
          onClose={() => {
            droppedFromLink.value = [];
          }}
        />
      )}
      {faults.length > 0 && <FaultNote title={t("fault.title")} faults={faults} />}
      {degraded.map((key) => (
        <p class="note" key={key}>
          {t(`degraded.${key}`)}
        </p>
      ))}
    </div>
  );
}
