/** An even filling with tracers, at first and where walls have moved. */
import type { RandomSource } from "../random.ts";
import { drawnOrigin, type Supply } from "./inflow.ts";
import { place, type TracerCloud } from "./tracer-cloud.ts";
import { beyondCut, distanceAt, MARGIN, type TracerPlane } from "./tracer-plane.ts";

/**
 * Fills the cloud up to `count` tracers (at most its capacity), evenly by volume: denser where the plane is deeper. Their origins are drawn in
 * proportion to the flows until tracers that entered replace them. A pulse of dye that was asked for waits for the blood that enters next.
 */
export function fill(
  cloud: TracerCloud,
  plane: TracerPlane,
  count: number,
  supply: Supply,
  random: RandomSource,
): void {
  cloud.usual = Math.min(count, cloud.capacity);
  for (let n = cloud.count; n < cloud.usual; n++) {
    scatter(cloud, plane, n, random);
    cloud.origin[n] = drawnOrigin(plane, supply, random);
    cloud.age[n] = 0;
    cloud.speed[n] = 0;
    cloud.dyed[n] = cloud.pulse[n] = 0;
  }
  cloud.count = Math.max(cloud.count, cloud.usual);
}

/** After the walls have moved: tracers that would be in a wall are placed again at random, the rest stay where they are. */
export function resettle(cloud: TracerCloud, plane: TracerPlane, random: RandomSource): void {
  for (let n = 0; n < cloud.count; n++) {
    const x = cloud.position[2 * n]!;
    const y = cloud.position[2 * n + 1]!;
    if (distanceAt(plane.shape, x, y) > -MARGIN * plane.shape.dx || beyondCut(plane, x, y)) {
      scatter(cloud, plane, n, random);
    }
  }
}

/** Tries before a tracer stays where it is, so that a plane without blood does not hang. */
const TRIES = 2000;

function scatter(cloud: TracerCloud, plane: TracerPlane, n: number, random: RandomSource): void {
  const { nx, ny, dx, originX, originY, depth, distance } = plane.shape;
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const gx = random() * (nx - 1);
    const gy = random() * (ny - 1);
    const k = Math.round(gy) * nx + Math.round(gx);
    if (distance[k]! > -MARGIN * dx) continue;
    const x = originX + gx * dx;
    const y = originY + gy * dx;
    if (distanceAt(plane.shape, x, y) > -MARGIN * dx || beyondCut(plane, x, y)) continue;
    place(cloud, n, x, y);
    if (random() * plane.deepest <= depth[k]!) return;
  }
}
