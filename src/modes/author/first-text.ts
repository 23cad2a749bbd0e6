/** Which own text the page opens with: never in place of another. */
import { language, t } from "../../i18n/index.ts";
import { lessonText, newLessonText } from "../../lesson/library/library.ts";
import { lessonIdOf, withFreeId } from "../../lesson/read/lesson-id.ts";
import { MAX_LENGTH, type OwnText, type OwnTexts } from "../shared/own/own-texts.ts";

/** Where earlier versions of the kit kept their one text. */
const EARLIER_DRAFT = "lungward.draft";

export interface FirstText {
  readonly id: string;
  /** characters of a draft that is longer than any text that is opened, and stays where it is */
  readonly tooLong: number | null;
}

/**
 * The kit lesson of the address as a text of one's own, else the latest own text, else a short one to begin with.
 * @param lesson id of a kit lesson, "" = none asked for
 */
export async function firstText(texts: OwnTexts, lesson: string): Promise<FirstText> {
  const tooLong = takeEarlierDraft(texts);
  const asked = lesson ? await copyOfKitLesson(texts, lesson) : null;
  return { id: asked ?? texts.list.value[0]?.id ?? (await newText(texts)), tooLong };
}

/** A text that runs, not shown to learners until its author says so. */
export const newText = async (texts: OwnTexts): Promise<string> =>
  texts.add(t("author.new"), free(texts, await newLessonText(language()), NEW_ID), false);

const NEW_ID = "new-lesson";
const free = (texts: OwnTexts, text: string, id: string): string =>
  withFreeId(
    text,
    id,
    texts.list.peek().map((each) => each.text),
  );

/** A copy is a lesson of its own, not shown to learners until its author says so. @returns its id on the desk */
export const copyOfText = (texts: OwnTexts, { name, text }: OwnText): string =>
  texts.add(t("author.copyOf", { name }), free(texts, text, lessonIdOf(text)), false);

/** A copy with an id of its own; one that is there already, unchanged, is opened again. null: no such lesson */
export async function copyOfKitLesson(texts: OwnTexts, lesson: string): Promise<string | null> {
  const text = await lessonText(lesson);
  if (text === null) return null;
  const id = `${lesson.replace(/^\d+-/, "")}-own`;
  const copy = withFreeId(text, id, []);
  const same = texts.list.value.find((each) => each.text === copy);
  return same?.id ?? texts.add(lesson, free(texts, text, id), false);
}

/** @returns its length when it is too long to be opened */
function takeEarlierDraft(texts: OwnTexts): number | null {
  try {
    const kept = localStorage.getItem(EARLIER_DRAFT);
    if (kept === null) return null;
    if (kept.length > MAX_LENGTH) return kept.length;
    if (!texts.list.value.some(({ text }) => text === kept)) texts.add("draft", kept);
    // Removed only where the text now has a place that lasts.
    if (texts.keeps.value) localStorage.removeItem(EARLIER_DRAFT);
  } catch {
    // Denied: there is no earlier draft to be had.
  }
  return null;
}
