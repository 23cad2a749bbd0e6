/** What many phones are told alike, as text: written once, not once for each phone. */
import type { AskedQuestion, PhoneQuestion, ToPhone, ToStage } from "./line-messages.ts";
import type { Room } from "./room.ts";

export const askedOf = (room: () => Room) =>
  writtenOnce(
    (language) => Object.hasOwn(room().question?.ask ?? {}, language),
    (language) => {
      const { question, locked, result } = room();
      return { kind: "ask", question: question && sayIn(question, language), locked, result };
    },
  );

export const wordsOf = (room: () => Room) =>
  writtenOnce(
    (language) => [...room().words.values()].some((step) => Object.hasOwn(step, language)),
    (language) => ({
      kind: "words",
      steps: [...room().words.values()].flatMap((step) => inOne(step, language) ?? []),
    }),
  );

/** A message for many phones, written once for each language that it speaks, and once for all others. */
function writtenOnce(speaks: (language: string) => boolean, write: (language: string) => ToPhone) {
  const texts = new Map<string, string>();
  return {
    in(wanted: string): string {
      const language = speaks(wanted) ? wanted : "";
      const text = texts.get(language) ?? toText(write(language));
      texts.set(language, text);
      return text;
    },
    forget: () => texts.clear(),
  };
}

export const toText = (message: ToPhone | ToStage): string => JSON.stringify(message);

const inOne = <T>(words: Readonly<Record<string, T>>, language: string): T | undefined =>
  words[language] ?? words.en ?? Object.values(words)[0];

const sayIn = ({ key, ask, choices, unit }: AskedQuestion, language: string): PhoneQuestion => ({
  key,
  ask: inOne(ask, language) ?? "",
  choices: choices.map(({ id, say }) => ({ id, say: inOne(say, language) ?? "" })),
  unit: (unit && inOne(unit, language)) ?? "",
});
