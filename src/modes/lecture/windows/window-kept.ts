/** What a window keeps of a talk for its own reload, and for nothing else. */
import * as v from "valibot";
import { type Kept, keptIn } from "../../../ui/kept-in.ts";

/** @param name of the session's storage */
export const windowKept = <T>(name: string, schema: v.GenericSchema<T>): Kept<T> =>
  keptIn(
    () => sessionStorage,
    name,
    (found) => v.parse(schema, found),
  );
