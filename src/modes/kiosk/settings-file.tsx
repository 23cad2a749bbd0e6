/** The organiser's settings as a file, for a second kiosk; the code stays behind. */
import { useSignal } from "@preact/signals";
import { t } from "../../i18n/index.ts";
import { Confirm } from "../../ui/confirm.tsx";
import { saveFile } from "../../ui/take-away/save-file.ts";
import { FilePicker } from "../shared/own/file-picker.tsx";
import {
  type OrganiserSettings,
  organiser,
  readSettings,
  setOrganiser,
  writeSettings,
} from "./organiser-settings.ts";

/** bytes */
const LARGEST = 20_000;

export function SettingsFile() {
  const offered = useSignal<Omit<OrganiserSettings, "code"> | null>(null);
  const refused = useSignal("");
  const take = async (file: File) => {
    offered.value = file.size > LARGEST ? null : readSettings(await file.text().catch(() => ""));
    refused.value = offered.value ? "" : t("organiser.settings.refused", { name: file.name });
  };
  return (
    <>
      <div class="actions">
        <button
          type="button"
          onClick={() => saveFile("lungward-kiosk.json", writeSettings(organiser.value), "application/json")}
        >
          {t("organiser.settings.save")}
        </button>
        <FilePicker label={t("organiser.settings.load")} accept=".json,application/json" onPick={take} />
      </div>
      <p role="status">{refused.value}</p>
      {offered.value && (
        <Confirm
          title={t("organiser.settings.title")}
          what={t("organiser.settings.what")}
          no={t("organiser.settings.no")}
          yes={t("organiser.settings.yes")}
          onNo={() => {
            offered.value = null;
          }}
          onYes={() => {
            if (offered.value) setOrganiser(offered.value);
            offered.value = null;
          }}
        />
      )}
    </>
  );
}
