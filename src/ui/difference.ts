/** How another pane differs from the first, in words. */

import { formatQuantity, LOSS_DIGITS, t, writeDrop } from "../i18n/index.ts";
import { entryAt } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";

/** One sentence a pane; panes that have no answer yet are left out. `names`: what each pane is called. */
export function differences(
  circulations: readonly (Circulation | null)[],
  names: readonly string[],
): readonly string[] {
  const [first, ...others] = circulations;
  if (!first) return [];
  return others.flatMap((other, index) => {
    if (!other) return [];
    const by = Number(
      (other.pathway.pressureDrop - first.pathway.pressureDrop).toFixed(LOSS_DIGITS.pressureDrop),
    );
    return t("difference.drop", {
      other: entryAt(names, index + 1),
      first: entryAt(names, 0),
      drop: writeDrop(other.pathway),
      by: formatQuantity(Math.abs(by), "mmHg", LOSS_DIGITS.pressureDrop),
      change: by > 0 ? "more" : by < 0 ? "less" : "same",
    });
  });
}
