/** Which numbers stand on the schematic, where they are joined to it, and how they keep clear of each other. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Stage } from "../../sim/parameters/request.ts";
import type { Spot } from "../drawing/curve-drawing.ts";

export interface Plate {
  readonly name: string;
  /** word key is `further.place.<word>`; the name when left out */
  readonly word?: string;
  /** key of the circulation's pressures */
  readonly pressure: keyof Circulation["pressures"];
  /** the spot that it speaks of, on the plane */
  readonly at: Spot;
  readonly side: "left" | "right";
  /** an organ that feels the pressure step: shown as a level when two states stand side by side */
  readonly organ?: true;
  /** kept even where there is room for few */
  readonly first?: true;
}

const COMMON: readonly Plate[] = [
  { name: "svc", pressure: "svc", at: [468, 214], side: "left", first: true },
  {
    name: "pulmonaryArtery",
    word: "rightPulmonaryArtery",
    pressure: "pulmonaryArteryRight",
    at: [384, 275],
    side: "left",
    first: true,
  },
  { name: "liver", pressure: "hepaticVein", at: [300, 580], side: "left", organ: true, first: true },
  { name: "kidneys", pressure: "ivc", at: [356, 712], side: "left", organ: true },
  { name: "ivc", pressure: "ivc", at: [468, 790], side: "left" },
  { name: "aorta", pressure: "aortaMean", at: [560, 222], side: "right", first: true },
  { name: "pulmonaryVein", pressure: "pulmonaryVein", at: [636, 330], side: "right" },
  { name: "atrium", pressure: "atrium", at: [560, 350], side: "right", first: true },
  { name: "gut", pressure: "hepaticVein", at: [676, 865], side: "right", organ: true },
];

/** Where a heart with two ventricles has it. */
const TWO_VENTRICLES: Readonly<Record<string, Partial<Plate>>> = {
  aorta: { at: [560, 206] },
  // Where a right heart catheter reads it; its branches stand lower.
  pulmonaryArtery: { word: "mainPulmonaryArtery", pressure: "pathway", at: [583, 300], side: "right" },
  atrium: { at: [630, 331], word: "leftAtrium" },
  pulmonaryVein: { at: [684, 318] },
};

/** Null: no pathway yet, or none needed. */
const PATHWAY_AT: Readonly<Record<Stage, Spot | null>> = {
  "two-ventricle": null,
  glenn: null,
  atriopulmonary: [452, 372],
  "lateral-tunnel": [464, 400],
  extracardiac: [463, 400],
};

export function platesOf(stage: Stage): readonly Plate[] {
  const at = PATHWAY_AT[stage];
  const own = stage === "two-ventricle" ? TWO_VENTRICLES : {};
  const common = COMMON.map((plate) => ({ ...plate, ...own[plate.name] }));
  const plates = at
    ? [...common, { name: "pathway", pressure: "pathway", at, side: "left" } as const]
    : common;
  return [...plates].sort((a, b) => a.at[1] - b.at[1]);
}
