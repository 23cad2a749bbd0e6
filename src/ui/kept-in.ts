/** A record that the browser keeps under one name; a browser that keeps nothing is survived. */

export interface Kept<T> {
  /** null where nothing that fits is kept. */
  read(): T | null;
  /** null takes away what is kept. Where storage is denied or full, what was written lasts as long as whoever wrote it. */
  write(value: T | null): void;
}

/** @param check whatever stands there -> a record; null or an error where it is none: others write there too */
export const keptIn = <T>(
  storage: () => Storage,
  name: string,
  check: (found: unknown) => T | null,
): Kept<T> => ({
  read() {
    try {
      return check(JSON.parse(storage().getItem(name) ?? "null"));
    } catch {
      return null;
    }
  },
  write(value) {
    try {
      if (value === null) storage().removeItem(name);
      else storage().setItem(name, JSON.stringify(value));
    } catch {
      // Denied or full.
    }
  },
});
