/** Which settings move which numbers: each by a fifth down and up, a well adult after completion at rest. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { solve } from "../../sim/circulation/solve.ts";
import { readOutput } from "../../sim/parameters/outputs.ts";
import type { NumberParameter } from "../../sim/parameters/parameter.ts";
import { defaultSetting, PARAMETERS } from "../../sim/parameters/parameters.ts";
import { PRESETS } from "../../sim/presets.ts";

export const OUTPUTS = [
  ["index", "extras.cardiacIndex"],
  ["pathway", "pressures.pathway"],
  ["atrium", "pressures.atrium"],
  ["arterial mean", "pressures.aortaMean"],
  ["heart rate", "extras.heartRate"],
  ["ejection fraction", "extras.ejectionFraction"],
  ["arterial saturation", "saturations.arterial"],
  ["mixed venous", "extras.mixedVenousSaturation"],
  ["pathway's drop", "pathway.pressureDrop"],
  ["filtration", "exchange.filtration"],
] as const;

const PART = 0.2;
/** %: what moves nothing by more is left out. */
const MIN = 1;

export interface Swing {
  readonly name: string;
  /** each output a fifth down, as usual, and a fifth up, in its own unit */
  readonly outputs: readonly (readonly [less: number, usual: number, more: number])[];
}

const person = { ...PRESETS["well-adult"], volumeRule: "fixed-volume" } as const;

/** The usual value, where a fifth of it means something and stays within the row's bounds. */
function usual(parameter: NumberParameter): number | undefined {
  const value = defaultSetting(parameter, person.stage, person.body) as number;
  const [low, high] = [value * (1 - PART), value * (1 + PART)];
  const acts = parameter.stages?.includes(person.stage) ?? true;
  return acts && value > 0 && low >= parameter.min && high <= parameter.max ? value : undefined;
}

const outputsOf = (circulation: Circulation): readonly number[] =>
  OUTPUTS.map(([, path]) => readOutput(circulation, path) ?? 0);

function swing(parameter: NumberParameter, value: number, usually: Circulation): Swing {
  const at = (factor: number) =>
    outputsOf(
      solve(
        { ...person, set: { ...person.set, [parameter.name]: factor * value } },
        { start: usually.state },
      ),
    );
  const [less, usual, more] = [at(1 - PART), outputsOf(usually), at(1 + PART)];
  return {
    name: parameter.name,
    outputs: usual.map((each, i) => [less[i] ?? each, each, more[i] ?? each] as const),
  };
}

/** % from a fifth down to a fifth up, by output */
const changes = ({ outputs }: Swing): readonly number[] =>
  outputs.map(([less, , more]) => (less === 0 ? 0 : 100 * (more / less - 1)));

const most = (each: Swing): number => Math.max(...changes(each).map(Math.abs));

/** Every setting that moves something, widest swing first. */
export function swings(): readonly Swing[] {
  const usually = solve(person);
  return PARAMETERS.flatMap((parameter) => {
    const value = parameter.kind === "number" ? usual(parameter) : undefined;
    return value === undefined ? [] : [swing(parameter as NumberParameter, value, usually)];
  })
    .filter((each) => most(each) >= MIN)
    .sort((a, b) => most(b) - most(a));
}

/** Figure and table in the page's language. */
export function sensitivitySection(found: readonly Swing[], figure: string): string {
  const shown = (change: number) =>
    Math.abs(change) < 0.5 ? "" : `${change > 0 ? "+" : ""}${Math.round(change)}`;
  return [
    "## What moves what",
    "",
    `![Ten panels of bars: how far each output moves as one setting after the other goes a fifth down and up](${figure})`,
    "",
    "Each setting a fifth under and over its usual value: a well adult after completion, at rest, blood volume held. The figure gives each number's",
    "six widest, as change in percent of the usual; the table the change in percent from a fifth under to a fifth over. Widest first; what moves",
    `nothing by ${MIN} % is left out, and so are settings that are usually 0.`,
    "",
    `| setting | ${OUTPUTS.map(([name]) => name).join(" | ")} |`,
    `|---|${"---|".repeat(OUTPUTS.length)}`,
    ...found.map((each) => `| ${each.name} | ${changes(each).map(shown).join(" | ")} |`),
    "",
  ].join("\n");
}
