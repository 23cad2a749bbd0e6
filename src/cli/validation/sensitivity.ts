/** Which settings move which numbers: each by a fifth down and up, a well adult after completion at rest. */
import { solve } from "../../sim/circulation/solve.ts";
import { readOutput } from "../../sim/parameters/outputs.ts";
import type { NumberParameter } from "../../sim/parameters/parameter.ts";
import { defaultSetting, PARAMETERS } from "../../sim/parameters/parameters.ts";
import { PRESETS } from "../../sim/presets.ts";

const OUTPUTS = [
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

interface Swing {
  readonly name: string;
  /** % from a fifth down to a fifth up, by output */
  readonly changes: readonly number[];
}

const person = { ...PRESETS["well-adult"], volumeRule: "fixed-volume" } as const;

/** The usual value, where a fifth of it means something and stays within the row's bounds. */
function usual(parameter: NumberParameter): number | undefined {
  const value = defaultSetting(parameter, person.stage, person.body) as number;
  const [low, high] = [value * (1 - PART), value * (1 + PART)];
  const acts = parameter.stages?.includes(person.stage) ?? true;
  return acts && value > 0 && low >= parameter.min && high <= parameter.max ? value : undefined;
}

function swing(parameter: NumberParameter, value: number, start: readonly number[]): Swing {
  const at = (factor: number) =>
    solve({ ...person, set: { ...person.set, [parameter.name]: factor * value } }, { start });
  const [down, up] = [at(1 - PART), at(1 + PART)];
  const changes = OUTPUTS.map(([, path]) => {
    const [less, more] = [readOutput(down, path) ?? 0, readOutput(up, path) ?? 0];
    return less === 0 ? 0 : 100 * (more / less - 1);
  });
  return { name: parameter.name, changes };
}

const most = ({ changes }: Swing): number => Math.max(...changes.map(Math.abs));

/** A table in the page's language, widest swing first. */
export function sensitivityTable(): string {
  const start = solve(person).state;
  const swings = PARAMETERS.flatMap((parameter) => {
    const value = parameter.kind === "number" ? usual(parameter) : undefined;
    return value === undefined ? [] : [swing(parameter as NumberParameter, value, start)];
  });
  const shown = (change: number) =>
    Math.abs(change) < 0.5 ? "" : `${change > 0 ? "+" : ""}${Math.round(change)}`;
  return [
    "## What moves what",
    "",
    "Change in percent as a setting goes from a fifth under to a fifth over its usual value: a well adult after completion, at rest, blood volume",
    `held. Widest first; what moves nothing by ${MIN} % is left out, and so are settings that are usually 0.`,
    "",
    `| setting | ${OUTPUTS.map(([name]) => name).join(" | ")} |`,
    `|---|${"---|".repeat(OUTPUTS.length)}`,
    ...swings
      .filter((each) => most(each) >= MIN)
      .sort((a, b) => most(b) - most(a))
      .map(({ name, changes }) => `| ${name} | ${changes.map(shown).join(" | ")} |`),
    "",
  ].join("\n");
}
