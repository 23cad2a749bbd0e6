/** The page's language, changed where one is. */
import { LANGUAGES, language, languageName, t } from "../../../i18n/index.ts";
import { Choice } from "../../../ui/choice.tsx";
import type { Context } from "../mode.ts";

export interface LanguageChoiceProps extends Pick<Context, "address"> {
  readonly quietLabel?: boolean;
}

export const LanguageChoice = ({ address, quietLabel = false }: LanguageChoiceProps) => (
  <Choice
    label={t("look.language")}
    quietLabel={quietLabel}
    value={language()}
    words={LANGUAGES}
    nameOf={languageName}
    onChoose={(tag) => address.go({ language: tag })}
  />
);
