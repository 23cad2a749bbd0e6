/** The two numbers that a hall or a visitor should see large: those that the step's own words name, else the scene's. */

import { type Band, LOSS_DIGITS } from "../../../i18n/index.ts";
import type { Step } from "../../../lesson/lesson.ts";
import { namesIn } from "../../../lesson/model/expression.ts";
import { inlinesOf } from "../../../lesson/prose.ts";
import { present } from "../../../sim/checked/present.ts";
import type { Circulation } from "../../../sim/circulation/answer/answer.ts";
import { findOutput, readOutput } from "../../../sim/parameters/outputs.ts";
import { hasPathway } from "../../../sim/parameters/request.ts";
import type { SceneName, SceneState } from "../../../state/scene-state.ts";
import { SHORT_OF_OXYGEN, shortOfOxygen } from "../../../ui/figures.ts";

export interface LargeFigure {
  /** Its name in words is the message `figure.<name>`. */
  readonly name: string;
  /** One for each pane in the pictures' order, in `unit`; null while it is not known. */
  readonly values: readonly (number | null)[];
  /** One for each value, in `unit`; undefined where the model leaves no range open. */
  readonly bands: readonly (Band | undefined)[];
  readonly unit: string;
  readonly digits: number;
  /** Message that has to stand beside the numbers, where one of them says what cannot be. */
  readonly note?: string;
}

/** Side by side one number is enough to follow. */
const MAX = { alone: 2, beside: 1 } as const;

/** Outputs that have a name in words, in no order. */
const NAMES: Readonly<Record<string, string>> = {
  "pressures.svc": "upperVeinPressure",
  "pressures.ivc": "lowerVeinPressure",
  "pressures.hepaticVein": "hepaticVeinPressure",
  "pressures.pathway": "pathwayPressure",
  "pressures.pulmonaryArteryLeft": "leftPulmonaryArteryPressure",
  "pressures.atrium": "atriumPressure",
  "pressures.aortaMean": "aortaPressure",
  "saturations.arterial": "arterialSaturation",
  "saturations.svc": "upperVeinSaturation",
  "saturations.pulmonaryVein": "pulmonaryVeinSaturation",
  "flows.systemic": "output",
  "flows.pulmonary": "lungFlow",
  "flows.ivc": "lowerVeinFlow",
  "flows.left": "leftLungFlow",
  "flows.fenestration": "fenestrationFlow",
  "pathway.pressureDrop": "pressureDrop",
  "pathway.powerLoss": "powerLoss",
  "exchange.filtration": "filtration",
  "exchange.lymph": "lymph",
  "exchange.overflow": "overflow",
  "extras.legVeinPressure": "legVeinPressure",
};

const DIGITS: Readonly<Record<string, number>> = { mmHg: 1, "L/min": 1, "%": 0, "mL/h": 0 };

/** What of a path is drop or loss of the pathway. */
const LOSSES: Readonly<Record<string, keyof typeof LOSS_DIGITS>> = {
  "pathway.pressureDrop": "pressureDrop",
  "pathway.powerLoss": "powerLoss",
};

/** What each scene is about. */
const OF_SCENE: Readonly<Record<SceneName, readonly string[]>> = {
  pathway: ["pathway.pressureDrop", "pressures.pathway"],
  circuit: ["saturations.arterial", "pressures.hepaticVein"],
  breathing: ["flows.systemic", "pressures.pathway"],
  calf: ["extras.legVeinPressure", "flows.systemic"],
  // The picture's own figures run with the days: steady ones beside them would contradict it.
  exchange: ["pressures.pathway", "saturations.arterial"],
  growth: ["pathway.pressureDrop", "pathway.powerLoss"],
  exercise: ["flows.systemic", "pressures.pathway"],
};

/** An open fenestration trades one of these for the other. */
const OF_FENESTRATION = ["pressures.pathway", "saturations.arterial"];

/** Outputs that mean something only where veins lead to the lungs through a completed pathway. */
const NEEDS_PATHWAY = /^(pathway\.|pressures\.pathway$|flows\.fenestration$)/;

/** With two ventricles, where the words speak of it, the pulmonary trunk. */
const TRUNK = "pressures.pathway";

/** `second.pressures.svc` -> `pressures.svc`: the number itself, whichever state it is compared in. */
const pathIn = (name: string): string => name.split(".").slice(-2).join(".");

/** Numbers in the plain version, and what a goal asks for, in the order of reading. */
function pathsReported({ plain, question }: Step): readonly string[] {
  const read = [...inlinesOf(plain.prose)].flatMap((node) =>
    node.kind === "figure" ? [...namesIn(node.figure.of)] : [],
  );
  const goal = question?.kind === "goal" ? namesIn(question.until) : [];
  return [...goal, ...read].map(pathIn);
}

/** `step`: null where no lesson is shown. `circulations`: one for each pane, null while it is being solved. */
export function figuresThatMatter(
  step: Step | null,
  { scene, request, beside }: SceneState,
  circulations: readonly (Circulation | null)[],
): readonly LargeFigure[] {
  const stages = [request.stage, ...beside.map((pane) => pane.stage ?? request.stage)];
  const opened = [request.set, ...beside.map(({ set }) => set ?? {})].some(
    (set) => Number(set.fenestrationDiameter ?? 0) > 0,
  );
  const pumped = stages.every((stage) => stage === "two-ventricle");
  const means = (path: string) =>
    Object.hasOwn(NAMES, path) && (!NEEDS_PATHWAY.test(path) || stages.every(hasPathway));
  const wanted = [
    ...(step ? pathsReported(step) : []).filter((path) => means(path) || (pumped && path === TRUNK)),
    ...[...(opened ? OF_FENESTRATION : []), ...OF_SCENE[scene], ...OF_SCENE.circuit].filter(means),
  ];
  return [...new Set(wanted)].slice(0, beside.length > 0 ? MAX.beside : MAX.alone).map((path) => {
    const { unit } = present(findOutput(path));
    // The answer of the step before stands until the new one has come.
    const known = stages.map((stage, pane) => {
      const circulation = circulations[pane];
      return circulation?.request.stage === stage ? circulation : null;
    });
    const loss = LOSSES[path];
    return {
      name: pumped && path === TRUNK ? "mainPulmonaryArteryPressure" : present(NAMES[path]),
      values: known.map((circulation) => (circulation && readOutput(circulation, path)) ?? null),
      bands: known.map((circulation) => (loss && circulation?.pathway.band?.[loss]) || undefined),
      unit,
      digits: loss ? LOSS_DIGITS[loss] : present(DIGITS[unit]),
      ...(path === "saturations.arterial" && circulations.some(shortOfOxygen)
        ? { note: SHORT_OF_OXYGEN }
        : {}),
    };
  });
}
