/** A file let go over a page that has no use for it, on its way to the one that has. */
let held: File | undefined;

export function holdFile(file: File): void {
  held = file;
}

/** Once. */
export function heldFile(): File | undefined {
  const file = held;
  held = undefined;
  return file;
}
