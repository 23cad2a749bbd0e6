/** Plain or technical: which version of a lesson's text is read. */
import { t } from "../../../i18n/index.ts";
import { Choice } from "../../../ui/choice.tsx";
import { TEXT_VERSIONS, type TextVersion } from "../../../ui/lesson/voice.ts";

export interface VersionChoiceProps {
  readonly version: TextVersion;
  readonly onChoose: (version: TextVersion) => void;
  readonly quietLabel?: boolean;
}

export const VersionChoice = ({ version, onChoose, quietLabel = false }: VersionChoiceProps) => (
  <Choice
    label={t("lesson.telling")}
    quietLabel={quietLabel}
    value={version}
    words={TEXT_VERSIONS}
    nameOf={(name) => t(`lesson.telling.${name}`)}
    onChoose={onChoose}
  />
);
