/** What a mode has to say about its scene: faults of the last edit, steps down the ladder. */

import { t } from "../../../i18n/index.ts";
import { FaultNote } from "../../../ui/fault-note.tsx";
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
