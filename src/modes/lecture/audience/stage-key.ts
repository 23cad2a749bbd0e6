/** The room that this window holds at the audience's server: handed over by the server's own page, for this window alone. */
import * as v from "valibot";

const KEPT = "lungward.lecture.audience";
const stageKey = v.object({
  code: v.pipe(v.string(), v.regex(/^\w{7}$/)),
  key: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
});
export type StageKey = v.InferOutput<typeof stageKey>;

/** null where the kit was not opened from such a server. */
export function keptStageKey(): StageKey | null {
  if (!/^https?:$/.test(location.protocol)) return null;
  try {
    const found = v.safeParse(stageKey, JSON.parse(sessionStorage.getItem(KEPT) ?? "null"));
    return found.success ? found.output : null;
  } catch {
    return null;
  }
}

export function forgetStageKey(): void {
  try {
    sessionStorage.removeItem(KEPT);
  } catch {
    // Nothing was kept either.
  }
}
