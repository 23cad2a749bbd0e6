/** The what-if panel of the bench: every parameter with its slider and its number. */
import { t } from "../../i18n/index.ts";
import { clearParameters } from "../../state/edit.ts";
import { Panel } from "../../ui/panel.tsx";
import { ParameterForm } from "../../ui/parameter-form.tsx";
import type { Session } from "../shared/session.ts";

export const Adjust = ({ session, onClose }: { readonly session: Session; readonly onClose: () => void }) => (
  <Panel title={t("bench.adjust")} onClose={onClose}>
    <div class="actions">
      <button type="button" aria-disabled={!session.canUndo.value} onClick={session.undo}>
        {t("bench.undo")}
      </button>
      <button type="button" aria-disabled={!session.canRedo.value} onClick={session.redo}>
        {t("bench.redo")}
      </button>
      <button
        type="button"
        onClick={() => {
          session.edit("set", clearParameters);
          session.settle();
        }}
      >
        {t("bench.usual")}
      </button>
    </div>
    <ParameterForm editing={session} />
  </Panel>
);
