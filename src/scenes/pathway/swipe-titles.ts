/** What stands on either side of the divider between two pathways: their names, their pressure drops and the difference. */
import type { Pane } from "../../chain/frame.ts";
import { appendChange, formatQuantity, LOSS_DIGITS } from "../../i18n/index.ts";
import { apartIn } from "../drawing/apart.ts";
import type { Line } from "../drawing/lettering.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";

/** Lines for each of the two. */
export type Titles = readonly (readonly Line[])[];

/** Name and pressure drop of each pathway; the second with what it has more than the first. */
export function titlesOf(panes: readonly Pane[], sizes: Sizes, theme: Theme): Titles {
  const known = panes.map(({ circulation }) => circulation);
  const first = known[0]?.pathway.pressureDrop;
  const apart = apartIn(
    known.map((circulation) => circulation?.request),
    theme.say,
  );
  return known.flatMap((circulation, i): readonly (readonly Line[])[] => {
    if (!circulation || first === undefined) return [];
    const soft = { size: sizes.axis, colour: theme.colour.inkSoft };
    const bold = { size: sizes.label, colour: theme.colour.ink, bold: true };
    const { pressureDrop } = circulation.pathway;
    const drop = formatQuantity(pressureDrop, "mmHg", LOSS_DIGITS.pressureDrop);
    const lines = [
      { ...bold, words: theme.say(`stage.${circulation.request.stage}`) },
      ...(apart[i] ? [{ ...soft, words: apart[i] }] : []),
      { ...soft, words: theme.say("ledger.pressureDrop") },
      {
        ...bold,
        words: i === 0 ? drop : appendChange(drop, first, pressureDrop, LOSS_DIGITS.pressureDrop),
      },
    ];
    return [lines];
  });
}
