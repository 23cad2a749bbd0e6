/** Where a lesson's id stands on this device beside its own line, and how all of it takes another. */
import { followLesson } from "../../lesson/edit/rename-lesson.ts";
import { isNewerProgress, readProgress, writeProgress } from "../../lesson/progress.ts";
import { namedInProgress, renamedInProgress } from "../../lesson/progress-rename.ts";
import { changeDeviceText, deviceText } from "../../lms/device.ts";
import { organiser, setOrganiser } from "../kiosk/organiser-settings.ts";
import { keepTalk, readKeptTalk } from "../lecture/talk-store.ts";
import type { OwnTexts } from "../shared/own-texts.ts";

export interface RenamePlaces {
  /** stops of the talk kept here */
  readonly stops: number;
  readonly kiosk: boolean;
  readonly record: boolean;
  /** own lessons whose words or settings name it */
  readonly lessons: number;
}

export const isNamed = ({ stops, kiosk, record, lessons }: RenamePlaces): boolean =>
  stops + lessons > 0 || kiosk || record;

export async function placesNaming(texts: OwnTexts, lesson: string): Promise<RenamePlaces> {
  const talk = await readKeptTalk();
  const record = deviceText(() => localStorage);
  return {
    stops: talk?.plan.stops.filter((stop) => stop.kind === "step" && stop.lesson === lesson).length ?? 0,
    kiosk: organiser.peek().lessons.includes(lesson),
    record: !isNewerProgress(record) && namedInProgress(readProgress(record), lesson),
    lessons: texts.list.peek().filter(({ text }) => followLesson(text, lesson, "") !== text).length,
  };
}

/** Rejects where the talk could not be kept. */
export async function renameEverywhere(texts: OwnTexts, old: string, id: string): Promise<void> {
  const places = await placesNaming(texts, old);
  for (const { id: key, text } of texts.list.peek()) {
    const followed = followLesson(text, old, id);
    if (followed !== text) texts.write(key, followed);
  }
  if (places.kiosk)
    setOrganiser({ lessons: organiser.peek().lessons.map((each) => (each === old ? id : each)) });
  if (places.record)
    changeDeviceText(
      () => localStorage,
      (text) => writeProgress(renamedInProgress(readProgress(text), old, id)),
    );
  const talk = places.stops > 0 ? await readKeptTalk() : null;
  if (!talk) return;
  const stops = talk.plan.stops.map((stop) =>
    stop.kind === "step" && stop.lesson === old ? { ...stop, lesson: id } : stop,
  );
  await keepTalk({ ...talk, plan: { ...talk.plan, stops } });
}
