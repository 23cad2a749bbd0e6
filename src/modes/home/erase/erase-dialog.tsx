/** Lists all that the kit keeps in this browser, and erases it once that is confirmed. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { Dialog } from "../../../ui/dialog.tsx";
import { type Browser, eraseEverything, type KeptKind, keptThings } from "./kept-things.ts";

const BROWSER: Browser = {
  storages: () => [localStorage, sessionStorage],
  databases: () => indexedDB,
  // Both are there in pages from a server only.
  caches: () => globalThis.caches,
  workers: () => navigator.serviceWorker,
  home: new URL("./", location.href).href,
};

export function EraseDialog({ onClose }: { readonly onClose: () => void }) {
  const kept = useSignal<readonly KeptKind[] | null>(null);
  const erased = useSignal(false);
  useEffect(() => {
    void keptThings(BROWSER).then((found) => {
      kept.value = found;
    });
  }, [kept]);
  const erase = async () => {
    kept.value = await eraseEverything(BROWSER);
    erased.value = true;
  };
  // What stands in this page's memory must not be kept again.
  const leave = () => (erased.value ? location.reload() : onClose());
  if (kept.value === null) return null;
  const left = kept.value.length > 0;
  const said = erased.value ? (left ? "failed" : "done") : left ? "what" : "none";
  return (
    <Dialog title={t("erase.title")} urgent ownButtons onClose={leave}>
      <p role="status">{t(`erase.${said}`)}</p>
      {left && (
        <ul class="erase-list">
          {kept.value.map((kind) => (
            <li key={kind}>{t(`erase.${kind}`)}</li>
          ))}
        </ul>
      )}
      <div class="actions">
        <button type="button" onClick={leave}>
          {t(erased.value ? "erase.again" : "erase.no")}
        </button>
        {left && (
          <button type="button" onClick={() => void erase()}>
            {t("erase.yes")}
          </button>
        )}
      </div>
    </Dialog>
  );
}
