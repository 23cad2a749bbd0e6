/** The keys of a lesson taken alone. */

import { releaseDye } from "../../state/edit.ts";
import { showsField } from "../../state/scene-state.ts";
import type { Key } from "../../ui/keys.ts";
import { togglePlay } from "../shared/handles/play.ts";
import type { LessonRun } from "../shared/lesson/lesson-run.ts";
import type { Context } from "../shared/mode.ts";

export const studyKeys = (context: Context, run: LessonRun, openKeys: () => void): readonly Key[] => [
  { keys: ["ArrowRight", "PageDown"], does: "keyDoes.nextStep", run: () => run.send({ kind: "next" }) },
  { keys: ["ArrowLeft", "PageUp"], does: "keyDoes.previousStep", run: () => run.send({ kind: "back" }) },
  { keys: [" ", "k"], does: "keyDoes.pause", run: () => togglePlay(context) },
  {
    keys: ["d"],
    does: "keyDoes.dye",
    run: () => {
      if (showsField(context.session.scene.peek())) context.session.edit("dye", releaseDye);
    },
  },
  { keys: ["h"], does: "keyDoes.hint", run: () => run.send({ kind: "hint" }) },
  { keys: ["0"], does: "keyDoes.restore", run: run.restoreScene },
  { keys: ["?"], does: "keyDoes.keys", run: openKeys },
];
