/** A new code, typed unseen: a visitor behind the organiser reads nothing. */
import { useSignal } from "@preact/signals";
import { t } from "../../i18n/index.ts";
import { isCode, LONGEST_CODE, setOrganiser } from "./organiser-settings.ts";

export function CodeField() {
  const typed = useSignal("");
  const said = useSignal("");
  return (
    <form
      class="field"
      onSubmit={(event) => {
        event.preventDefault();
        const valid = isCode(typed.value);
        if (valid) {
          setOrganiser({ code: typed.value });
          typed.value = "";
        }
        said.value = t(valid ? "organiser.codeChanged" : "organiser.codeRefused");
      }}
    >
      <label>
        {t("organiser.newCode")}
        <input
          type="password"
          inputMode="numeric"
          autocomplete="off"
          maxLength={LONGEST_CODE}
          value={typed.value}
          onInput={(event) => {
            typed.value = event.currentTarget.value;
          }}
        />
      </label>
      <button type="submit">{t("organiser.changeCode")}</button>
      <p role="status">{said.value}</p>
    </form>
  );
}
