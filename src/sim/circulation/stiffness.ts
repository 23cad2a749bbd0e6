/** How fast the network's fastest pair of neighbours can answer each other: what bounds an explicit step. */
import { AORTA, JUNCTION, LUNG_VEINS } from "./compartments.ts";
import type { Network, Path } from "./network.ts";

/** 1/s: both neighbours' elastance over the linear resistance between them, greatest over the valves, the hole and the lung veins. */
export function fastestRate(network: Network): number {
  const { compliance, ventricle, rightVentricle, connections } = network;
  const atrium = network.atriumRelaxed + network.atriumContracted;
  const elastance = (index: number) => 1 / compliance[index]!;
  const rate = (path: Path, first: number, second: number) => (first + second) / path.a;
  const rates = [
    rate(network.outletValve, ventricle.elastance, elastance(AORTA)),
    rate(network.inletValve, ventricle.elastance, atrium),
    (elastance(LUNG_VEINS) + atrium) * network.lungVeins,
  ];
  if (network.fenestration) rates.push(rate(network.fenestration, elastance(JUNCTION), atrium));
  if (connections.rightHeart)
    rates.push(
      rate(network.outletValve, rightVentricle.elastance, elastance(JUNCTION)),
      rate(network.inletValve, rightVentricle.elastance, atrium),
    );
  return Math.max(...rates);
}
