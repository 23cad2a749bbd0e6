/** The heart's parts, each for a picture of its own: the pericardium behind it, the atrium, the ventricle's cavity. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { groundColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { ATRIOVENTRICULAR, type HeartShape, SEMILUNAR } from "./heart-shape.ts";
import { paintMouths } from "./paint-mouths.ts";
import { paintOrgan } from "./paint-organ.ts";
import { boundsOf, eraseAlong, type Ink, strokes, trace } from "./painted-sheet.ts";
import { smoothLine } from "./placing.ts";
import { roundOf, type Tissue, tissue } from "./tones.ts";

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
  paintAppendage(ink, heart, look);
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
  // Without a conduit those of the right veins lie behind the aorta, or in an atrium that is painted further.
  const seen = anatomy.frame.graft?.kind === "conduit" ? /Vein$/ : /^left.*Vein$/;
  const veins = anatomy.behind.filter(({ name }) => seen.test(name));
  ink.save();
  trace(ink, atrium, true);
  ink.clip();
  paintMouths(ink, veins, roundOf(saturation, theme), theme);
  ink.restore();
}

/** From each notch a fold runs towards its neck. */
function paintAppendage(ink: Ink, { appendage, size }: HeartShape, look: Tissue): void {
  paintOrgan(ink, appendage, look, { depth: 3 * size, edge: 0.5 * size });
  const [neckX, neckY] = entryAt(appendage, 0);
  const hub: Point = [neckX + 3 * size, neckY - 9 * size];
  for (let i = LOBE; i < appendage.length - LOBE; i += LOBE) {
    const [x, y] = entryAt(appendage, i);
    const at = (part: number, aside: number): Point => [
      x + part * (hub[0] - x) - aside * (hub[1] - y),
      y + part * (hub[1] - y) + aside * (hub[0] - x),
    ];
    const fold = smoothLine([at(0, 0), at(0.25, 0.06), at(0.5, 0.04)]);
    for (const [width, alpha] of [
      [1.6, 0.3],
      [0.5, 0.8],
    ] as const) {
      ink.globalAlpha = alpha;
      strokes(ink, fold, size, [[width, look.shade]]);
    }
    ink.globalAlpha = 0.5;
    strokes(ink, smoothLine([at(0.06, 0.1), at(0.25, 0.16), at(0.44, 0.1)]), size, [[0.7, look.light]]);
    ink.globalAlpha = 1;
  }
}

/** Points of the appendage's outline for a lobe and the notch beside it. */
const LOBE = 18;

/** The atrium's outline from one side of its mouth round to the other. */
export function wallOf({ atrium, base, size }: HeartShape): readonly Point[] {
  const inMouth = ([x, y]: Point): boolean => Math.hypot(x - base[0], y - base[1]) < MOUTH * size;
  const first = atrium.findIndex(inMouth);
  return [...atrium.slice(first), ...atrium.slice(0, first)].filter((point) => !inMouth(point));
}

/** How far it reaches about the middle of the ventricle's base, over both valves. */
const MOUTH = Math.max(-ATRIOVENTRICULAR.from, SEMILUNAR.to);

/** In the ventricle's own lengths: what shows between the muscle and a cavity that has drawn together. */
export function paintVentricleBed(ink: Ink, { inner }: HeartShape, theme: Theme): void {
  trace(ink, inner, true);
  ink.fillStyle = mix(tissue("muscle", theme).shade, tissue("muscle", theme).body, 0.35);
  ink.fill();
}

/** In the ventricle's own lengths; at the base it clears into what lies beyond the valves. */
export function paintVentricleCavity(
  ink: Ink,
  { cavity }: HeartShape,
  saturation: number,
  theme: Theme,
): void {
  paintCavity(ink, cavity, saturation, { depth: 9 }, theme);
  eraseAlong(ink, [-2, 0], [BEYOND, 0], boundsOf([cavity], 2));
}

/** Where the cavity's blood is clear, before the base. */
const BEYOND = -8;

/** Its back wall behind the heart, and the cut edge around that. */
export function paintPericardium(ink: Ink, outline: readonly Point[], size: number, theme: Theme): void {
  const [look, lung] = [tissue("sac", theme), tissue("lung", theme)];
  const back = { ...look, shade: mix(look.shade, lung.shade, 0.6), body: mix(look.body, lung.body, 0.6) };
  paintOrgan(ink, outline, { ...back, light: back.body }, { depth: 8 * size });
  strokes(ink, [...outline, ...outline.slice(0, 2)], size, [
    [1.7, look.edge],
    [1.1, look.light],
  ]);
}
