/** The chambers of a heart with two ventricles, opened: blood in thin atrial walls, and one muscle with a hollow for each ventricle. */
import { entryAt } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { paintOrgan } from "../../anatomy/paint-organ.ts";
import { laidOver, scratch } from "../../anatomy/paint-tube.ts";
import { boundsOf, type Ink, strokes, trace } from "../../anatomy/painted-sheet.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { asTissue, roundOf, type Tissue, tissue } from "../../anatomy/tones.ts";
import { groundColour, mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import {
  type Gate,
  GROOVES,
  LEFT_CAVITY,
  MODERATOR,
  OUTFLOW,
  PAPILLARY,
  RIDGES,
  RIGHT_CAVITY,
  VENTRICLES,
} from "./heart-plan.ts";
import { frameOf } from "./root.ts";

/** Blood as the ground on which its marks move: darker towards the wall. */
function bloodTones(saturation: number, { colour, name }: Theme): Tissue {
  const ground = groundColour(colour, saturation);
  const dark = name === "dark";
  return {
    light: mix(ground, dark ? colour.rich : "#ffffff", dark ? 0.12 : 0.3),
    body: ground,
    shade: mix(ground, dark ? "#000000" : tissue("muscle", { name }).edge, dark ? 0.5 : 0.34),
    edge: ground,
  };
}

/** A thin-walled atrium and its blood, with the ridges of its muscle. */
export function paintAtrium(
  ink: Ink,
  outline: readonly Point[],
  combs: readonly (readonly Point[])[],
  saturation: number,
  theme: Theme,
): void {
  const look = tissue("atrium", theme);
  const round = [...outline, ...outline.slice(0, 1)];
  strokes(ink, round, 1, [
    [4.8, look.edge],
    [3.9, look.body],
    [2.2, look.light],
  ]);
  paintOrgan(ink, outline, bloodTones(saturation, theme), { depth: 7 });
  ink.save();
  ink.globalAlpha = 0.5;
  for (const comb of combs)
    strokes(ink, smoothLine(comb, 6), 1, [
      [1.5, look.shade],
      [1, look.body],
    ]);
  ink.restore();
  strokes(ink, round, 1, [[0.5, look.shade]]);
}

/** What shows between the muscle and a cavity that has drawn together. */
export function paintBed(ink: Ink, cavity: readonly Point[], gates: readonly Gate[], theme: Theme): void {
  const look = tissue("muscle", theme);
  ink.save();
  trace(ink, VENTRICLES, true);
  ink.clip();
  trace(ink, cavity, true);
  ink.fillStyle = mix(look.shade, look.body, 0.35);
  ink.fill();
  ink.restore();
  clearBeyond(ink, gates, [-0.25, 0]);
}

/** It clears beyond its gates, where it goes on into what lies there. */
export function paintCavity(
  ink: Ink,
  cavity: readonly Point[],
  gates: readonly Gate[],
  saturation: number,
  theme: Theme,
): void {
  paintOrgan(ink, cavity, bloodTones(saturation, theme), { depth: 6 });
  clearBeyond(ink, gates, [0.12, 0.55]);
}

const outflow = (): readonly Point[] => OUTFLOW.flat();

/** The left ventricle's outflow from within its cavity up to the aortic valve, its walls in section. */
export function paintOutflow(ink: Ink, saturation: number, theme: Theme): void {
  const look = tissue("muscle", theme);
  const bounds = boundsOf([outflow()], 4);
  const own = scratch(ink, bounds);
  for (const edge of OUTFLOW)
    strokes(own, edge, 1, [
      [3.4, look.edge],
      [2.6, look.body],
    ]);
  paintOrgan(own, outflow(), asTissue(roundOf(saturation, theme)), { depth: 5 });
  for (const edge of OUTFLOW) strokes(own, edge, 1, [[0.5, look.edge]]);
  laidOver(ink, own, bounds);
}

/** The right ventricle lies before the left one's outflow and lets it be seen. */
export function showOutflow(ink: Ink): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  ink.globalAlpha = SHOWS;
  trace(ink, outflow(), true);
  ink.fill();
  ink.restore();
}
const SHOWS = 0.74;

/** Upstream of an atrioventricular valve, downstream of a semilunar one. @param over halves of the ring, from where it is whole to where nothing is left */
function clearBeyond(ink: Ink, gates: readonly Gate[], [from, to]: readonly [number, number]): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  for (const gate of gates) {
    const { at } = frameOf(gate);
    const away = gate.heads ? -1 : 1;
    const fall = ink.createLinearGradient(...at(0, from * away), ...at(0, to * away));
    fall.addColorStop(0, "#0000");
    fall.addColorStop(1, "#000");
    ink.fillStyle = fall;
    trace(ink, [at(-2.4, from * away), at(2.4, from * away), at(2.4, 3 * away), at(-2.4, 3 * away)], true);
    ink.fill();
  }
  ink.restore();
}

/** The wall in section, with fibres that follow it, and what stands out into the cavities. */
export function paintMuscle(ink: Ink, theme: Theme): void {
  const look = tissue("muscle", theme);
  const bounds = boundsOf([VENTRICLES], 3);
  const own = scratch(ink, bounds);
  paintOrgan(own, VENTRICLES, look, { depth: 3 });
  own.save();
  trace(own, VENTRICLES, true);
  own.clip();
  paintFibres(own, look);
  own.restore();
  own.globalCompositeOperation = "destination-out";
  for (const cavity of [RIGHT_CAVITY, LEFT_CAVITY]) {
    trace(own, cavity, true);
    own.fill();
  }
  own.globalCompositeOperation = "source-atop";
  for (const cavity of [RIGHT_CAVITY, LEFT_CAVITY])
    strokes(own, [...cavity, ...cavity.slice(0, 1)], 1, [
      [2.2, mix(look.body, look.shade, 0.6)],
      [0.9, look.light],
    ]);
  own.globalCompositeOperation = "destination-over";
  strokes(own, [...VENTRICLES, ...VENTRICLES.slice(0, 1)], 1, [[1.4, look.edge]]);
  own.globalCompositeOperation = "destination-out";
  for (const cavity of [RIGHT_CAVITY, LEFT_CAVITY]) {
    trace(own, cavity, true);
    own.fill();
  }
  paintInside(ink, look);
  paintGrooves(ink, theme);
  laidOver(ink, own, bounds);
  showOutflow(ink);
  // The edges of what lies before it stay.
  ink.save();
  trace(ink, outflow(), true);
  ink.clip();
  strokes(ink, RIGHT_CAVITY, 1, [
    [1.3, look.edge],
    [0.8, look.light],
  ]);
  ink.restore();
}

/** Lines of muscle around each cavity, fainter away from it. */
function paintFibres(ink: Ink, look: Tissue): void {
  for (const [cavity, steps] of [
    [LEFT_CAVITY, 5],
    [RIGHT_CAVITY, 1],
  ] as const)
    for (let k = steps; k > 0; k--) {
      const round = [...cavity, ...cavity.slice(0, 1)];
      ink.globalAlpha = 0.4;
      strokes(ink, round, 1, [
        [3.4 * k + 0.5, k % 2 ? look.shade : look.light],
        [3.4 * k - 0.3, look.body],
      ]);
    }
  ink.globalAlpha = 1;
}

function paintInside(ink: Ink, look: Tissue): void {
  strokes(ink, smoothLine(MODERATOR, 8), 1, [
    [2.5, look.edge],
    [2, look.shade],
    [1.6, look.body],
    [0.6, look.light],
  ]);
  for (const [ridge, width] of RIDGES)
    strokes(ink, smoothLine(ridge, 6), width, [
      [1.1, look.shade],
      [0.8, look.body],
      [0.3, look.light],
    ]);
  for (const [head, bend, root, width] of PAPILLARY) {
    const way = smoothLine([head, bend, root], 40);
    for (const [part, colour] of [
      [1.14, look.edge],
      [1, look.shade],
      [0.76, look.body],
      [0.3, look.light],
    ] as const) {
      // Narrow at its head, broad where it grows out of the wall.
      const reach = way.map((_, i) => (width / 2) * (0.5 + (0.9 * i) / (way.length - 1)) * part);
      ink.fillStyle = colour;
      way.forEach(([x, y], i) => {
        ink.beginPath();
        ink.arc(x, y, entryAt(reach, i), 0, 2 * Math.PI);
        ink.fill();
      });
    }
  }
}

/** Fat with an artery and a vein in it, behind the muscle's edge. */
function paintGrooves(ink: Ink, theme: Theme): void {
  const fat = tissue("sac", theme);
  const disc = ([x, y]: Point, radius: number, colour: string) => {
    ink.beginPath();
    ink.arc(x, y, radius, 0, 2 * Math.PI);
    ink.fillStyle = colour;
    ink.fill();
  };
  for (const [groove, artery, vein] of GROOVES) {
    disc(groove, 3.3, fat.edge);
    disc(groove, 2.9, fat.body);
    for (const [at, radius, saturation] of [
      [vein, 0.9, 40],
      [artery, 1.15, 98],
    ] as const) {
      const { wall, body } = roundOf(saturation, theme);
      disc(at, radius + 0.4, wall);
      disc(at, radius, body);
    }
  }
}
