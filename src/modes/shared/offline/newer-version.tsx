/** Offers a newer version of the kit once it lies ready; nothing while there is none. */
import { useSignal } from "@preact/signals";
import { t } from "../../../i18n/index.ts";
import { newerVersion } from "./offline.ts";

export function NewerVersion() {
  const refused = useSignal(false);
  const take = newerVersion.value;
  return (
    take && (
      <p role="status">
        <button
          type="button"
          onClick={async () => {
            refused.value = !(await take());
          }}
        >
          {t("home.newer")}
        </button>{" "}
        {refused.value && t("home.newer.windows")}
      </p>
    )
  );
}
