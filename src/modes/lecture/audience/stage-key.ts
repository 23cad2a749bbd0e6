/** The room that this window holds at the audience's server: handed over by the server's own page, for this window alone. */
import * as v from "valibot";
import { CODE, KEPT_KEY, KEY } from "../../../audience/room-code.ts";
import { windowKept } from "../windows/window-kept.ts";

const stageKey = v.object({
  code: v.pipe(v.string(), v.regex(CODE)),
  key: v.pipe(v.string(), v.regex(KEY)),
});
export type StageKey = v.InferOutput<typeof stageKey>;

const KEPT = windowKept(KEPT_KEY, stageKey);

/** null where the kit was not opened from such a server. */
export const keptStageKey = (): StageKey | null => (/^https?:$/.test(location.protocol) ? KEPT.read() : null);

export const forgetStageKey = (): void => KEPT.write(null);
