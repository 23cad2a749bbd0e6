/** How fast the network's fastest pair of neighbours can answer each other: what bounds an explicit step. */

import type { Network, Path } from "./circuit-network.ts";
import { AORTA, type Compartment, JUNCTION, PULMONARY_VEINS } from "./compartments.ts";

/** 1/s: both neighbours' elastance over the linear resistance between them, greatest over the valves, the hole and the pulmonary veins. */
export function fastestRate(network: Network): number {
  const { compliance, ventricle, rightVentricle, connections } = network;
  const atrium = network.atriumRelaxed + network.atriumContracted;
  const elastance = (index: Compartment) => 1 / compliance[index];
  const junction = elastance(JUNCTION) + network.junctionContracted;
  const rate = (path: Path, first: number, second: number) => (first + second) / path.a;
  const rates = [
    rate(network.semilunarValve, ventricle.elastance, elastance(AORTA)),
    rate(network.atrioventricularValve, ventricle.elastance, atrium),
    (elastance(PULMONARY_VEINS) + atrium) * network.pulmonaryVeins,
  ];
  if (network.fenestration) rates.push(rate(network.fenestration, junction, atrium));
  if (connections.rightHeart)
    rates.push(
      rate(network.semilunarValve, rightVentricle.elastance, junction),
      rate(network.atrioventricularValve, rightVentricle.elastance, atrium),
    );
  return Math.max(...rates);
}
