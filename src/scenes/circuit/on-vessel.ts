/** Whether a plate lies on a vessel of the schematic. */

import { entryAt } from "../../sim/checked/present.ts";
import type { Fit } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Laid } from "./dots.ts";

export const onVessel = (vessels: readonly Laid[], fit: Fit, plate: Box): boolean =>
  vessels.some(({ vessel, line }) => {
    const half = (vessel.width / 2) * fit.scale;
    return line.x.some((px, i) => {
      const x = fit.x + px * fit.scale;
      const y = fit.y + entryAt(line.y, i) * fit.scale;
      return (
        x > plate.x - half &&
        x < plate.x + plate.width + half &&
        y > plate.y - half &&
        y < plate.y + plate.height + half
      );
    });
  });
