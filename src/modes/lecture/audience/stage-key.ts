/** The room that this window holds at the audience's server: handed over by the server's own page, for this window alone. */
import * as v from "valibot";
import { CODE, KEPT_KEY, KEY } from "../../../audience/room-code.ts";

const stageKey = v.object({
  code: v.pipe(v.string(), v.regex(CODE)),
  key: v.pipe(v.string(), v.regex(KEY)),
});
export type StageKey = v.InferOutput<typeof stageKey>;

/** null where the kit was not opened from such a server. */
export function keptStageKey(): StageKey | null {
  if (!/^https?:$/.test(location.protocol)) return null;
  try {
    const found = v.safeParse(stageKey, JSON.parse(sessionStorage.getItem(KEPT_KEY) ?? "null"));
    return found.success ? found.output : null;
  } catch {
    return null;
  }
}

export function forgetStageKey(): void {
  try {
    sessionStorage.removeItem(KEPT_KEY);
  } catch {
    // Nothing was kept either.
  }
}
