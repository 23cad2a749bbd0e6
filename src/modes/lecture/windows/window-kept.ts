/** What a window keeps of a talk for its own reload, and for nothing else; read by a schema, since others write there too. */
import * as v from "valibot";

export interface WindowKept<T> {
  /** null where nothing that fits is kept. */
  read(): T | null;
  /** Without storage nothing is kept, and a reload begins afresh. */
  write(value: T | null): void;
}

/** @param name of the session's storage */
export const windowKept = <T>(name: string, schema: v.GenericSchema<T>): WindowKept<T> => ({
  read() {
    try {
      const found = v.safeParse(schema, JSON.parse(sessionStorage.getItem(name) ?? "null"));
      return found.success ? found.output : null;
    } catch {
      return null;
    }
  },
  write(value) {
    try {
      if (value === null) sessionStorage.removeItem(name);
      else sessionStorage.setItem(name, JSON.stringify(value));
    } catch {
      // Storage is denied or full.
    }
  },
});
