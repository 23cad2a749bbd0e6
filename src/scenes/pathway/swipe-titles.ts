/** What stands on either side of the divider between two pathways: their names, their pressure drops and the difference. */
import type { Pane } from "../../chain/frame.ts";
import { appendChange, digitsOfStep, formatQuantity, LOSS_DIGITS } from "../../i18n/index.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { actsIn, PARAMETERS, settingOf } from "../../sim/parameters/parameters.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import type { Line } from "../drawing/lettering.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";

/** Lines for each of the two. */
export type Titles = readonly (readonly Line[])[];

/** Name and pressure drop of each pathway; the second with what it has more than the first. */
export function titlesOf(panes: readonly Pane[], sizes: Sizes, theme: Theme): Titles {
  const known = panes.map(({ circulation }) => circulation);
  const first = known[0]?.pathway.pressureDrop;
  const apart = differsBy(known);
  return known.flatMap((circulation, i): readonly (readonly Line[])[] => {
    if (!circulation || first === undefined) return [];
    const soft = { size: sizes.axis, colour: theme.colour.inkSoft };
    const bold = { size: sizes.label, colour: theme.colour.ink, bold: true };
    const { pressureDrop } = circulation.pathway;
    const drop = formatQuantity(pressureDrop, "mmHg", LOSS_DIGITS.pressureDrop);
    const lines = [
      { ...bold, words: theme.say(`stage.${circulation.request.stage}`) },
      ...(apart ? [{ ...soft, words: inWords(apart, circulation.request, theme) }] : []),
      { ...soft, words: theme.say("ledger.pressureDrop") },
      {
        ...bold,
        words: i === 0 ? drop : appendChange(drop, first, pressureDrop, LOSS_DIGITS.pressureDrop),
      },
    ];
    return [lines];
  });
}

/** By which setting two of the same name can be told apart. */
function differsBy([one, other]: readonly (Circulation | null)[]) {
  if (!one || !other || one.request.stage !== other.request.stage) return undefined;
  return PARAMETERS.find(
    (each) =>
      actsIn(each, one.request.stage) && settingOf(one.request, each) !== settingOf(other.request, each),
  );
}

function inWords(parameter: (typeof PARAMETERS)[number], request: CirculationRequest, theme: Theme): string {
  const value = settingOf(request, parameter);
  const name = theme.say(`parameter.${parameter.name}`);
  const said =
    parameter.kind === "number"
      ? formatQuantity(Number(value), parameter.unit, digitsOfStep(parameter.step))
      : theme.say(`parameter.${parameter.name}.${value}`);
  return theme.say("sheet.figure", { name, value: said });
}
