import { describe, expect, it } from "vitest";
import { contour } from "../../src/scenes/layers/contour.ts";
import { drawnPlane } from "../../src/scenes/layers/drawn-plane.ts";
import { planeDistance } from "../../src/sim/geometry/distance.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { PATHWAY_STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

describe("the drawn plane", () => {
  it.each(PATHWAY_STAGES)(
    "of the %s pathway has its wall where the flow solver has it, to a tenth of a millimetre",
    (stage) => {
      const geometry = pathwayGeometry({ ...START.request, stage, set: {} })!;
      const exact = planeDistance(geometry, 1.5);
      const plane = drawnPlane(geometry);
      let points = 0;
      let off = 0;
      for (const loop of contour(plane, plane.distance, 0)) {
        for (let i = 0; i < loop.length; i += 2) {
          const [x, y] = [loop[i]!, loop[i + 1]!];
          // Where an opening's channel ends the distance is cut, not smooth.
          if (
            geometry.openings.some(
              ({ centre, width }) => Math.hypot(x - centre[0], y - centre[1]) < width / 2 + 4,
            )
          )
            continue;
          points++;
          if (Math.abs(exact(x, y)) > 0.1) off++;
        }
      }
      expect(points).toBeGreaterThan(200);
      // Sharp corners where shapes meet are rounded by less than a sample.
      expect(off / points).toBeLessThan(0.02);
    },
  );
});
