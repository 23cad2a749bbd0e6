/** The talk kept on this device, for a window that shows it. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { type KeptTalk, readKeptTalk } from "./talk-store.ts";

/** null where none is wanted or kept */
export function useKeptTalk(wanted: boolean): KeptTalk | null | "waiting" {
  const kept = useSignal<KeptTalk | null | "waiting">("waiting");
  useEffect(() => {
    kept.value = "waiting";
    if (!wanted) return;
    readKeptTalk().then(
      (found) => {
        kept.value = found;
      },
      () => {
        kept.value = null;
      },
    );
  }, [wanted, kept]);
  return wanted ? kept.value : null;
}
