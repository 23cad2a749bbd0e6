/**
 * Published maps for what is measured along a scale, their colours re-spaced so that steps are even in CIEDE2000.
 * Speed: cividis (Nunez, Anderton & Renslow, PLoS ONE 13:e0199239, 2018). Pressure, loss and age: the one-hue schemes
 * of Harrower & Brewer (Cartographic Journal 40:27, 2003). Each runs from dark (least) to light (most).
 */

import { entryAt } from "../../sim/checked/present.ts";
import { type Rgb, rgb } from "./colour.ts";

export type MapName = "speed" | "pressure" | "loss" | "age";

const hexes = (list: string): Rgb[] => list.split(" ").map((hex) => rgb(`#${hex}`));

/** 17 knots each, evenly spaced from 0 to 1. */
export const MAPS: Readonly<Record<MapName, readonly Rgb[]>> = {
  speed: hexes(
    "002051 063069 24416e 3c4d6e 4d576d 5d616e 6b6a70 757372 807d75 8c8877 999478 a7a077 b7ac73 c9b86b dbc660 f0d652 fdea45",
  ),
  pressure: hexes(
    "08306b 083c7c 0a488d 0e559c 1561a7 1e6db1 2979b8 3585bf 4391c5 549ecd 67abd3 7eb8da 95c5e0 add0e7 c3daee d8e7f5 ebf4fb",
  ),
  loss: hexes(
    "7f2704 932e03 a63603 b93d02 cb4503 da4f06 e75c0d f06c19 f77e2b fb9041 fda158 fdb170 fdc088 fdce9f fddab6 fee5cc ffefdf",
  ),
  age: hexes(
    "3f007d 4d1b89 582e92 603f9a 684ea2 6f5ca9 7669af 7e75b6 8782bc 938fc3 9f9dca acabd1 babada c8c9e2 d8d8ea e8e7f2 f6f5f9",
  ),
};

/** The stretch of a map that stands out 3:1 from the lumen of either stage, a projector's flare included, for things as small as a tracer. */
export const LEGIBLE = { dark: [0.7, 1], light: [0.42, 0] } as const;

/** Colour at `place` from 0 to 1, straight between knots. */
export function mapColour(name: MapName, place: number): Rgb {
  const knots = MAPS[name];
  const scaled = Math.min(1, Math.max(0, place)) * (knots.length - 1);
  const index = Math.min(knots.length - 2, Math.floor(scaled));
  const share = scaled - index;
  const [a, b] = [entryAt(knots, index), entryAt(knots, index + 1)];
  return [0, 1, 2].map((i) => entryAt(a, i) + (entryAt(b, i) - entryAt(a, i)) * share) as unknown as Rgb;
}

/** 0xAABBGGRR, the byte order of an RGBA texel or vertex colour on the machines that browsers run on. */
export const packed = ([red, green, blue]: Rgb, alpha = 1): number =>
  ((Math.round(alpha * 255) << 24) |
    (Math.round(blue * 255) << 16) |
    (Math.round(green * 255) << 8) |
    Math.round(red * 255)) >>>
  0;

/** 256 packed colours from `from` to `to` on the map. */
export function mapTable(name: MapName, from = 0, to = 1): Uint32Array {
  return Uint32Array.from({ length: 256 }, (_, i) => packed(mapColour(name, from + ((to - from) * i) / 255)));
}
