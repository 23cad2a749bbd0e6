/** The record of this visit: the course system's where the page was launched from one, else this device's. */
import { cmi5Record } from "./cmi5.ts";
import { launched, visitKeeper } from "./cmi5-kept.ts";
import { deviceRecord } from "./device.ts";
import { overRecord } from "./over-record.ts";
import type { RecordAdapter } from "./record-adapter.ts";
import { type ScormApi, scormRecord } from "./scorm.ts";
import { findApi, type Windowed } from "./scorm-window.ts";
import { type Scorm2004Api, scorm2004Record } from "./scorm2004.ts";

export function openRecord(): RecordAdapter {
  const clock = { now: () => performance.now() / 1000, stamp: () => new Date().toISOString() };
  const found = launched(location.search, () => sessionStorage);
  if (found?.kind === "over") return overRecord(found.wayBack);
  if (found)
    return cmi5Record(
      found.launch,
      {
        ...clock,
        ask: (url, init) => fetch(url, init),
        id: () => crypto.randomUUID(),
        keeper: visitKeeper(found.launch, () => sessionStorage),
      },
      found.goesOn,
    );
  const windows = window as unknown as Windowed;
  const later = findApi(windows, "API_1484_11") as Scorm2004Api | null;
  if (later) return scorm2004Record(later, clock);
  const earlier = findApi(windows, "API") as ScormApi | null;
  return earlier ? scormRecord(earlier, clock) : deviceRecord(() => localStorage);
}
