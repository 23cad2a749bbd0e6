/** An id that another lesson has: of such a lesson nothing is listed beside the kit's. */
import { DRAFT_FILE } from "../../lesson/check/draft-check.ts";
import type { Library } from "../../lesson/library/library.ts";
import { idAsWritten, lessonIdOf } from "../../lesson/read/lesson-id.ts";
import { newId } from "../../lesson/read/new-id.ts";
import type { Fault } from "../../sim/faults.ts";
import type { OwnText } from "../shared/own/own-texts.ts";

type Listed = Pick<Library, "lessons" | "own">;

export const kitIds = ({ lessons, own }: Listed): readonly string[] =>
  lessons.map(({ id }) => id).filter((id) => !own.has(id));

export function idFaults(
  { id: mine, text }: Pick<OwnText, "id" | "text">,
  texts: readonly OwnText[],
  library: Listed,
): readonly Fault[] {
  const name = lessonIdOf(text);
  const others = texts.filter((each) => each.id !== mine);
  const kit = kitIds(library);
  const twin = others.find((each) => each.listed && lessonIdOf(each.text) === name);
  // With a language it is a translation of the kit's lesson.
  const isKits = kit.includes(name) && !/^language:/m.test(text.split(/\n---\s*\n/, 1)[0] ?? "");
  if (name === "" || !(isKits || twin)) return [];
  const line = text.slice(0, text.search(/^id:/m)).split("\n").length;
  const whose = isKits ? "a lesson of the kit" : `"${twin?.name}" of your lessons`;
  const free = newId(isKits ? `${name}-own` : name, [...kit, ...others.map((each) => lessonIdOf(each.text))]);
  return [
    {
      path: `${DRAFT_FILE}:${line}`,
      found: `id "${name}", which ${whose} has`,
      allowed: "an id of its own",
      fix: [idAsWritten(text), `id: ${free}`],
    },
  ];
}
