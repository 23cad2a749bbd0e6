/** How large a text may be so that it stays inside its box, from the number of its characters. */

/** em: a wide average of the letters of the languages that we write */
const LETTER = 0.54;
/** em */
const LINE = 1.22;
/** inches of a point */
const POINT = 1 / 72;

/** inches */
interface Room {
  readonly width: number;
  readonly height: number;
}

const lettersAt = (size: number, width: number): number =>
  Math.max(1, Math.floor(width / (size * POINT * LETTER)));

export const linesAt = (text: string, size: number, width: number): number => {
  const letters = lettersAt(size, width);
  return text.split("\n").reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / letters)), 0);
};

const fits = (text: string, size: number, { width, height }: Room): boolean =>
  linesAt(text, size, width) * size * POINT * LINE <= height;

/** The largest size in points that fits; what does not fit at the smallest is cut after a word, and said so by an ellipsis. */
export function fitText(
  text: string,
  room: Room,
  [smallest, largest]: readonly [smallest: number, largest: number],
): { readonly text: string; readonly size: number } {
  for (let size = largest; size >= smallest; size--) if (fits(text, size, room)) return { text, size };
  // No box holds more than this: words need not be taken off one by one from a long text.
  const most = lettersAt(smallest, room.width) * Math.ceil(room.height / (smallest * POINT * LINE));
  let shorter = text.slice(0, most);
  while (shorter && !fits(`${shorter}…`, smallest, room)) shorter = shorter.replace(/\s*\S+\s*$/, "");
  return { text: `${shorter}…`, size: smallest };
}
