/** Runs of vowels; "y" is one of them at a word's end ("rey") or alone ("y"). */
const VOWELS = /(?:[aeiouáéíóúü]|y(?!\p{L}))+/gu;
const STRONG = /[aeoáéóíú]/g;

/**
 * Syllables of a Spanish word by the spelling's rules: each open or stressed vowel has its own, closed ones join their neighbour
 * (Real Academia Española, Ortografía 2010, diphthong and hiatus; docs/constants-from-memory.md). The mute u of que, qui, gue, gui joins as well.
 */
export const spanishSyllables = (word: string): number =>
  (word.toLowerCase().match(VOWELS) ?? []).reduce(
    (sum, run) => sum + Math.max(1, run.match(STRONG)?.length ?? 0),
    0,
  );
