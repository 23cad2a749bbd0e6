/** Where a lesson's id stands on this device beside its own line, and how all of it takes another. */
import { followLesson } from "../../lesson/edit/rename-lesson.ts";
import type { Library } from "../../lesson/library/library.ts";
import { isNewerProgress, readProgress, writeProgress } from "../../lesson/progress/progress.ts";
import { namedInProgress, renamedInProgress } from "../../lesson/progress/progress-rename.ts";
import { lessonIdOf } from "../../lesson/read/lesson-id.ts";
import { changeDeviceText, deviceText } from "../../lms/device.ts";
import { organiser, setOrganiser } from "../kiosk/organiser-settings.ts";
import { keepTalk, readKeptTalk } from "../lecture/files/talk-store.ts";
import { fitsAsText, type OwnTexts } from "../shared/own/own-texts.ts";
import { kitIds } from "./id-faults.ts";

/** All that an id may belong to. */
interface Lessons {
  readonly texts: OwnTexts;
  readonly library: Pick<Library, "lessons" | "own">;
}

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

const NOWHERE: RenamePlaces = { stops: 0, kiosk: false, record: false, lessons: 0 };

/** Nowhere where a lesson still has that id, one of the kit or an own one: what names it means that lesson. */
export async function placesNaming({ texts, library }: Lessons, lesson: string): Promise<RenamePlaces> {
  const own = texts.list.peek();
  if (kitIds(library).includes(lesson) || own.some(({ text }) => lessonIdOf(text) === lesson)) return NOWHERE;
  const talk = await readKeptTalk();
  const record = deviceText(() => localStorage);
  return {
    stops: talk?.plan.stops.filter((stop) => stop.kind === "step" && stop.lesson === lesson).length ?? 0,
    kiosk: organiser.peek().lessons.includes(lesson),
    record: !isNewerProgress(record) && namedInProgress(readProgress(record), lesson),
    lessons: own.filter(({ text }) => followLesson(text, lesson, "") !== text).length,
  };
}

/** Answers the names of the texts that would grow past what is read again and were left as they are. Rejects where the talk or the record could not be kept, with nothing after it changed. */
export async function renameEverywhere(
  lessons: Lessons,
  old: string,
  id: string,
): Promise<readonly string[]> {
  const places = await placesNaming(lessons, old);
  if (places.stops > 0) await renameInTalk(old, id);
  if (places.record)
    changeDeviceText(
      () => localStorage,
      (text) => writeProgress(renamedInProgress(readProgress(text), old, id)),
    );
  if (places.kiosk)
    setOrganiser({
      lessons: [...new Set(organiser.peek().lessons.map((each) => (each === old ? id : each)))],
    });
  return places.lessons > 0 ? renameInTexts(lessons.texts, old, id) : [];
}

async function renameInTalk(old: string, id: string): Promise<void> {
  const talk = await readKeptTalk();
  if (!talk) return;
  const stops = talk.plan.stops.map((stop) =>
    stop.kind === "step" && stop.lesson === old ? { ...stop, lesson: id } : stop,
  );
  await keepTalk({ ...talk, plan: { ...talk.plan, stops } });
}

function renameInTexts(texts: OwnTexts, old: string, id: string): readonly string[] {
  const left: string[] = [];
  for (const { id: key, name, text } of texts.list.peek()) {
    const followed = followLesson(text, old, id);
    if (followed === text) continue;
    if (fitsAsText(followed)) texts.write(key, followed);
    else left.push(name);
  }
  return left;
}
