/** The record of this visit: the course system's if the page was launched from one, else this device's. */
import { cmi5Record, readLaunch } from "./cmi5.ts";
import { deviceRecord } from "./device.ts";
import type { RecordAdapter } from "./record-adapter.ts";
import { findScormApi, scormRecord } from "./scorm.ts";

export function openRecord(): RecordAdapter {
  const now = () => performance.now() / 1000;
  const launch = readLaunch(location.search);
  if (launch) {
    return cmi5Record(
      launch,
      (url, init) => fetch(url, init),
      now,
      () => new Date().toISOString(),
      () => crypto.randomUUID(),
    );
  }
  const api = findScormApi(window as unknown as Parameters<typeof findScormApi>[0]);
  return api ? scormRecord(api, now) : deviceRecord(() => localStorage);
}
