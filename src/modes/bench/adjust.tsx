/** The what-if panel of the bench: sliders of the panel library, or the same as a plain form. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { language, t } from "../../i18n/index.ts";
import { clearParameters } from "../../state/edit.ts";
import { Switch } from "../../ui/choice.tsx";
import { Panel } from "../../ui/panel.tsx";
import { ParameterForm } from "../../ui/parameter-form.tsx";
import type { Session } from "../shared/session.ts";

export function Adjust({ session, onClose }: { readonly session: Session; readonly onClose: () => void }) {
  const plain = useSignal(false);
  return (
    <Panel
      title={t("bench.adjust")}
      onClose={onClose}
      beside={
        <Switch
          label={t("bench.plainForm")}
          on={plain.value}
          onChange={(on) => {
            plain.value = on;
          }}
        />
      }
    >
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
      {plain.value ? <ParameterForm editing={session} /> : <Tweaks session={session} />}
    </Panel>
  );
}

function Tweaks({ session }: { readonly session: Session }) {
  const host = useRef<HTMLDivElement>(null);
  // Words and rows change with these two: the panel is rebuilt.
  const { stage } = session.scene.value.request;
  const tag = language();
  useEffect(() => {
    let release = () => {};
    let gone = false;
    void import("./tweaks.ts").then(({ buildTweaks }) => {
      if (!gone && host.current) release = buildTweaks(host.current, session);
    });
    return () => {
      gone = true;
      release();
    };
  }, [session, stage, tag]);
  return <div class="tweaks" ref={host} />;
}
