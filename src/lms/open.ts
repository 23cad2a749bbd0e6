/** The record of this visit: the course system's where the page was launched from one, else this device's. */
import { cmi5Record } from "./cmi5.ts";
import { readLaunch } from "./cmi5-launch.ts";
import { deviceRecord } from "./device.ts";
import type { RecordAdapter } from "./record-adapter.ts";
import { type ScormApi, scormRecord } from "./scorm.ts";
import { findApi, type Windowed } from "./scorm-window.ts";
import { type Scorm2004Api, scorm2004Record } from "./scorm2004.ts";

export function openRecord(): RecordAdapter {
  const clock = { now: () => performance.now() / 1000, stamp: () => new Date().toISOString() };
  const launch = readLaunch(location.search);
  if (launch)
    return cmi5Record(launch, {
      ...clock,
      ask: (url, init) => fetch(url, init),
      id: () => crypto.randomUUID(),
    });
  const windows = window as unknown as Windowed;
  const later = findApi(windows, "API_1484_11") as Scorm2004Api | null;
  if (later) return scorm2004Record(later, clock);
  const earlier = findApi(windows, "API") as ScormApi | null;
  return earlier ? scormRecord(earlier, clock) : deviceRecord(() => localStorage);
}
