/** How hard a text is to read, by published formulas. Only the checker and tests use it; the page does not carry it. */
import { fleschKincaid } from "flesch-kincaid";
import { smogFormula } from "smog-formula";
import { syllable } from "syllable";

export interface ReadingGrade {
  readonly sentences: number;
  readonly words: number;
  readonly longestSentence: number;
  /** US school grade; Kincaid et al. 1975, Navy research report 8-75 (constants as in the package, from memory). NaN without words. */
  readonly fleschKincaid: number;
  /** US school grade; McLaughlin 1969 */
  readonly smog: number;
  /** mean words a sentence + 100 x share of words over six letters; Bjoernsson 1968 (from memory) */
  readonly lix: number;
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
  const syllables = words.map((word) => (/^\d/.test(word) ? 1 : Math.max(1, syllable(word))));
  const counts = {
    sentence: sentences.length,
    word: words.length,
    syllable: syllables.reduce((sum, count) => sum + count, 0),
  };
  return {
    sentences: sentences.length,
    words: words.length,
    longestSentence: Math.max(0, ...sentences.map(({ length }) => length)),
    fleschKincaid: fleschKincaid(counts),
    smog: smogFormula({ ...counts, polysillabicWord: syllables.filter((count) => count >= 3).length }),
    lix:
      words.length / Math.max(1, sentences.length) +
      (100 * words.filter(({ length }) => length > 6).length) / Math.max(1, words.length),
  };
}
