/** The inside of a vessel that is cut open: its back wall turns up towards both edges and is lit on the side away from the light. */
import { DOMAdapter } from "pixi.js";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Opening } from "../../sim/geometry/geometry.ts";
import { LIGHT } from "../anatomy/paint-tube.ts";
import type { Ink } from "../anatomy/painted-sheet.ts";
import { inside, opened, roundOf } from "../anatomy/tones.ts";
import { rgb } from "../theme/colour.ts";
import { packed } from "../theme/maps.ts";
import type { Theme } from "../theme/theme.ts";
import type { Plane } from "./drawn-plane.ts";
import { LIP } from "./fade.ts";
import { isArtery } from "./window-ends.ts";

/** mm under the wall by which it reaches, and over which it goes over into that of the vein beyond */
const UNDER = 1;
const SOFT = 5;
/** mm before an opening from which nothing reaches under the wall, which ends there */
const STUB = 0.6;
/** mm to the side of a window's end by which the vessel may bend beyond it */
const BEND = 7;
/** mm from the wall over which the back wall turns up: so near to it the plane's distance is exact */
const TURN = 3.4;
/** Steps of shade. */
const STEPS = 255;

/** By sample of the plane: mm under the wall's edge, no more than where it is flat, and opacity 0..1. */
interface Depths {
  readonly depth: Float32Array;
  readonly alpha: Float32Array;
}

/** How deep each sample lies within the lumen, the channel beyond each opening included. */
function depthsIn(plane: Plane, openings: readonly Opening[]): Depths {
  const { distance } = plane;
  const depth = new Float32Array(distance.length);
  const alpha = new Float32Array(distance.length);
  for (let k = 0; k < depth.length; k++) {
    const deep = -distance[k]!;
    depth[k] = Math.min(deep, TURN);
    alpha[k] = deep > -UNDER ? 1 : 0;
  }
  const vessels = openings.filter(({ name }) => name !== "fenestration");
  // Where two reach, the first one counts.
  for (const opening of vessels.reverse()) layChannel(plane, opening, { depth, alpha });
  return { depth, alpha };
}

/** Lays the channel through an opening over what is known of the samples near it. */
function layChannel(plane: Plane, { name, centre, normal, width }: Opening, { depth, alpha }: Depths): void {
  const { nx, ny, dx, originX, originY, distance } = plane;
  const lung = isArtery(name);
  const half = width / 2;
  // All that lies beyond a window's end is under the vessel's front.
  const far = lung ? 2 * width : width;
  const reach = Math.hypot(far, half + BEND);
  const from = (at: number) => Math.max(0, Math.floor((at - reach) / dx));
  const [left, bottom] = [centre[0] - originX, centre[1] - originY];
  const right = Math.min(nx - 1, Math.ceil((left + reach) / dx));
  const top = Math.min(ny - 1, Math.ceil((bottom + reach) / dx));
  for (let j = from(bottom); j <= top; j++) {
    for (let i = from(left); i <= right; i++) {
      const x = originX + i * dx - centre[0];
      const y = originY + j * dx - centre[1];
      const beyond = x * normal[0] + y * normal[1];
      const across = Math.abs(y * normal[0] - x * normal[1]);
      if (beyond < -width || beyond > far || across > half + (lung ? BEND : 2 * UNDER)) continue;
      const k = j * nx + i;
      const lip = lung ? -LIP * width * Math.sqrt(Math.max(0, 1 - (across / half) ** 2)) : width;
      if (lung && beyond > lip + STUB) {
        alpha[k] = 0;
        continue;
      }
      // Into a lung's artery it runs on under the front wall, and does not turn up before that.
      const channel = Math.min(half - across, lung ? TURN : lip - beyond);
      // What goes on from here has a wall of its own: samples beside its lumen would cover that.
      if (beyond > -STUB) {
        depth[k] = Math.min(channel, TURN);
        alpha[k] = channel < (lung ? 0 : UNDER) ? 0 : lung ? 1 : Math.max(0, 1 - beyond / SOFT);
      } else if (across <= half + UNDER) {
        const deep = Math.max(channel, -distance[k]!);
        depth[k] = Math.min(deep, TURN);
        alpha[k] = deep > -UNDER ? 1 : 0;
      }
    }
  }
}

/** Percent in the blood that comes from above and from below; null where it is painted over. */
export type Venous = { readonly svc: number; readonly ivc: number } | null;

/** Steps from the lower vein's blood to the upper one's. */
const MIXTURES = 8;

/** The shades of each mixture, and which of them is at a height: the veins' blood mixes where the lungs' arteries leave. */
function tones(openings: readonly Opening[], blood: Venous, theme: Theme) {
  const arteries = openings.filter(({ name }) => isArtery(name));
  const mean = (of: (opening: Opening) => number) =>
    arteries.reduce((sum, opening) => sum + of(opening), 0) / Math.max(1, arteries.length);
  const [middle, wide] = [mean(({ centre }) => centre[1]), mean(({ width }) => width)];
  const lower = openings.some(({ name }) => name === "ivc");
  const shades = blood
    ? Array.from({ length: MIXTURES + 1 }, (_, k) =>
        shadesOf(opened(roundOf(blood.ivc + ((blood.svc - blood.ivc) * k) / MIXTURES, theme), theme)),
      )
    : [shadesOf(inside(theme))];
  return (y: number) => {
    const upper = lower ? Math.min(1, Math.max(0, 0.5 + (y - middle) / (2 * wide))) : 1;
    return entryAt(shades, Math.round((shades.length - 1) * upper));
  };
}

/** Of each step, from the edge over the body to the light, without opacity. */
function shadesOf({ edge, body, light }: ReturnType<typeof inside>): Uint32Array {
  const [from, over, to] = [rgb(edge), rgb(body), rgb(light)];
  return Uint32Array.from({ length: STEPS + 1 }, (_, i) => {
    const part = (2 * i) / STEPS;
    const [a, b, share] = part < 1 ? [from, over, part] : [over, to, part - 1];
    const [red, green, blue] = a;
    return packed(
      [red + (b[0] - red) * share, green + (b[1] - green) * share, blue + (b[2] - blue) * share],
      0,
    );
  });
}

export function paintInside(
  ink: Ink,
  openings: readonly Opening[],
  plane: Plane,
  blood: Venous,
  theme: Theme,
): void {
  const { nx, ny, dx, originX, originY } = plane;
  const { depth, alpha } = depthsIn(plane, openings);
  const shadesAt = tones(openings, blood, theme);
  const canvas = DOMAdapter.get().createCanvas(nx, ny) as HTMLCanvasElement;
  const own = present(canvas.getContext("2d"));
  const image = own.createImageData(nx, ny);
  const texels = new Uint32Array(image.data.buffer);
  for (let j = 1; j < ny - 1; j++) {
    const shades = shadesAt(originY + j * dx);
    for (let k = j * nx; k < (j + 1) * nx; k++) {
      if (alpha[k] === 0) continue;
      const slope =
        ((depth[k + 1]! - depth[k - 1]!) * LIGHT[0] + (depth[k + nx]! - depth[k - nx]!) * LIGHT[1]) /
        (2 * dx);
      const up = 1 - Math.min(1, Math.max(0, depth[k]! / TURN));
      const shade = 0.72 + up * (0.34 * slope - 0.5 * up ** 2);
      texels[k] =
        shades[Math.round(STEPS * Math.min(1, Math.max(0, shade)))]! | (Math.round(255 * alpha[k]!) << 24);
    }
  }
  own.putImageData(image, 0, 0);
  ink.imageSmoothingQuality = "high";
  ink.drawImage(canvas, originX - dx / 2, originY - dx / 2, nx * dx, ny * dx);
}
