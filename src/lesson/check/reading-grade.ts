/** How hard a text is to read, by published formulas. Only the checker and tests use it; the page does not carry it. */
import { syllable } from "syllable";
import { spanishSyllables } from "./spanish-syllables.ts";

export interface ReadingGrade {
  readonly sentences: number;
  readonly words: number;
  readonly longestSentence: number;
  readonly wordsPerSentence: number;
  /** US school grade; Kincaid et al. 1975, Navy research report 8-75. NaN without words. */
  readonly fleschKincaid: number;
  /** US school grade; McLaughlin 1969 */
  readonly smog: number;
  /** mean words a sentence + 100 x share of words over six letters; Björnsson 1968 */
  readonly lix: number;
  /** 0 to 100, higher is easier, for Spanish: Szigriszt-Pazos 1993, read on the scale of Barrio-Cantalejo 2008 */
  readonly inflesz: number;
}

const SENTENCE = /[^.!?\n]+[.!?]*/g;
const WORD = /\p{L}[\p{L}'\u2019-]*|\d+(?:[.,]\d+)*/gu;

/** Numbers count as a word of one syllable: they are read at sight. */
export function readingGrade(text: string): ReadingGrade {
  // A point between digits ends no sentence.
  const sentences = (text.replace(/(\d)[.,](\d)/g, "$1$2").match(SENTENCE) ?? [])
    .map((sentence) => sentence.match(WORD) ?? [])
    .filter((words) => words.length > 0);
  const words = sentences.flat();
  const counted = (count: (word: string) => number) =>
    words.map((word) => (/^\d/.test(word) ? 1 : Math.max(1, count(word))));
  const total = (counts: readonly number[]) => counts.reduce((sum, count) => sum + count, 0);
  const syllables = counted(syllable);
  const wordsPerSentence = words.length / Math.max(1, sentences.length);
  return {
    sentences: sentences.length,
    words: words.length,
    wordsPerSentence,
    longestSentence: Math.max(0, ...sentences.map(({ length }) => length)),
    fleschKincaid: 0.39 * wordsPerSentence + (11.8 * total(syllables)) / words.length - 15.59,
    smog:
      1.043 * Math.sqrt((30 * syllables.filter((count) => count >= 3).length) / sentences.length) + 3.1291,
    lix:
      wordsPerSentence + (100 * words.filter(({ length }) => length > 6).length) / Math.max(1, words.length),
    inflesz:
      206.835 - (62.3 * total(counted(spanishSyllables))) / Math.max(1, words.length) - wordsPerSentence,
  };
}
