/** How large the speaker's notes can be so that none has to be scrolled to. */

/** rem */
export const NOTE_SIZES = { min: 0.875, usual: 1.375, max: 3, step: 0.25 } as const;

/** The largest size, from the usual one down, at which what holds the notes does not scroll; else the smallest. It is left set. */
export function sizeThatFits(notes: HTMLElement): number {
  const { min, usual, step } = NOTE_SIZES;
  const around = notes.parentElement;
  let size: number = usual;
  const set = () => {
    notes.style.fontSize = `${size}rem`;
  };
  set();
  while (around && size > min && around.scrollHeight > around.clientHeight) {
    size -= step / 2;
    set();
  }
  return size;
}
