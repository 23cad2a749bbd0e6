/** "Erase everything on this computer": what it needs is fetched when it is pressed. */
import { fetchModeMessages, t } from "../../../i18n/index.ts";
import { useFetchedPart } from "../../shared/offline/fetched-part.ts";

const load = async () => {
  const [{ EraseDialog }] = await Promise.all([import("./erase-dialog.tsx"), fetchModeMessages()]);
  return EraseDialog;
};

export function EraseButton() {
  const [part, ask] = useFetchedPart(load);
  const Open = part.value;
  return (
    <>
      <button type="button" onClick={ask}>
        {t("home.erase")}
      </button>
      {Open === false && <p role="alert">{t("part.missed")}</p>}
      {Open && (
        <Open
          onClose={() => {
            part.value = null;
          }}
        />
      )}
    </>
  );
}
