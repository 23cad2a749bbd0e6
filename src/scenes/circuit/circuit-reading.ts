/** The schematic in words, from the same numbers as the picture. */
import type { Frame } from "../../chain/frame.ts";

export interface Reading {
  readonly key: string;
  readonly args: Readonly<Record<string, string | number>>;
}

/** Message key and arguments (mmHg, L/min, percent as numbers); null while nothing is solved. */
export function readCircuit(frame: Frame): Reading | null {
  const [first, second] = frame.panes.map((pane) => pane.circulation);
  if (!first) return null;
  const one = {
    stage: first.request.stage,
    svc: first.pressures.svc,
    liver: first.pressures.hepaticVein,
    pulmonaryArtery: first.pressures.pulmonaryArteryRight,
    atrium: first.pressures.atrium,
    aorta: first.pressures.aortaMean,
    output: first.flows.systemic,
    saturation: first.saturations.arterial,
  };
  if (!second) return { key: "further.reading.circuit", args: one };
  return {
    key: "further.reading.circuitBeside",
    args: {
      ...one,
      otherStage: second.request.stage,
      otherLiver: second.pressures.hepaticVein,
      step: second.pressures.hepaticVein - first.pressures.hepaticVein,
      otherOutput: second.flows.systemic,
      otherSaturation: second.saturations.arterial,
    },
  };
}
