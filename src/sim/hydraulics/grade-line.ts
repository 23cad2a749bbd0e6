/** Hydraulic and energy grade line from a liver vein to the atrium, in the order of the picture. */
import { pathOrder } from "../geometry/path-order.ts";
import { toMmHg } from "../units.ts";
import { lumenArea } from "./element.ts";
import type { GradePoint, PathwayFlows, PathwayLaw } from "./law.ts";
import { meanDrop } from "./ledger.ts";

/** mmHg, time means. A compartment of the circulation holds total pressure: blood in it counts as come to rest. */
export interface GradePressures {
  readonly hepaticVein: number;
  readonly ivc: number;
  readonly pulmonaryArteryLeft: number;
  readonly pulmonaryArteryRight: number;
  readonly pulmonaryVein: number;
  readonly atrium: number;
}

/**
 * One point where each station begins, and one at the end ("atrium"). Between the given pressures the elements' mean drops
 * stand; with flows given as samples over a repeat they meet the lung artery's pressure, with mean flows nearly.
 */
export function gradeLine(law: PathwayLaw, flows: PathwayFlows, pressures: GradePressures): GradePoint[] {
  const lung = law.gradeLung;
  const lower = law.branches.ivc;
  const beyond = law.branches[lung];
  const stations = pathOrder(lower, beyond);
  const points: GradePoint[] = [];
  const still = (at: string, station: number, pressure: number) =>
    points.push({ at, station, pressure, totalPressure: pressure });

  still("hepaticVein", stations[0]!.from, pressures.hepaticVein);
  let total = pressures.ivc;
  let station = 1;
  for (const branch of ["ivc", lung] as const) {
    const chain = law.branches[branch];
    let area = lumenArea(chain[0]!.diameter);
    for (const element of chain) {
      const velocity = meanOf(flows[branch]) / area;
      const head = toMmHg(0.5 * law.fluid.density * velocity * velocity);
      points.push({
        at: element.element,
        station: stations[station]!.from,
        pressure: total - head,
        totalPressure: total,
      });
      total -= toMmHg(meanDrop(element, flows[branch]));
      area = element.areaAfter;
      station++;
    }
  }
  const artery = lung === "left" ? pressures.pulmonaryArteryLeft : pressures.pulmonaryArteryRight;
  still("lungBed", stations[station]!.from, artery);
  still("pulmonaryVein", stations[station + 1]!.from, pressures.pulmonaryVein);
  still("atrium", 1, pressures.atrium);
  return points;
}

const meanOf = (flow: number | ArrayLike<number>): number => meanDrop({ a: 1, b: 0 }, flow);
