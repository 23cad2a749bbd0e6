/** Which volume rule holds while nobody has chosen one: the default for what is set. */
import { defaultVolumeRule } from "../sim/circulation/check-request.ts";
import type { Edit } from "./edit.ts";

/**
 * The edit, with the volume rule renewed where it was the default before: a body answers a weaker or stiffer heart by keeping water, so
 * that its veins fill. A rule of someone's own choice stays.
 */
export const followRule =
  (edit: Edit): Edit =>
  (state) => {
    const next = edit(state);
    const { volumeRule, set } = state.request;
    if (volumeRule !== defaultVolumeRule(set) || next.request.volumeRule !== volumeRule) return next;
    return { ...next, request: { ...next.request, volumeRule: defaultVolumeRule(next.request.set) } };
  };
