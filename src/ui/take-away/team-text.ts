/** The local team's own text on pages for families, one for each language: kept on this device alone. */
import { signal } from "@preact/signals";
import { keptIn } from "../kept-in.ts";

/** characters: more would push the cautions off the page */
export const MAX_TEAM_TEXT = 500;

type Texts = Readonly<Record<string, string>>;

interface TeamText {
  /** Empty where there is none in this language. */
  of(language: string): string;
  write(language: string, text: string): void;
}

export function openTeamText(storage: () => Storage): TeamText {
  const kept = keptIn(storage, "lungward.teamText", textsIn);
  const texts = signal<Texts>(kept.read() ?? {});
  return {
    of: (language) => texts.value[language] ?? "",
    write(language, text) {
      // Over what stands there now: another tab may have written in another language.
      const all = { ...(kept.read() ?? texts.peek()), [language]: text.slice(0, MAX_TEAM_TEXT) };
      texts.value = Object.fromEntries(Object.entries(all).filter(([, each]) => each !== ""));
      kept.write(Object.keys(texts.value).length === 0 ? null : texts.value);
    },
  };
}

export const teamText = openTeamText(() => localStorage);

/** What of it is text, cut to its length. */
function textsIn(found: unknown): Texts {
  if (typeof found !== "object" || found === null) return {};
  return Object.fromEntries(
    Object.entries(found).flatMap(([language, text]) =>
      typeof text === "string" ? [[language, text.slice(0, MAX_TEAM_TEXT)] as const] : [],
    ),
  );
}
