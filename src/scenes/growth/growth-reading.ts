/** Growth in words: the ends of the first curve. */
import type { Frame } from "../../chain/frame.ts";
import { speakQuantity, writeDrop, writeLoss } from "../../i18n/index.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import type { Reading } from "../circuit/circuit-reading.ts";
import { sweepEnds } from "../drawing/sweep-ends.ts";

/** Message key and arguments (mm, m2, mmHg, L/min; drop and power in words); null until both ends of the curve are answered. */
export function readGrowth({ sweep }: Frame): Reading | null {
  const ends = sweep?.over === "bsa" ? sweepEnds(sweep) : null;
  if (!ends) return null;
  const { first, last } = ends;
  const body = { from: first.at, to: last.at };
  if (!hasPathway(first.request.stage))
    return {
      key: "further.reading.growthWithoutPathway",
      args: {
        ...body,
        outputFrom: first.circulation.flows.systemic,
        outputTo: last.circulation.flows.systemic,
        pressureFrom: first.circulation.pressures.ivc,
        pressureTo: last.circulation.pressures.ivc,
      },
    };
  const [width, widthTo] = [pathwaySizes(first.request).trunk, pathwaySizes(last.request).trunk];
  return {
    key: "further.reading.growth",
    args: {
      ...body,
      width,
      widthTo,
      grows: widthTo > width ? "yes" : "no",
      dropFrom: writeDrop(first.circulation.pathway, speakQuantity),
      dropTo: writeDrop(last.circulation.pathway, speakQuantity),
      powerFrom: writeLoss(first.circulation.pathway, speakQuantity),
      powerTo: writeLoss(last.circulation.pathway, speakQuantity),
    },
  };
}
