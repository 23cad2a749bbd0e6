/** The schematic in words, from the same numbers as the picture. */
import type { Frame } from "../../chain/frame.ts";
import { present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { platesOf } from "./plates.ts";

export interface Reading {
  readonly key: string;
  readonly args: Readonly<Record<string, string | number>>;
}

/** mmHg on the plate of that name. */
const plated = ({ request, pressures }: Circulation, name: string): number =>
  pressures[present(platesOf(request.stage).find((plate) => plate.name === name)).pressure];

/** Message key and arguments (mmHg, L/min, percent as numbers); null while nothing is solved. */
export function readCircuit(frame: Frame): Reading | null {
  const [first, second] = frame.panes.map((pane) => pane.circulation);
  if (!first) return null;
  const one = {
    stage: first.request.stage,
    heart: first.request.stage === "two-ventricle" ? "two" : "one",
    svc: plated(first, "svc"),
    liver: plated(first, "liver"),
    pulmonaryArtery: plated(first, "pulmonaryArtery"),
    atrium: plated(first, "atrium"),
    aorta: plated(first, "aorta"),
    output: first.flows.systemic,
    saturation: first.saturations.arterial,
  };
  if (!second) return { key: "further.reading.circuit", args: one };
  return {
    key: "further.reading.circuitBeside",
    args: {
      ...one,
      otherStage: second.request.stage,
      otherLiver: plated(second, "liver"),
      step: plated(second, "liver") - plated(first, "liver"),
      otherOutput: second.flows.systemic,
      otherSaturation: second.saturations.arterial,
    },
  };
}
