/** The model's numbers that a form offers by name: the message `figure.<name>`, where the number is found, and how it is shown. */
import { t } from "../../../i18n/index.ts";

const NUMBERS = [
  ["pressureDrop", "pathway.pressureDrop", "mmHg 2"],
  ["powerLoss", "pathway.powerLoss", "mW 1"],
  ["pathwayPressure", "pressures.pathway", "mmHg 1"],
  ["hepaticVeinPressure", "pressures.hepaticVein", "mmHg 1"],
  ["upperVeinPressure", "pressures.svc", "mmHg 1"],
  ["lowerVeinPressure", "pressures.ivc", "mmHg 1"],
  ["leftPulmonaryArteryPressure", "pressures.pulmonaryArteryLeft", "mmHg 1"],
  ["atriumPressure", "pressures.atrium", "mmHg 1"],
  ["aortaPressure", "pressures.aortaMean", "mmHg 0"],
  ["output", "flows.systemic", "L/min 1"],
  ["lungFlow", "flows.pulmonary", "L/min 1"],
  ["leftLungFlow", "flows.left", "L/min 1"],
  ["fenestrationFlow", "flows.fenestration", "L/min 1"],
  ["arterialSaturation", "saturations.arterial", "% 0"],
  ["filtration", "exchange.filtration", "mL/h 0"],
  ["lymph", "exchange.lymph", "mL/h 0"],
  ["overflow", "exchange.overflow", "mL/h 0"],
] as const;

/** As a live number of the text. */
export const liveNumbers = (): readonly (readonly [string, string])[] =>
  NUMBERS.map(([name, path, unit]) => [`{{ ${path} | ${unit} }}`, t(`figure.${name}`)]);

/** As a name in an expression. */
export const numberNames = (): readonly (readonly [string, string])[] =>
  NUMBERS.map(([name, path]) => [path, t(`figure.${name}`)]);

/** Unit and decimals that a number is usually shown in. */
export const usualUnit = (path: string): string | undefined => NUMBERS.find((each) => each[1] === path)?.[2];
