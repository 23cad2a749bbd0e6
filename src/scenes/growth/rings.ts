/** What the drawn tubes or chambers are, in words. */
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import { hasPathway, type PathwayStage } from "../../sim/parameters/request.ts";
import type { Say } from "../theme/theme.ts";

const KINDS: Readonly<Record<PathwayStage, string>> = {
  extracardiac: "tube",
  "lateral-tunnel": "tunnel",
  atriopulmonary: "chamber",
};
/** @throws where no pathway leads the blood: nothing is drawn of it then */
function kindOf({ stage }: SweepPoint["request"]): string {
  if (!hasPathway(stage)) throw new Error(`no pathway at the stage ${stage}`);
  return KINDS[stage];
}

/** Of the own vein's growth: what grows by less than this part of it is said to grow less. */
const LESS = 0.95;

/** How much tube and own vein grow from the first to the last. */
function growthOf(points: readonly SweepPoint[]): readonly [tube: number, vein: number] {
  const [young, grown] = [entryAt(points, 0), lastOf(points)].map(({ request }) => pathwaySizes(request)) as [
    Sizes,
    Sizes,
  ];
  return [grown.trunk / young.trunk, grown.ivc / young.ivc];
}

/** The picture's point: whether tube or chamber grows as the body's own lower vein does. */
export function pointWords(points: readonly SweepPoint[], say: Say): string {
  const [tube, vein] = growthOf(points);
  return say("further.growth.point", {
    kind: kindOf(entryAt(points, 0).request),
    change: tube === 1 ? "none" : tube < LESS * vein ? "less" : "with",
  });
}
type Sizes = ReturnType<typeof pathwaySizes>;

/** What persons, lenses and bars are. */
export const ringWords = (points: readonly SweepPoint[], say: Say): string =>
  say("further.growth.rings", { kind: kindOf(entryAt(points, 0).request) });

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
