/** Growth told in words: the ends of the first curve. */
import type { Frame } from "../../chain/frame.ts";
import { speakQuantity, writeDrop, writeLoss } from "../../i18n/index.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import type { Reading } from "../circuit/circuit-reading.ts";

/** Message key and arguments (mm, m2; drop and power in words); null until both ends of the curve are answered. */
export function readGrowth({ sweep }: Frame): Reading | null {
  const points = sweep?.over === "bsa" ? (sweep.curves[0]?.points ?? []) : [];
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first?.circulation || !last?.circulation) return null;
  return {
    key: "further.reading.growth",
    args: {
      diameter: pathwaySizes(first.request).trunk,
      from: first.at,
      to: last.at,
      dropFrom: writeDrop(first.circulation.pathway, speakQuantity),
      dropTo: writeDrop(last.circulation.pathway, speakQuantity),
      powerFrom: writeLoss(first.circulation.pathway, speakQuantity),
      powerTo: writeLoss(last.circulation.pathway, speakQuantity),
    },
  };
}
