/** Where two facing streams change sides: there they hit each other, and small causes decide which lung each takes. */

/** Numbers of mean radii (dimensionless). */
export interface Parting {
  /** clearance, from the upper vein's axis, at which each stream goes as much to the left as to the right */
  readonly place: number;
  /** by how much a narrowing's jet (per unit of `jetStrength`) moves that place to the left: it shoots past the stream it would lie beside */
  readonly byJet: number;
  /** clearance from there at which 71 % of the change is made */
  readonly width: number;
}

/** In tubes (3D set): what losses go by; the shares have their own fit, which begins here. */
export const PARTING: Parting = { place: -0.34, byJet: 0.15, width: 0.37 };

/**
 * Clearance from where the streams change sides: number of mean radii (dimensionless).
 * @param clearance number of mean radii, from the upper vein's axis
 * @param jet dimensionless, see `jetStrength`
 */
export const awayFrom = (clearance: number, jet: number, { place, byJet }: Parting): number =>
  clearance - place - byJet * jet;

/** How far the lower stream lies towards the left lung: a fraction, -1 to 1. @param away see {@link awayFrom} */
export const sideAt = (away: number, { width }: Parting): number => away / Math.hypot(away, width);

/**
 * What the lower stream brings beyond what the lung on its side takes: a fraction of the whole flow, -0.5 to 1.
 * @param side see {@link sideAt}
 */
export const excessAt = (
  side: number,
  { lower, left }: { readonly lower: number; readonly left: number },
): number => lower - 0.5 - side * (left - 0.5);

/** Mean radii from the place of parting within which repeats from other starts were run. */
const NEAR = 0.3;

/** How much of the head-on hit is left, 0 to 1, where the flow may settle in more than one way. @param away see {@link awayFrom} */
export const nearness = (away: number): number => Math.exp(-((away / NEAR) ** 2));
