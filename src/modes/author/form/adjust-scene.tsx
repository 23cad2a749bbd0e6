/** The bench's controls over the picture beside the form, until what is seen is what the step shall show. */
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { lenientScenes } from "../../../lesson/edit/lenient-scenes.ts";
import { setBlock } from "../../../lesson/edit/lesson-edit.ts";
import { sceneEdits } from "../../../lesson/edit/scene-difference.ts";
import { stepState } from "../../../lesson/model/states.ts";
import { AdjustControls } from "../../bench/adjust.tsx";
import { CompareControls } from "../../bench/compare.tsx";
import { PictureControls, SceneChoice } from "../../bench/picture-controls.tsx";
import type { Session } from "../../shared/session.ts";
import { useDesk } from "./desk.ts";

export function AdjustScene({
  session,
  onClose,
}: {
  readonly session: Session;
  readonly onClose: () => void;
}) {
  const desk = useDesk();
  const scenes = lenientScenes(desk.text);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // It begins with what the text says, also where faults keep the step from running.
    session.show(stepState(scenes, desk.step));
    heading.current?.focus();
  }, []);
  const leave = () => {
    session.show(stepState(scenes, desk.step));
    onClose();
  };
  const use = () => {
    const edits = sceneEdits(scenes, desk.step, session.scene.peek());
    desk.write(setBlock(desk.text, desk.step, "scene", edits), "");
    onClose();
  };
  return (
    <div class="form-adjust">
      <h2 ref={heading} tabIndex={-1}>
        {t("author.form.shown")}
      </h2>
      <p>{t("author.form.adjust.what")}</p>
      <div class="actions">
        <button type="button" class="main" onClick={use}>
          {t("author.form.use")}
        </button>
        <button type="button" onClick={leave}>
          {t("author.form.adjust.leave")}
        </button>
      </div>
      <SceneChoice session={session} />
      <AdjustControls session={session} />
      <PictureControls session={session} />
      <details>
        <summary>{t("bench.compare")}</summary>
        <CompareControls session={session} />
      </details>
    </div>
  );
}
