/** The inside of a vessel that is cut open: its back wall turns up towards both edges and is lit on the side away from the light. */
import { DOMAdapter } from "pixi.js";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Opening, PathwayGeometry } from "../../sim/geometry/geometry.ts";
import { LIGHT } from "../anatomy/paint-tube.ts";
import type { Ink } from "../anatomy/painted-sheet.ts";
import { inside } from "../anatomy/tones.ts";
import { mix, rgb } from "../theme/colour.ts";
import { packed } from "../theme/maps.ts";
import type { Theme } from "../theme/theme.ts";
import type { Plane } from "./drawn-plane.ts";
import { LIP } from "./fade.ts";

/** mm under the wall by which it reaches, and over which it goes over into that of the vein beyond */
const UNDER = 1;
const SOFT = 5;
/** mm before an opening from which nothing reaches under the wall, which ends there */
const STUB = 0.6;
/** mm from the wall over which the back wall turns up: so near to it the plane's distance is exact */
const TURN = 3.4;
/** Steps of shade. */
const STEPS = 255;

/** How deep a point lies within the lumen (mm), the channel beyond each opening included; its opacity there. */
function depthAt(openings: readonly Opening[], distance: number, x: number, y: number): [number, number] {
  for (const { name, centre, normal, width } of openings) {
    if (name === "fenestration") continue;
    const [dx, dy] = [x - centre[0], y - centre[1]];
    const beyond = dx * normal[0] + dy * normal[1];
    const across = Math.abs(dy * normal[0] - dx * normal[1]);
    const lung = name === "left" || name === "right";
    if (beyond < -width || beyond > width || across > width / 2 + 2 * UNDER) continue;
    const lip = lung ? LIP * width * Math.sqrt(Math.max(0, 1 - ((2 * across) / width) ** 2)) : width;
    if (lung && beyond > lip - STUB) continue;
    // Into a lung's artery it runs on under the front wall, and does not turn up before that.
    const channel = Math.min(width / 2 - across, lung ? TURN : lip - beyond);
    // What goes on from here has a wall of its own: samples beside its lumen would cover that.
    if (beyond > -STUB)
      return [channel, channel < (lung ? 0 : UNDER) ? 0 : lung ? 1 : Math.min(1, 1 - beyond / SOFT)];
    if (across <= width / 2 + UNDER) return [Math.max(channel, -distance), 1];
  }
  return [-distance, 1];
}

export function paintInside(ink: Ink, { openings }: PathwayGeometry, plane: Plane, theme: Theme): void {
  const { nx, ny, dx, originX, originY, distance } = plane;
  const depth = new Float32Array(nx * ny);
  const alpha = new Float32Array(nx * ny);
  for (let k = 0; k < depth.length; k++) {
    const [d, a] = depthAt(
      openings,
      entryAt(distance, k),
      originX + (k % nx) * dx,
      originY + Math.floor(k / nx) * dx,
    );
    depth[k] = Math.min(d, TURN);
    alpha[k] = d > -UNDER ? Math.max(0, a) : 0;
  }
  const { edge, body, light } = inside(theme);
  const shades = Array.from({ length: STEPS + 1 }, (_, i) => {
    const part = (2 * i) / STEPS;
    return packed(rgb(part < 1 ? mix(edge, body, part) : mix(body, light, part - 1)), 0);
  });
  const canvas = DOMAdapter.get().createCanvas(nx, ny) as HTMLCanvasElement;
  const own = present(canvas.getContext("2d"));
  const image = own.createImageData(nx, ny);
  const texels = new Uint32Array(image.data.buffer);
  for (let k = nx; k < depth.length - nx; k++) {
    if (alpha[k] === 0) continue;
    const slope =
      ((entryAt(depth, k + 1) - entryAt(depth, k - 1)) * LIGHT[0] +
        (entryAt(depth, k + nx) - entryAt(depth, k - nx)) * LIGHT[1]) /
      (2 * dx);
    const up = 1 - Math.min(1, Math.max(0, entryAt(depth, k) / TURN));
    const shade = 0.72 + up * (0.34 * slope - 0.5 * up ** 2);
    texels[k] =
      entryAt(shades, Math.round(STEPS * Math.min(1, Math.max(0, shade)))) |
      (Math.round(255 * entryAt(alpha, k)) << 24);
  }
  own.putImageData(image, 0, 0);
  ink.imageSmoothingQuality = "high";
  ink.drawImage(canvas, originX - dx / 2, originY - dx / 2, nx * dx, ny * dx);
}
