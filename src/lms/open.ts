/** The record of this visit: the course system's where the page was launched from one, else this device's. */
import { cmi5Record } from "./cmi5.ts";
import { readLaunch } from "./cmi5-launch.ts";
import { deviceRecord } from "./device.ts";
import type { RecordAdapter } from "./record-adapter.ts";
import { findScormApi, scormRecord } from "./scorm.ts";

export function openRecord(): RecordAdapter {
  const now = () => performance.now() / 1000;
  const launch = readLaunch(location.search);
  if (launch) {
    return cmi5Record(launch, {
      ask: (url, init) => fetch(url, init),
      now,
      stamp: () => new Date().toISOString(),
      id: () => crypto.randomUUID(),
    });
  }
  const api = findScormApi(window as unknown as Parameters<typeof findScormApi>[0]);
  return api ? scormRecord(api, now) : deviceRecord(() => localStorage);
}
