/** The what-if panel of the bench: every parameter with its slider and its number. */
import { t } from "../../i18n/index.ts";
import { clearParameters } from "../../state/edit.ts";
import { followRule } from "../../state/follow-rule.ts";
import type { Editing } from "../../ui/editing.ts";
import { Panel } from "../../ui/panel.tsx";
import { ParameterForm } from "../../ui/parameter-form.tsx";
import type { Session } from "../shared/session.ts";
import { Person } from "./person.tsx";

export const Adjust = ({ session, onClose }: { readonly session: Session; readonly onClose: () => void }) => (
  <Panel title={t("bench.adjust")} onClose={onClose}>
    <AdjustControls session={session} />
  </Panel>
);

export const AdjustControls = ({ session }: { readonly session: Session }) => (
  <>
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
          session.edit("set", followRule(clearParameters));
          session.settle();
        }}
      >
        {t("bench.usual")}
      </button>
    </div>
    <Person session={session} />
    <ParameterForm editing={following(session)} />
  </>
);

/** Editing in which the volume rule follows the heart's settings until someone chooses it. */
const following = (session: Session): Editing => ({
  scene: session.scene,
  edit: (subject, change) => session.edit(subject, followRule(change)),
  settle: session.settle,
});
