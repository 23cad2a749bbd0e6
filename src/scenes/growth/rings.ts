/** What the drawn tubes or chambers are, in words. */
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import type { PathwayStage } from "../../sim/parameters/request.ts";
import type { Say } from "../theme/theme.ts";
import { pathwayStage } from "./pathway-walls.ts";

const KINDS: Readonly<Record<PathwayStage, string>> = {
  extracardiac: "tube",
  "lateral-tunnel": "tunnel",
  atriopulmonary: "chamber",
};
const kindOf = (request: SweepPoint["request"]): string => KINDS[pathwayStage(request)];

/** What the chests, the sections and the dashed ring are, with the width of the tube or chamber at both ends of the row. */
export function ringWords(points: readonly SweepPoint[], say: Say): string {
  const { request } = entryAt(points, 0);
  const [low, high] = [request, lastOf(points).request].map((each) =>
    formatQuantity(pathwaySizes(each).trunk, "mm"),
  );
  return say("further.growth.rings", {
    kind: kindOf(request),
    width: low === high ? present(low) : say("figure.band", { low: present(low), high: present(high) }),
  });
}

/** The widths in one section: tube or chamber, the body's own lower vein, and by how much they differ. */
export function widthWords(
  { request }: SweepPoint,
  say: Say,
): readonly [tube: string, vein: string, gap: string] {
  const { trunk, ivc } = pathwaySizes(request);
  const tenths = Math.round(10 * (trunk - ivc)) / 10;
  return [
    say("further.growth.tube", { kind: kindOf(request), width: formatQuantity(trunk, "mm", 1) }),
    say("further.growth.vein", { width: formatQuantity(ivc, "mm", 1) }),
    say("further.growth.gap", {
      wider: tenths < 0 ? "no" : "yes",
      width: formatQuantity(Math.abs(tenths), "mm", 1),
    }),
  ];
}
