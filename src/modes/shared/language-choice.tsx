/** The page's language, changed where one is. */
import { LANGUAGES, language, languageName, t } from "../../i18n/index.ts";
import { Choice } from "../../ui/choice.tsx";
import type { Context } from "./mode.ts";

export const LanguageChoice = ({ address }: Pick<Context, "address">) => (
  <Choice
    label={t("look.language")}
    value={language()}
    words={LANGUAGES}
    nameOf={languageName}
    onChoose={(tag) => address.go({ language: tag })}
  />
);
