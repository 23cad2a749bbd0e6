/** How another pane differs from the first, in words. */

import { formatQuantity, t } from "../i18n/index.ts";
import type { Circulation } from "../sim/circulation/answer.ts";

/** One sentence a pane; panes that have no answer yet are left out. `names`: what each pane is called. */
export function differences(
  circulations: readonly (Circulation | null)[],
  names: readonly string[],
): readonly string[] {
  const [first, ...others] = circulations;
  if (!first) return [];
  return others.flatMap((other, index) => {
    if (!other) return [];
    const by = Number((other.pathway.pressureDrop - first.pathway.pressureDrop).toFixed(1));
    return t("difference.drop", {
      other: names[index + 1]!,
      first: names[0]!,
      drop: formatQuantity(other.pathway.pressureDrop, "mmHg", 1),
      by: formatQuantity(Math.abs(by), "mmHg", 1),
      change: by > 0 ? "more" : by < 0 ? "less" : "same",
    });
  });
}
