/** Hydraulic and energy grade line from a hepatic vein to the atrium, in the order of the picture. */

import { entryAt } from "../checked/present.ts";
import type { Station } from "../geometry/geometry.ts";
import { pathOrder, upperPathOrder } from "../geometry/path-order.ts";
import { toMmHg } from "../units.ts";
import { lumenArea } from "./element.ts";
import type { BranchName, GradePoint, PathwayFlows, PathwayLaw } from "./law.ts";
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
 * stand; with flows given as samples over a cycle they meet the pulmonary artery's pressure, with mean flows nearly.
 */
export function gradeLine(law: PathwayLaw, flows: PathwayFlows, pressures: GradePressures): GradePoint[] {
  const lung = law.gradeLung;
  const stations = pathOrder(law.branches.ivc, law.branches[lung], law.course);
  const { put, along, end } = lineThrough(stations, law, flows);
  put(pressures.hepaticVein);
  const joint = along("ivc", pressures.ivc);
  if (law.course === "parted") return end(pressures.atrium);
  const artery = arteryOf(law, pressures);
  if (law.course === "joined") along(lung, joint);
  else {
    // The right ventricle lifts blood from the atrium to whatever the pulmonary arteries need.
    put(joint);
    along(
      lung,
      artery + law.branches[lung].reduce((sum, each) => sum + toMmHg(meanDrop(each, flows[lung])), 0),
    );
  }
  put(artery);
  put(pressures.pulmonaryVein);
  return end(pressures.atrium);
}

/**
 * The same from the superior vena cava through the lungs to the atrium, where the lower vein's blood does not go to them;
 * empty where it does.
 * @param svc mmHg, time mean in the upper vein
 */
export function upperGradeLine(
  law: PathwayLaw,
  flows: PathwayFlows,
  pressures: GradePressures & { readonly svc: number },
): GradePoint[] {
  if (law.course !== "parted") return [];
  const lung = law.gradeLung;
  const stations = upperPathOrder(law.branches.svc, law.branches[lung]);
  const { put, along, end } = lineThrough(stations, law, flows);
  along(lung, along("svc", pressures.svc));
  put(arteryOf(law, pressures));
  put(pressures.pulmonaryVein);
  return end(pressures.atrium);
}

const arteryOf = ({ gradeLung }: PathwayLaw, pressures: GradePressures): number =>
  gradeLung === "left" ? pressures.pulmonaryArteryLeft : pressures.pulmonaryArteryRight;

/** Both, mmHg. */
export const gradeLines = (...asked: Parameters<typeof upperGradeLine>) => ({
  gradeLine: gradeLine(...asked),
  upperGradeLine: upperGradeLine(...asked),
});

/** Points put one after another where the stations begin. */
function lineThrough(stations: readonly Station[], law: PathwayLaw, flows: PathwayFlows) {
  const points: GradePoint[] = [];
  const put = (pressure: number, totalPressure = pressure) => {
    const { element, from } = entryAt(stations, points.length);
    points.push({ at: element, station: from, pressure, totalPressure });
  };
  return {
    put,
    /** Points along a branch, down from a total pressure; answers what is left at its end. */
    along(branch: BranchName, begin: number): number {
      let total = begin;
      let area = lumenArea(entryAt(law.branches[branch], 0).diameter);
      for (const element of law.branches[branch]) {
        const velocity = meanOf(flows[branch]) / area;
        put(total - toMmHg(0.5 * law.fluid.density * velocity * velocity), total);
        total -= toMmHg(meanDrop(element, flows[branch]));
        area = element.areaAfter;
      }
      return total;
    },
    end(pressure: number): GradePoint[] {
      points.push({ at: "atrium", station: 1, pressure, totalPressure: pressure });
      return points;
    },
  };
}

const meanOf = (flow: number | ArrayLike<number>): number => meanDrop({ a: 1, b: 0 }, flow);
