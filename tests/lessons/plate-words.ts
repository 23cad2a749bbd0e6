/** What stands on the plates of a step's picture, and what the step's words say of the same quantities. */
import { formatNumber } from "../../src/i18n/index.ts";
import { parseNumber } from "../../src/i18n/parse-number.ts";
import type { Solve } from "../../src/lesson/check/check-model.ts";
import type { Lesson, Step } from "../../src/lesson/lesson.ts";
import type { Figure } from "../../src/lesson/model/live-figures.ts";
import { stepState } from "../../src/lesson/model/states.ts";
import { type Inline, inlinesOf, type Prose } from "../../src/lesson/prose.ts";
import { wordsIn, wordsOfTask } from "../../src/lesson/read/references.ts";
import { CHEST } from "../../src/scenes/circuit/arrange.ts";
import { platesOf } from "../../src/scenes/circuit/plates.ts";
import { PRESSURE_AT } from "../../src/scenes/layers/spots.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { readOutput } from "../../src/sim/parameters/outputs.ts";
import { hasPlane } from "../../src/sim/parameters/request.ts";
import { paneRequests, type SceneName } from "../../src/state/scene-state.ts";
import { figuresOf } from "../../src/ui/figures.ts";

/** A number as it stands on a plate: the path of its quantity, and the decimals. */
interface Plated {
  readonly path: string;
  readonly digits: number;
}

const mmHg = (key: string, { pressures }: Circulation): Plated => ({
  path: `pressures.${key}`,
  digits: pressures[key as keyof typeof pressures] < 30 ? 1 : 0,
});

const READOUT_PATHS: Readonly<Record<string, string>> = {
  pressureDrop: "pathway.pressureDrop",
  powerLoss: "pathway.powerLoss",
  pathwayPressure: "pressures.pathway",
  hepaticVeinPressure: "pressures.hepaticVein",
  arterialSaturation: "saturations.arterial",
  output: "flows.systemic",
};

/** In the picture of one pane. */
function inPicture(scene: SceneName, circulation: Circulation): readonly Plated[] {
  const { request } = circulation;
  if (scene === "circuit" || (scene === "pathway" && !hasPlane(request.stage)))
    return platesOf(request.stage)
      .filter(({ organ, at }) => scene === "circuit" || (!organ && at[1] < CHEST.bottom))
      .map(({ pressure }) => mmHg(pressure, circulation));
  if (scene !== "pathway") return [];
  return pathwayGeometry(request)!.places.flatMap(({ name }) => {
    const key = PRESSURE_AT[name];
    if (key) return [{ path: `pressures.${key}`, digits: 1 }];
    if (name === "fenestration") return [{ path: "flows.fenestration", digits: 2 }];
    return name === "aorta" ? [{ path: "saturations.arterial", digits: 0 }] : [];
  });
}

/** Beside the picture, of the first pane. */
const beside = (circulation: Circulation): readonly Plated[] =>
  figuresOf(circulation).map(({ name, digits }) => ({ path: READOUT_PATHS[name]!, digits }));

const PULMONARY_ARTERIES = [
  "pressures.pathway",
  "pressures.pulmonaryArteryLeft",
  "pressures.pulmonaryArteryRight",
];
/** Words that say which part of the pulmonary arteries is meant. */
const WHICH = /left|right|both|branch|arteries/i;

interface Said {
  readonly figure: Figure;
  /** words of the sentence before the number */
  readonly words: string;
}

function* saidIn(content: Prose | readonly Inline[]): Generator<Said> {
  let words = "";
  for (const node of inlinesOf(content)) {
    if (node.kind === "text") words = `${words}${node.text}`.replace(/^.*[.!?]\s/s, "");
    if (node.kind === "figure") yield { figure: node.figure, words };
  }
}

const contentsOf = (step: Step): readonly (Prose | readonly Inline[])[] => [
  ...[step.plain, step.technical, step.notes, step.caution].flatMap((part) => (part ? [part.prose] : [])),
  ...(step.question ? wordsIn(step.question) : []),
  ...wordsOfTask(step.task),
];

/** A number as it is read once written with so many decimals. */
const written = (value: number, digits: number): number => parseNumber(formatNumber(value, digits))!;

/** Of one lesson: each number in its words that is not the one on the plate of the same thing in the same pane. */
export function disagreements(
  lesson: Lesson,
  solve: Solve,
): { readonly compared: number; readonly found: readonly string[] } {
  const found: string[] = [];
  let compared = 0;
  for (const [index, step] of lesson.steps.entries()) {
    const state = stepState(lesson, index);
    const requests = paneRequests(state);
    for (const content of contentsOf(step))
      for (const { figure, words } of saidIn(content)) {
        if (figure.of.kind !== "name") continue;
        const [, pane, path] = /^(?:(second|third)\.)?(\w+\.\w+)$/.exec(figure.of.path) ?? [];
        const request = requests[pane === "third" ? 2 : pane === "second" ? 1 : 0];
        if (!path || !request || !/^(pressures|flows|saturations|pathway)\./.test(path)) continue;
        const circulation = solve(request);
        const plates = [...inPicture(state.scene, circulation), ...(pane ? [] : beside(circulation))];
        const isArtery = PULMONARY_ARTERIES.includes(path);
        const own = plates.filter((plate) => plate.path === path);
        const same =
          own.length > 0 || !isArtery || WHICH.test(words)
            ? own
            : plates.filter((plate) => PULMONARY_ARTERIES.includes(plate.path));
        for (const plate of same) {
          compared++;
          const said = written(readOutput(circulation, path)!, figure.format.digits);
          const shown = written(readOutput(circulation, plate.path)!, plate.digits);
          const fine = Math.min(figure.format.digits, plate.digits);
          if (Math.abs(said - shown) > 0.5 * 10 ** -fine + 1e-9 || figure.format.digits < plate.digits)
            found.push(`${step.id}: ${figure.written} is ${said}, on its plate (${plate.path}) ${shown}`);
        }
      }
  }
  return { compared, found };
}
