/** Filtration from capillaries, after Starling and Landis. Pressures mmHg, flows mL/h. */
import { liverFiltration, liverLymph, weeping } from "./liver.ts";
import { againstOutflow, lymphRatio } from "./lymph.ts";
import { albuminOf } from "./protein.ts";
import { TISSUE_PRESSURE_USUAL } from "./tissue.ts";

/** mL/min/mmHg/kg, whole body (Guyton: 6.67 in 70 kg). */
export const FILTRATION_COEFFICIENT = 6.67 / 70;
/** mmHg, Guyton: mean capillary pressure, and the venous pressure that goes with it in a healthy person. */
const CAPILLARY_USUAL = 17.3;
export const VENOUS_USUAL = 4;
/** Share of a venous rise that reaches the capillary (Pappenheimer & Soto-Rivera 1948). */
const TRANSMISSION = 0.8;
/** Guyton: protein pull in the tissue at rest. */
const TISSUE_ONCOTIC = 8;
/** mmHg of tissue pressure from which fluid breaks through into chest and abdomen, and how readily (rest lymph flows each mmHg): teaching values. */
const OVERFLOW_PRESSURE = 1.5;
const OVERFLOW_CONDUCTANCE = 1;

/** A part of the body whose tissue is one compartment; fractions 0 to 1. */
export interface Region {
  readonly name: "limbs" | "gut" | "liver";
  /** fraction of the whole filtration coefficient */
  readonly share: number;
  /** how far the tissue's protein is washed out by faster filtration: 1 fully, 0 not at all */
  readonly washOut: number;
}

/** Teaching split: liver and gut filter two fifths, half of it each, and lose little of their protein pull. */
export const REGIONS: readonly Region[] = [
  { name: "limbs", share: 0.6, washOut: 1 },
  { name: "gut", share: 0.2, washOut: 0.3 },
  { name: "liver", share: 0.2, washOut: 0 },
];

/** What stands on both sides of a region's capillary walls. */
export interface Tissue {
  /** mmHg at the capillaries' venous end */
  readonly venousPressure: number;
  readonly plasmaOncoticPressure: number;
  /** reflection coefficient of the capillary wall for protein, 0 to 1 */
  readonly reflection: number;
  /** ratio of the filtration coefficient to a healthy one, above 0 */
  readonly leakage: number;
  /** ratio to lymph flow at rest that tissue alone would drive the vessels to, above 0: their strength */
  readonly lymphMaximum: number;
  /** mmHg where the thoracic duct empties; when left out nothing holds lymph up */
  readonly lymphOutflow?: number;
  /** ratio of what lymph vessels have grown to carry at most to what they first did; 1 when left out */
  readonly lymphGrown?: number;
  /** kg */
  readonly weight: number;
}

/** mmHg in the capillaries at a venous pressure (mmHg): four fifths of a venous rise reach them. */
export const capillaryPressure = (venousPressure: number): number =>
  CAPILLARY_USUAL + TRANSMISSION * (venousPressure - VENOUS_USUAL);

/** mmHg in the vein that usually goes with a pressure in the capillaries (mmHg) */
export const venousFor = (capillary: number): number =>
  VENOUS_USUAL + (capillary - CAPILLARY_USUAL) / TRANSMISSION;

/** mL/h of the region's lymph at rest: what Guyton's 0.3 mmHg net filters in a body of this weight (kg). */
export const lymphAtRest = (region: Region, weight: number): number =>
  FILTRATION_COEFFICIENT * weight * region.share * 0.3 * 60;

/** mmHg: falls as the square root of lymph flow (steady protein leak carried off by more water). */
const tissueOncotic = (region: Region, ratio: number): number =>
  TISSUE_ONCOTIC * Math.max(1, ratio) ** (-0.5 * region.washOut);

/**
 * g/h of albumin that a region's lymph carries back, at its flow over that at rest, in a body of this weight (kg): the lymph has the strength of
 * the tissue's fluid, which its protein's pull says. Where that has settled it is what leaks through the capillaries' walls.
 */
export const albuminCarried = (region: Region, ratio: number, weight: number): number =>
  (ratio * lymphAtRest(region, weight) * albuminOf(tissueOncotic(region, ratio))) / MILLILITRES;
/** in a decilitre */
const MILLILITRES = 100;

/** mL/h, at a tissue pressure (mmHg) and a lymph flow over that at rest */
export function filtration(region: Region, tissue: Tissue, tissuePressure: number, ratio: number): number {
  if (region.name === "liver")
    return (
      tissue.leakage *
      lymphAtRest(region, tissue.weight) *
      liverFiltration(tissue.venousPressure - VENOUS_USUAL, rise(tissuePressure))
    );
  const pull = tissue.reflection * (tissue.plasmaOncoticPressure - tissueOncotic(region, ratio));
  const net = capillaryPressure(tissue.venousPressure) - tissuePressure - pull;
  return FILTRATION_COEFFICIENT * tissue.weight * region.share * tissue.leakage * net * 60;
}

/** mL/h that breaks through into chest and abdomen */
export const overflow = (region: Region, tissue: Tissue, tissuePressure: number): number =>
  OVERFLOW_CONDUCTANCE *
  lymphAtRest(region, tissue.weight) *
  (region.name === "liver" ? weeping(rise(tissuePressure)) : Math.max(0, tissuePressure - OVERFLOW_PRESSURE));

/** mmHg above the tissue's usual pressure */
const rise = (tissuePressure: number): number => tissuePressure - TISSUE_PRESSURE_USUAL;

/** What lymph vessels are able to: as in {@link Tissue}. */
type LymphVessels = Pick<Tissue, "lymphMaximum" | "lymphOutflow" | "lymphGrown">;

/** Ratio to lymph flow at rest that they carry at most. */
export const lymphCarried = ({ lymphMaximum, lymphOutflow, lymphGrown = 1 }: LymphVessels): number =>
  lymphGrown * (lymphOutflow === undefined ? lymphMaximum : againstOutflow(lymphOutflow, lymphMaximum));

/** Ratio of a region's lymph to that at rest, at its tissue's pressure (mmHg): what the tissue gives, at most what its vessels carry. */
export function regionLymph({ name }: Region, tissuePressure: number, vessels: LymphVessels): number {
  const carried = lymphCarried(vessels);
  if (name === "liver") return liverLymph(rise(tissuePressure), carried);
  return Math.min(carried, lymphRatio(tissuePressure, vessels.lymphMaximum));
}

/** Flows in mL/h. */
export interface Exchange {
  readonly filtration: number;
  readonly lymph: number;
  readonly overflow: number;
  /** mmHg */
  readonly tissuePressure: number;
}

/**
 * Where filtration equals lymph and overflow, by halving from -20 to 40 mmHg: one pressure, since the one falls and the others rise with
 * it.
 */
export function steadyExchange(region: Region, tissue: Tissue): Exchange {
  let low = -20;
  let high = 40;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (balance(region, tissue, middle) > 0) low = middle;
    else high = middle;
  }
  return exchangeAt(region, tissue, (low + high) / 2);
}

function exchangeAt(region: Region, tissue: Tissue, tissuePressure: number): Exchange {
  const ratio = regionLymph(region, tissuePressure, tissue);
  return {
    filtration: filtration(region, tissue, tissuePressure, ratio),
    lymph: ratio * lymphAtRest(region, tissue.weight),
    overflow: overflow(region, tissue, tissuePressure),
    tissuePressure,
  };
}

function balance(region: Region, tissue: Tissue, tissuePressure: number): number {
  const flows = exchangeAt(region, tissue, tissuePressure);
  return flows.filtration - flows.lymph - flows.overflow;
}
