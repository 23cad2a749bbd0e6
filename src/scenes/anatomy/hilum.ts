/** Where vessels cross as they enter the right lung. */
import { entryAt } from "../../sim/checked/present.ts";
import { windowEnd } from "../layers/window-ends.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { stemsOf, type Tree } from "./tree.ts";

/** Nodes of the right upper vein where it passes before its lung's artery; none where that is still open onto its blood. */
export function beforeArtery({ lungs: [{ veins, hilum }], frame }: Anatomy): Tree["nodes"] {
  const { centre, normal } = windowEnd(frame.right, frame);
  const far = ({ at: [x, y] }: Tree["nodes"][number]): number => Math.hypot(x - hilum[0], y - hilum[1]);
  const wide = stemsOf(veins)[0]
    .map((i) => entryAt(veins.nodes, i))
    .filter(({ width }) => width > LIMB * frame.scale);
  const nearest = wide.reduce((best, node) => (far(node) < far(best) ? node : best));
  const [dx, dy] = [nearest.at[0] - centre[0], nearest.at[1] - centre[1]];
  if (dx * normal[0] + dy * normal[1] < nearest.width / 2) return [];
  return wide.filter(
    ({ at: [x, y] }) => Math.hypot(x - nearest.at[0], y - nearest.at[1]) < REACH * frame.scale,
  );
}

/** mm of a 5-year-old: limbs as thick as this cross it, within this reach */
const LIMB = 3;
export const REACH = 13;
