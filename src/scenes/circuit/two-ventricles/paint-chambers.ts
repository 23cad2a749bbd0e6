/** The chambers of a heart with two ventricles, opened: blood in thin atrial walls, and one muscle with a hollow for each ventricle. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import { paintOrgan } from "../../anatomy/paint-organ.ts";
import { laidOver, scratch } from "../../anatomy/paint-tube.ts";
import { boundsOf, dash, type Ink, strokes, trace } from "../../anatomy/painted-sheet.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { asTissue, type Round, roundOf, type Tissue, tissue } from "../../anatomy/tones.ts";
import { groundColour, mix, seeThrough } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import {
  BEFORE_OUTFLOW,
  CONUS,
  type Gate,
  GOES_BEHIND,
  INTO_CONUS,
  LEFT_CAVITY,
  MEMBRANOUS,
  MODERATOR,
  OUTFLOW,
  PAPILLARY,
  RIDGES,
  RIGHT_CAVITY,
  VALVES,
  VENTRICLES,
} from "./heart-plan.ts";
import { paintGrooves } from "./paint-grooves.ts";
import { frameOf, planOf } from "./root.ts";

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

/** A mouth's inside, in the shade. */
export const deepOf = ({ wall, edge }: Round, { name }: Theme): string =>
  name === "dark" ? mix(edge, "#000000", 0.35) : mix(edge, wall, 0.55);

/** A thin-walled atrium and its blood; `inside` is painted on its back wall. */
export function paintAtrium(
  ink: Ink,
  outline: readonly Point[],
  saturation: number,
  theme: Theme,
  inside: () => void,
): void {
  const look = tissue("atrium", theme);
  const round = [...outline, ...outline.slice(0, 1)];
  strokes(ink, round, 1, [
    [5.2, look.edge],
    [4.3, look.body],
    [2.2, look.light],
  ]);
  paintOrgan(ink, outline, bloodTones(saturation, theme), { depth: 7 });
  ink.save();
  trace(ink, outline, true);
  ink.clip();
  inside();
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

/** The right ventricle's outflow keeps its width while the rest draws together. */
export function paintConus(ink: Ink, saturation: number, theme: Theme): void {
  paintOrgan(ink, CONUS, bloodTones(saturation, theme), { depth: 5 });
  clearBeyond(ink, [INTO_CONUS, planOf(VALVES, "pulmonary")], [0.12, 0.55]);
}

const outflow = (): readonly Point[] => OUTFLOW.flat();

/** The left one's, in the shade where it goes on behind the right one's outflow. */
export function paintLeftCavity(ink: Ink, gates: readonly Gate[], saturation: number, theme: Theme): void {
  paintCavity(ink, LEFT_CAVITY, gates, saturation, theme);
  const [[x, y], across, up] = GOES_BEHIND;
  ink.save();
  trace(ink, LEFT_CAVITY, true);
  ink.clip();
  ink.translate(x, y);
  ink.rotate(-0.34);
  ink.scale(across, up);
  const fall = ink.createRadialGradient(0, 0, 0, 0, 0, 1);
  fall.addColorStop(0, "#2a050870");
  fall.addColorStop(1, "#2a050800");
  ink.fillStyle = fall;
  ink.fillRect(-1, -1, 2, 2);
  ink.restore();
}

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

/** Upstream of an atrioventricular valve, downstream of a semilunar one. @param over halves of the ring, from where it is whole to where nothing is left */
function clearBeyond(ink: Ink, gates: readonly Gate[], [from, to]: readonly [number, number]): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  for (const gate of gates) {
    const { at } = frameOf(gate);
    const away = gate.funnel ? -1 : 1;
    const fall = ink.createLinearGradient(...at(0, from * away), ...at(0, to * away));
    fall.addColorStop(0, "#0000");
    fall.addColorStop(1, "#000");
    ink.fillStyle = fall;
    trace(ink, [at(-2.4, from * away), at(2.4, from * away), at(2.4, 3 * away), at(-2.4, 3 * away)], true);
    ink.fill();
  }
  ink.restore();
}

/** The wall in section, with fibres that follow it. @param arterial percent in what passes behind it */
export function paintMuscle(ink: Ink, arterial: number, theme: Theme): void {
  const look = tissue("muscle", theme);
  const bounds = boundsOf([VENTRICLES], 3);
  const own = scratch(ink, bounds);
  const hollow = () => {
    own.globalCompositeOperation = "destination-out";
    for (const cavity of [RIGHT_CAVITY, LEFT_CAVITY]) {
      trace(own, cavity, true);
      own.fill();
    }
  };
  paintOrgan(own, VENTRICLES, look, { depth: 3 });
  own.save();
  trace(own, VENTRICLES, true);
  own.clip();
  paintFibres(own, look);
  own.restore();
  hollow();
  own.globalCompositeOperation = "source-atop";
  for (const cavity of [RIGHT_CAVITY, LEFT_CAVITY])
    strokes(own, [...cavity, ...cavity.slice(0, 1)], 1, [
      [2.2, mix(look.body, look.shade, 0.6)],
      [0.9, look.light],
    ]);
  own.globalCompositeOperation = "destination-over";
  strokes(own, [...VENTRICLES, ...VENTRICLES.slice(0, 1)], 1, [[1.4, look.edge]]);
  hollow();
  laidOver(ink, own, bounds, CAST);
  paintHidden(ink, arterial, theme);
  strokes(ink, MEMBRANOUS, 1, [
    [1.5, tissue("tendon", theme).edge],
    [0.9, tissue("tendon", theme).light],
  ]);
  paintGrooves(ink, theme);
}

/** The left one's outflow shines through the right one's, which lies before it. */
function paintHidden(ink: Ink, saturation: number, theme: Theme): void {
  const round = roundOf(saturation, theme);
  const bounds = boundsOf([BEFORE_OUTFLOW], 0);
  const own = scratch(ink, bounds);
  const [left, bottom, right, top] = bounds;
  own.save();
  trace(own, BEFORE_OUTFLOW, true);
  own.clip();
  paintOrgan(own, outflow(), asTissue(round), { depth: 3 });
  const fall = own.createLinearGradient(...AORTIC_END, ...LEFT_END);
  for (const [at, part] of SHINES) fall.addColorStop(at, seeThrough("#000000", part));
  own.globalCompositeOperation = "destination-in";
  own.fillStyle = fall;
  own.fillRect(left, bottom, right - left, top - bottom);
  own.globalCompositeOperation = "source-over";
  for (const edge of OUTFLOW) {
    trace(own, edge);
    dash(own, 1, round.wall, { wide: 0.7, alpha: 0.8 });
  }
  own.restore();
  laidOver(ink, own, bounds);
}

/** mm: where it goes on in sight at either end, and how much of its colour is seen between them: as much in the middle would be read as blood that crosses. */
const [AORTIC_END, LEFT_END] = [
  [18, -27],
  [41, -44],
] as const;
const SHINES = [
  [0, 0.8],
  [0.3, 0.36],
  [0.75, 0.28],
  [1, 0.5],
] as const;

/** mm by which the wall's shadow falls into the cavities. */
const CAST = 1.6;

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

/** What stands out into both cavities. */
export function paintInside(ink: Ink, theme: Theme): void {
  const look = tissue("muscle", theme);
  // Their roots lie in the wall.
  ink.beginPath();
  for (const cavity of [RIGHT_CAVITY, LEFT_CAVITY])
    for (const [i, [x, y]] of cavity.entries()) i === 0 ? ink.moveTo(x, y) : ink.lineTo(x, y);
  ink.clip();
  for (const [ridge, width] of RIDGES)
    strokes(ink, smoothLine(ridge, 6), width, [
      [1.1, look.shade],
      [0.8, look.body],
      [0.3, look.light],
    ]);
  // Narrow at a muscle's head, broad where it grows out of the wall; the band is broad at both ends.
  const beam = (way: readonly Point[], width: (part: number) => number) => {
    for (const [part, colour] of [
      [1.14, look.edge],
      [1, look.shade],
      [0.76, look.body],
      [0.3, look.light],
    ] as const) {
      ink.fillStyle = colour;
      way.forEach(([x, y], i) => {
        ink.beginPath();
        ink.arc(x, y, (width(i / (way.length - 1)) / 2) * part, 0, 2 * Math.PI);
        ink.fill();
      });
    }
  };
  for (const [head, bend, root, width] of PAPILLARY)
    beam(smoothLine([head, bend, root], 40), (part) => width * (0.5 + 0.9 * part));
  beam(smoothLine(MODERATOR, 30), (part) => 2 + 6 * Math.abs(part - 0.5) ** 2.4);
}
