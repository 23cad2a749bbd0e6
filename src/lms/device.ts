/** The record on this device alone, under one name. A full or denied storage is reported and does no harm. */
import type { RecordAdapter } from "./record-adapter.ts";

const NAME = "lungward.progress";

export function deviceRecord(storage: () => Storage): RecordAdapter {
  const now = () => {
    try {
      return storage().getItem(NAME);
    } catch {
      return null;
    }
  };
  return {
    kind: "device",
    longest: null,
    load: async () => now(),
    records: () => true,
    now,
    report: async ({ text }) => {
      try {
        storage().setItem(NAME, text);
        return true;
      } catch {
        return false;
      }
    },
    close: async () => {},
    wayBack: () => null,
    erase: () => {
      try {
        storage().removeItem(NAME);
      } catch {
        // When storage is denied, nothing of ours can be in it.
      }
    },
  };
}

/** Called with what another tab has written, null where it was erased. */
export function onOtherTab(changed: (text: string | null) => void): void {
  addEventListener("storage", ({ key, newValue }) => {
    if (key === NAME || key === null) changed(newValue);
  });
}
