/** Plain or technical: which version of a lesson's text is read. */
import type { Signal } from "@preact/signals";
import { t } from "../../i18n/index.ts";
import { Choice } from "../../ui/choice.tsx";
import { TEXT_VERSIONS, type TextVersion } from "../../ui/lesson/voice.ts";

export interface VersionChoiceProps {
  readonly kept: Signal<TextVersion>;
  readonly quietLabel?: boolean;
}

export const VersionChoice = ({ kept, quietLabel = false }: VersionChoiceProps) => (
  <Choice
    label={t("lesson.telling")}
    quietLabel={quietLabel}
    value={kept.value}
    words={TEXT_VERSIONS}
    nameOf={(name) => t(`lesson.telling.${name}`)}
    onChoose={(name) => {
      kept.value = name;
    }}
  />
);
