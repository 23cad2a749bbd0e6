/** What a setting has to say about its scene: faults of the last edit, steps down the ladder. */
import { FaultNote } from "../../interface/fault-note.tsx";
import { t } from "../../words/index.ts";
import type { Session } from "../session.ts";

export function Notes({ session }: { readonly session: Session }) {
  const faults = session.chain.faults.value;
  const degraded = session.chain.degraded.value;
  return (
    <div class="notes" role="status">
      {faults.length > 0 && <FaultNote title={t("fault.title")} faults={faults} />}
      {degraded.map((key) => (
        <p class="note" key={key}>
          {t(`degraded.${key}`)}
        </p>
      ))}
    </div>
  );
}
