/** The record on this device alone, under one name. A full or denied storage is reported and does no harm. */
import type { RecordAdapter } from "./record-adapter.ts";

const NAME = "lungward.progress";

/** null where nothing is kept, or nothing can be. */
export function deviceText(storage: () => Storage): string | null {
  try {
    return storage().getItem(NAME);
  } catch {
    return null;
  }
}

/** @returns false where storage is denied or full */
function keepDeviceText(storage: () => Storage, text: string): boolean {
  try {
    storage().setItem(NAME, text);
    return true;
  } catch {
    return false;
  }
}

/** What is kept there, changed by a page on which nobody learns. Throws where the change cannot be kept. */
export function changeDeviceText(storage: () => Storage, change: (text: string) => string): void {
  const text = deviceText(storage);
  if (text !== null) storage().setItem(NAME, change(text));
}

export function deviceRecord(storage: () => Storage): RecordAdapter {
  const now = () => deviceText(storage);
  return {
    kind: "device",
    longest: null,
    load: async () => now(),
    records: () => true,
    now,
    report: async ({ text }) => keepDeviceText(storage, text),
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
