/** The heart's parts, each for a picture of its own: the atrium, the ventricle's cavity, and the muscle around it. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { groundColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { ATRIOVENTRICULAR, type HeartShape, PAPILLARY, SEMILUNAR } from "./heart-shape.ts";
import { paintOrgan } from "./paint-organ.ts";
import { boundsOf, type Ink, trace } from "./painted-sheet.ts";
import { tissue } from "./tones.ts";

/** The blood in a chamber: darker towards its wall. */
function paintCavity(
  ink: Ink,
  outline: readonly Point[],
  saturation: number,
  relief: { readonly depth: number; readonly walled?: readonly Point[] },
  theme: Theme,
): void {
  const ground = groundColour(theme.colour, saturation);
  const dark = theme.name === "dark";
  const tones = {
    light: mix(ground, dark ? theme.colour.rich : "#ffffff", dark ? 0.14 : 0.25),
    body: ground,
    shade: mix(ground, dark ? "#000000" : theme.colour.rich, dark ? 0.5 : 0.3),
    edge: ground,
  };
  paintOrgan(ink, outline, tones, relief);
}

/** Blood in a thin wall, open to the ventricle. */
export function paintAtrium(ink: Ink, anatomy: Anatomy, saturation: number, theme: Theme): void {
  const { heart } = anatomy;
  const { atrium, size } = heart;
  const look = tissue("atrium", theme);
  const walled = wallOf(heart);
  const stroke = (width: number, colour: string) => {
    trace(ink, walled);
    ink.lineWidth = width * size;
    ink.strokeStyle = colour;
    ink.stroke();
  };
  stroke(4.4, look.shade);
  stroke(3.4, look.body);
  paintCavity(ink, atrium, saturation, { depth: 7 * size, walled }, theme);
  stroke(0.5, look.light);
}

/** The atrium's outline from one side of its mouth round to the other. */
function wallOf({ atrium, base, lean, size }: HeartShape): readonly Point[] {
  const [cos, sin] = [Math.cos(lean), Math.sin(lean)];
  const inMouth = ([x, y]: Point): boolean => {
    const [dx, dy] = [(x - base[0]) / size, (y - base[1]) / size];
    const across = dy * cos - dx * sin;
    return dx * cos + dy * sin > -4 && across > ATRIOVENTRICULAR.from && across < SEMILUNAR.to;
  };
  const first = atrium.findIndex((point, i) => !inMouth(point) && inMouth(atrium.at(i - 1) ?? point));
  const turned = [...atrium.slice(first), ...atrium.slice(0, first)];
  const end = turned.findIndex(inMouth);
  return end < 0 ? [...atrium, entryAt(atrium, 0)] : turned.slice(0, end);
}

/** In the ventricle's own lengths: what shows between the muscle and a cavity that has drawn together. */
export function paintVentricleBed(ink: Ink, { cavity }: HeartShape, theme: Theme): void {
  ink.save();
  ink.beginPath();
  ink.rect(-1, -40, 60, 80);
  ink.clip();
  trace(ink, cavity, true);
  ink.fillStyle = mix(tissue("muscle", theme).shade, tissue("muscle", theme).body, 0.35);
  ink.fill();
  ink.restore();
}

/** In the ventricle's own lengths; at the base it clears into what lies beyond the valves. */
export function paintVentricleCavity(
  ink: Ink,
  { cavity }: HeartShape,
  saturation: number,
  theme: Theme,
): void {
  paintCavity(ink, cavity, saturation, { depth: 9 }, theme);
  const [left, bottom, right, top] = boundsOf([cavity], 2);
  const fall = ink.createLinearGradient(BEYOND, 0, -2, 0);
  fall.addColorStop(0, "rgba(0,0,0,1)");
  fall.addColorStop(1, "rgba(0,0,0,0)");
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  ink.fillStyle = fall;
  ink.fillRect(left, bottom, right - left, top - bottom);
  ink.restore();
}

/** Where the cavity's blood is clear, before the base. */
const BEYOND = -8;

/** In the ventricle's own lengths: the wall with its fibres, the ridges inside, the papillary muscles. */
export function paintMuscle(ink: Ink, { muscle }: HeartShape, theme: Theme): void {
  const look = tissue("muscle", theme);
  paintPapillary(ink, theme);
  paintOrgan(ink, muscle, look, { depth: 3.4 });
  ink.save();
  trace(ink, muscle, true);
  ink.clip();
  const half = muscle.length / 2;
  const [outer, inner] = [muscle.slice(0, half), muscle.slice(half).reverse()];
  // Fibres follow the wall, lighter towards the outside.
  for (const part of [0.2, 0.36, 0.52, 0.68, 0.84]) {
    trace(
      ink,
      outer.map(([x, y], i): Point => {
        const [ix, iy] = entryAt(inner, Math.round((i / (half - 1)) * (inner.length - 1)));
        return [x + part * (ix - x), y + part * (iy - y)];
      }),
    );
    ink.lineWidth = 0.35;
    ink.strokeStyle = part < 0.5 ? look.light : look.shade;
    ink.globalAlpha = 0.35;
    ink.stroke();
  }
  ink.restore();
  paintRidges(ink, inner, theme);
  trace(ink, muscle, true);
  ink.lineWidth = 0.7;
  ink.strokeStyle = look.edge;
  ink.stroke();
}

/** Trabeculae: short ridges from the inner wall near the apex. */
function paintRidges(ink: Ink, inner: readonly Point[], theme: Theme): void {
  const look = tissue("muscle", theme);
  const [left, bottom, right, top] = boundsOf([inner], 0);
  const middle: Point = [(left + right) / 2 - 2, (bottom + top) / 2];
  inner.forEach(([x, y], i) => {
    if (i % 4 !== 0 || x < 20) return;
    const length = 0.16 + 0.1 * ((i * 7) % 5) * 0.25;
    const tip: Point = [x + length * (middle[0] - x), y + length * (middle[1] - y)];
    ink.beginPath();
    ink.moveTo(x + 0.4, y);
    ink.quadraticCurveTo((x + tip[0]) / 2 + 1, (y + tip[1]) / 2, tip[0], tip[1]);
    ink.lineWidth = 1.8;
    ink.strokeStyle = look.body;
    ink.globalAlpha = 0.75;
    ink.stroke();
    ink.globalAlpha = 1;
  });
}

function paintPapillary(ink: Ink, theme: Theme): void {
  const look = tissue("muscle", theme);
  for (const [x, y] of PAPILLARY) {
    const root: Point = [x + 10, y > 0 ? y + 2.5 : y - 1];
    for (const [width, colour] of [
      [5.6, look.shade],
      [4.7, look.body],
      [1.7, look.light],
    ] as const) {
      ink.beginPath();
      ink.moveTo(x, y);
      ink.quadraticCurveTo(x + 5, y, root[0], root[1]);
      ink.lineWidth = width;
      ink.strokeStyle = colour;
      ink.stroke();
    }
  }
}
