/** Where the local team writes its own text onto a page for families. */
import { language, t } from "../../i18n/index.ts";
import { MAX_TEAM_TEXT, teamText } from "./team-text.ts";

export function TeamWords() {
  const here = language();
  const words = teamText.of(here);
  return (
    <>
      <label class="handout-words">
        <span>{t("handout.team")}</span>
        <textarea
          rows={3}
          maxLength={MAX_TEAM_TEXT}
          placeholder={t("handout.team.example")}
          aria-describedby="handout-kept"
          value={words}
          onInput={(event) => teamText.write(here, event.currentTarget.value)}
        />
        <span class="handout-words-printed">{words}</span>
      </label>
      <p id="handout-kept" class="handout-kept">
        {t("handout.team.kept")}
      </p>
    </>
  );
}
