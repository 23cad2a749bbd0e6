/** The stage in the speaker's window: its live picture, with pointer, pen and eraser on it. */
import { type ReadonlySignal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { type MarkEvent, mark, NO_MARKS } from "../pen/pen.ts";
import { PenLines } from "../pen/pen-layer.tsx";
import { PenSurface, TOOLS, type Tool } from "../pen/pen-surface.tsx";
import { StagePicture } from "../picture/stage-picture.tsx";
import type { StagePictureMessage } from "../windows/window-messages.ts";

export interface SpeakerStageProps {
  readonly picture: ReadonlySignal<StagePictureMessage | null>;
  /** Index of the stop that the hall sees. */
  readonly shown: number;
  readonly tool: ReadonlySignal<Tool>;
  readonly onTool: (tool: Tool) => void;
  readonly onMark: (event: MarkEvent) => void;
}

export function SpeakerStage({ picture, shown, tool, onTool, onMark }: SpeakerStageProps) {
  // The hand sees its own line at once; the picture brings it a moment later.
  const own = useSignal(NO_MARKS);
  useEffect(() => {
    own.value = NO_MARKS;
  }, [shown]);
  const put = (event: MarkEvent) => {
    if (event.kind !== "point" && event.kind !== "unpoint") own.value = mark(own.peek(), event);
    onMark(event);
  };
  return (
    <section class="speaker-stage" aria-label={t("lecture.picture")}>
      <StagePicture picture={picture}>
        <PenLines marks={own} />
        <PenSurface tool={tool.value} onMark={put} />
      </StagePicture>
      <fieldset class="actions">
        <legend class="unseen">{t("lecture.tools")}</legend>
        {TOOLS.map((name) => (
          <button
            key={name}
            type="button"
            data-tool={name}
            aria-pressed={tool.value === name}
            onClick={() => onTool(name)}
          >
            {t(`lecture.tool.${name}`)}
          </button>
        ))}
        <button type="button" data-tool="clear" onClick={() => put({ kind: "clear" })}>
          {t("lecture.clearPen")}
        </button>
      </fieldset>
    </section>
  );
}
