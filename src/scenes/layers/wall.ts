/** Vessel walls with thickness, the lumen's round shading and its soft shadow, all from one distance field. */
import { type Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Opening, PathwayGeometry } from "../../sim/geometry/geometry.ts";
import { DARK_SHEEN } from "../anatomy/tones.ts";
import type { Theme } from "../theme/theme.ts";
import { contour, type Loop } from "./contour.ts";
import { beyondOpening, type Plane, SHY } from "./drawn-plane.ts";
import { WALL } from "./fade.ts";

/** mm inside the wall at which the lumen grows lighter, so that it reads as round */
const ROUND = [0.9, 2, 3.4, 5.2, 7.4];
/** mm outside the wall at which its shadow deepens */
const SHADOW = [7.5, 6.6, 5.7, 4.8, 3.9, 3, 2.1, 1.2];

/** Longest side of a kept picture */
const MAX_TEXELS = 4096;
/** Factor in size within which a kept picture serves: a camera that glides does not redraw it at every step. */
const CLOSE_ENOUGH = 1.25;

export interface WallLayer {
  /** shadow and lumen; tracers lie between the two */
  readonly below: Container;
  /** wall and its edges */
  readonly above: Container;
  set(geometry: PathwayGeometry, plane: Plane, theme: Theme): void;
  /** Keeps the drawn walls as pictures at this many device pixels a millimetre, so that a frame costs two pictures. */
  keep(density: number): void;
}

export interface Line {
  readonly line: Loop;
  readonly closed: boolean;
}

/** The stretches of a closed line that no opening cuts away, as open lines; the loop itself when none does. */
export function cutOpen(loop: Loop, openings: readonly Opening[], reach: number): Line[] {
  const count = loop.length / 2;
  const kept = Array.from(
    { length: count },
    (_, i) =>
      !openings.some((opening) =>
        beyondOpening(opening, entryAt(loop, 2 * i), entryAt(loop, 2 * i + 1), reach),
      ),
  );
  const first = kept.findIndex((keep, i) => keep && !kept[(i + count - 1) % count]);
  if (first < 0) return kept[0] ? [{ line: loop, closed: true }] : [];
  const lines: Line[] = [];
  let line: Loop = [];
  for (let n = 0; n <= count; n++) {
    const i = (first + n) % count;
    if (n < count && kept[i]) line.push(entryAt(loop, 2 * i), entryAt(loop, 2 * i + 1));
    else if (line.length > 0) {
      if (line.length >= 4) lines.push({ line, closed: false });
      line = [];
    }
  }
  return lines;
}

export function wallLayer(): WallLayer {
  const below = new Graphics();
  const above = new Graphics();
  let kept = 0;
  let largest = 1;
  return {
    below,
    above,
    keep(density) {
      const wanted = Math.min(density, MAX_TEXELS / largest);
      if (kept > 0 && wanted / kept < CLOSE_ENOUGH && kept / wanted < CLOSE_ENOUGH) return;
      kept = wanted;
      for (const layer of [below, above]) {
        layer.cacheAsTexture(false);
        layer.cacheAsTexture({ resolution: wanted, antialias: true });
      }
    },
    set(geometry, plane, theme) {
      const { colour } = theme;
      below.clear();
      above.clear();
      kept = 0;
      largest = Math.max(plane.nx, plane.ny) * plane.dx;
      const fill = (level: number, color: string, alpha: number) => {
        for (const loop of contour(plane, plane.distance, level)) below.poly(loop).fill({ color, alpha });
      };
      // The light comes from above, from the patient's right, as on all that is painted around it.
      below.translateTransform(...CAST);
      for (const level of SHADOW)
        for (const loop of contour(plane, plane.distance, level + WALL))
          below
            .poly(shortened(loop, geometry.openings))
            .fill({ color: "#000000", alpha: theme.name === "dark" ? 0.06 : 0.022 });
      below.resetTransform();
      fill(0, colour.lumen, 1);
      const { color, alpha } = lightOf(theme);
      for (const level of ROUND) fill(-level, color, alpha);

      const stroke = (level: number, width: number, color: string, alpha: number) => {
        for (const loop of contour(plane, plane.distance, level)) {
          for (const { line, closed } of cutOpen(loop, geometry.openings, 7)) {
            above.poly(line, closed).stroke({ width, color, alpha, cap: "butt", join: "round" });
          }
        }
      };
      stroke(WALL / 2, WALL, colour.wall, 1);
      stroke(WALL * 0.86, WALL * 0.28, theme.name === "dark" ? "#000000" : "#ffffff", 0.22);
      stroke(0.14, 0.42, colour.wallEdge, 0.95);
      for (const opening of geometry.openings)
        if (opening.name !== "fenestration") endAt(below, above, opening, theme);
    },
  };
}

/** mm by which the shadow falls aside */
const CAST = [1.3, -1.7] as const;

/** The line drawn back to each cut: what goes on there has no shadow of the vessel that it goes on from. */
function shortened(loop: Loop, openings: readonly Opening[]): Loop {
  const line = [...loop];
  for (let i = 0; i < line.length; i += 2)
    for (const opening of openings) {
      const [nx, ny] = opening.normal;
      const [x, y] = [entryAt(line, i), entryAt(line, i + 1)];
      if (opening.name === "fenestration" || !beyondOpening(opening, x, y, WALL + 0.6, -0.4)) continue;
      const along = (x - opening.centre[0]) * nx + (y - opening.centre[1]) * ny;
      const back = along - 0.4 + CAST[0] * nx + CAST[1] * ny;
      [line[i], line[i + 1]] = [x - back * nx, y - back * ny];
    }
  return line;
}

/** What each step inwards adds to the lumen. */
const lightOf = ({ name }: Theme) =>
  name === "dark" ? { color: DARK_SHEEN, alpha: 0.07 } : { color: "#c9bfae", alpha: 0.06 };

/** The vessel goes on into the body: its walls end at the cut; towards a lung a lip shows where the window in its front wall ends. */
function endAt(
  below: Graphics,
  above: Graphics,
  { name, centre, normal, width }: Opening,
  theme: Theme,
): void {
  const half = width / 2;
  const place = (along: number, across: number): [number, number] => [
    centre[0] + normal[0] * along - normal[1] * across,
    centre[1] + normal[1] * along + normal[0] * across,
  ];
  const strip = ([from, to]: readonly [number, number], [inner, outer]: readonly [number, number]) =>
    [place(from, inner), place(to, inner), place(to, outer), place(from, outer)].flat();
  const along = [-2 * SHY, 0.4] as const;
  below.poly(strip(along, [-half, half])).fill({ color: theme.colour.lumen });
  for (const level of ROUND) below.poly(strip(along, [level - half, half - level])).fill(lightOf(theme));
  for (const side of [-1, 1]) {
    const rim = side * half;
    above.poly(strip(along, [rim, rim + side * WALL])).fill({ color: theme.colour.wall });
    above
      .poly(strip(along, [rim - 0.07, rim + 0.35 * side]))
      .fill({ color: theme.colour.wallEdge, alpha: 0.95 });
  }
  if (name !== "left" && name !== "right") {
    for (let k = 1; k <= SOFT; k++)
      below.poly(strip([0, k], [-half, half])).fill({ color: theme.colour.lumen, alpha: 1 / SOFT });
    return;
  }
  const lip = (reach: number, wide: number) =>
    Array.from({ length: 17 }, (_, i) => {
      const turn = (Math.PI * i) / 16;
      return place(reach * Math.sin(turn), wide * Math.cos(turn));
    }).flat();
  const [reach, wide] = [LIP * width, half + WALL / 2];
  below.poly(lip(reach, half)).fill({ color: theme.colour.lumen });
  above.poly(lip(reach, wide), false).stroke({ width: 0.8 * WALL, color: theme.colour.wall });
  above.poly(lip(reach - 0.8, wide - 0.8), false).stroke({ width: 0.35, color: theme.colour.wallEdge });
}

/** mm over which its lumen goes over into that of the vein beyond */
const SOFT = 5;
/** How far the window's end bows outwards, of the width. */
const LIP = 0.16;
