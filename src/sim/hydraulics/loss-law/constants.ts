/** The few dimensionless numbers by which the handbook's pathway was changed to agree with the 3D set; each stands for one thing that blood does. */
export interface LossConstants {
  /** heads of its own that a stream loses on entering the joint */
  readonly jointEntry: number;
  /** how a joint's flare over the arteries' diameter takes from that: by exp(-led x flare / diameter) */
  readonly led: number;
  /** part of a turn's turbulent loss */
  readonly turn: number;
  /** heads lost by streams that meet head-on, over the two that a developed stream carries */
  readonly facing: number;
  /** part of that which each stream loses of its own heads, not of the mean of both */
  readonly ownPart: number;
  /** offset of the head-on place over the upper vein's diameter */
  readonly headOnPlace: number;
  /** clearance in mean radii at which 37 % of the head-on loss is left */
  readonly clearance: number;
  /** diameters over which the jet of a narrowing loses 63 % of what it will lose */
  readonly jetLength: number;
  /** by how much the lower stream is spared, per part of the flow that it brings beyond what the lung beside it takes */
  readonly spared: number;
  /** heads of an even outlet that the lower stream loses, per part of the flow that the lung beside it takes beyond half */
  readonly outlet: number;
  /** heads lost, over the two that a developed stream carries, where the streams change sides and neither has a lung of its own */
  readonly unparted: number;
  /** of the head that a narrowing adds to the lower stream, the part that the upper stream loses against it head-on */
  readonly jetFacing: number;
  /** clearance in mean radii from the place of parting at which 37 % of that is left */
  readonly jetReach: number;
}
