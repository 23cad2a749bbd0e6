/** The record on this device alone, under one name. A full or denied storage is survived and told. */
import type { RecordAdapter } from "./record-adapter.ts";

const NAME = "lungward.progress";

export function deviceRecord(storage: () => Storage): RecordAdapter {
  return {
    kind: "device",
    load: async () => {
      try {
        return storage().getItem(NAME);
      } catch {
        return null;
      }
    },
    report: async ({ text }) => {
      try {
        storage().setItem(NAME, text);
        return true;
      } catch {
        return false;
      }
    },
    close: () => {},
    erase: () => {
      try {
        storage().removeItem(NAME);
      } catch {
        // Storage that is denied holds nothing of ours.
      }
    },
  };
}
