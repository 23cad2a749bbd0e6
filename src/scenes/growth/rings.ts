/** What the drawn tubes or chambers are, in words. */
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import type { Say } from "../theme/theme.ts";

/** What the opening and the dashed ring are, with the width of the tube or chamber at both ends of the row. */
export function ringWords(points: readonly SweepPoint[], say: Say): string {
  const { request } = entryAt(points, 0);
  const [low, high] = [request, lastOf(points).request].map((each) =>
    formatQuantity(pathwaySizes(each).trunk, "mm"),
  );
  return say("further.growth.rings", {
    stage: request.stage,
    width: low === high ? present(low) : say("figure.band", { low: present(low), high: present(high) }),
  });
}
