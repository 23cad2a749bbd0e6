/** The local team's own text on pages for families, one for each language: kept on this device alone; a device that keeps nothing is survived. */
import { signal } from "@preact/signals";

const KEY = "lungward.teamText";
/** characters: more would push the cautions off the page */
export const MAX_TEAM_TEXT = 500;

type Texts = Readonly<Record<string, string>>;

interface TeamText {
  /** Empty where there is none in this language. */
  of(language: string): string;
  write(language: string, text: string): void;
}

export function openTeamText(storage: () => Storage): TeamText {
  const texts = signal<Texts>(read(storage) ?? {});
  return {
    of: (language) => texts.value[language] ?? "",
    write(language, text) {
      // Over what stands there now: another tab may have written in another language.
      const all = { ...(read(storage) ?? texts.peek()), [language]: text.slice(0, MAX_TEAM_TEXT) };
      texts.value = Object.fromEntries(Object.entries(all).filter(([, each]) => each !== ""));
      keep(storage, texts.value);
    },
  };
}

export const teamText = openTeamText(() => localStorage);

/** null where nothing can be read */
function read(storage: () => Storage): Texts | null {
  try {
    const found: unknown = JSON.parse(storage().getItem(KEY) ?? "{}");
    if (typeof found !== "object" || found === null) return {};
    return Object.fromEntries(
      Object.entries(found).flatMap(([language, text]) =>
        typeof text === "string" ? [[language, text.slice(0, MAX_TEAM_TEXT)] as const] : [],
      ),
    );
  } catch {
    return null;
  }
}

function keep(storage: () => Storage, texts: Texts): void {
  try {
    if (Object.keys(texts).length === 0) storage().removeItem(KEY);
    else storage().setItem(KEY, JSON.stringify(texts));
  } catch {
    // Full or denied: the text lasts until the page closes.
  }
}
