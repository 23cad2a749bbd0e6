/** Under the lungs: the liver, and the diaphragm as a sheet of muscle over it. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { WALL } from "../layers/fade.ts";
import { mix, seeThrough } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { AbdomenShape } from "./abdomen-shape.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { paintOrgan } from "./paint-organ.ts";
import { boundsOf, type Ink, strokes, trace } from "./painted-sheet.ts";
import { tissue } from "./tones.ts";

/** @param size mm of the body for one of a 5-year-old */
export function paintLiver(ink: Ink, { liver }: AbdomenShape, size: number, theme: Theme): void {
  paintOrgan(ink, liver, tissue("liver", theme), { depth: 12 * size, edge: 0.7 * size });
}

/** The dome's muscle seen edge on, thinner where it is tendon. */
export function paintDiaphragm(ink: Ink, { diaphragm }: AbdomenShape, size: number, theme: Theme): void {
  const look = tissue("diaphragm", theme);
  const [, bottom] = boundsOf([diaphragm], 0);
  paintDome(ink, diaphragm, size, theme);
  trace(ink, diaphragm);
  for (const [width, colour] of [
    [3.6, look.shade],
    [2.8, look.body],
    [1.2, look.light],
  ] as const) {
    ink.lineWidth = width * size;
    ink.strokeStyle = downFade(ink, bottom, size, colour);
    ink.stroke();
  }
}

/** Clear at both ends, where the muscle goes on into the wall of the trunk. */
function downFade(ink: Ink, bottom: number, size: number, colour: string): CanvasGradient {
  const fall = ink.createLinearGradient(0, bottom, 0, bottom + TAIL * size);
  fall.addColorStop(0, seeThrough(colour, 0));
  fall.addColorStop(1, colour);
  return fall;
}

/** mm of a 5-year-old over which the muscle clears */
const TAIL = 14;

/** The caval opening in the diaphragm's central tendon, seen a little from above: the tendon's line with its far rim behind the vein, and its near rim before it. */
export interface Hiatus {
  readonly tendon: readonly Point[];
  readonly rim: readonly Point[];
  readonly far: readonly Point[];
}

export function hiatusOf({ abdomen: { diaphragm }, frame: { ivc, scale } }: Anatomy): Hiatus {
  const [x] = ivc.centre;
  const half = ivc.width / 2 + WALL + 1.8 * scale;
  const within = diaphragm.filter((at) => Math.abs(at[0] - x) < half + TENDON * scale);
  const heightAt = (side: number): number =>
    entryAt(
      within.reduce((best, at) => (Math.abs(at[0] - side) < Math.abs(best[0] - side) ? at : best)),
      1,
    );
  const [right, left] = [heightAt(x - half), heightAt(x + half)];
  const arch = (rise: number) =>
    Array.from({ length: 25 }, (_, i): Point => {
      const turn = (Math.PI * i) / 24;
      const part = (1 - Math.cos(turn)) / 2;
      return [x + half * (2 * part - 1), right + (left - right) * part + rise * half * Math.sin(turn)];
    });
  const far = arch(0.2);
  const beside = (sign: number) => within.filter((at) => sign * (at[0] - x) > half);
  return { tendon: [...beside(-1), ...far, ...beside(1)], rim: arch(-0.16), far };
}

/** mm of a 5-year-old by which the tendon reaches beyond the opening */
const TENDON = 17;

/** Around the opening the dome is tendon, pale and thin; in it, behind the vein, the belly's dark. */
export function paintTendon(ink: Ink, { tendon, far, rim }: Hiatus, size: number, theme: Theme): void {
  const { shade, body, light } = tissue("tendon", theme);
  const liver = tissue("liver", theme);
  trace(ink, [...far, ...[...rim].reverse()], true);
  ink.fillStyle = mix(liver.shade, liver.edge, 0.5);
  ink.fill();
  const [left, , right] = boundsOf([tendon], 0);
  trace(ink, tendon);
  for (const [width, colour] of [
    [3, shade],
    [2.4, body],
    [1.1, light],
  ] as const) {
    const fall = ink.createLinearGradient(left, 0, right, 0);
    for (const [at, alpha] of [
      [0, 0],
      [0.3, 1],
      [0.7, 1],
      [1, 0],
    ] as const)
      fall.addColorStop(at, seeThrough(colour, alpha));
    ink.lineWidth = width * size;
    ink.strokeStyle = fall;
    ink.stroke();
  }
}

/** The opening's near rim, which lies before the vein: a lip that grows broader towards its middle. */
export function paintRim(ink: Ink, { rim }: Hiatus, size: number, theme: Theme): void {
  const { shade, body, light } = tissue("tendon", theme);
  const last = rim.length - 1;
  const below = rim.map(([x, y], i): Point => [x, y - LIP * size * Math.sin((Math.PI * i) / last)]);
  trace(ink, [...rim, ...below.toReversed()], true);
  ink.fillStyle = mix(tissue("diaphragm", theme).body, body, 0.4);
  ink.fill();
  strokes(ink, below, size, [[0.5, shade]]);
  strokes(ink, rim, size, [
    [1, body],
    [0.4, light],
  ]);
}

/** mm of a 5-year-old */
const LIP = 1.8;

/** The dome's underside: a veil of muscle that clears downwards. */
function paintDome(ink: Ink, diaphragm: readonly Point[], size: number, theme: Theme): void {
  const look = tissue("diaphragm", theme);
  const [left, bottom, right] = boundsOf([diaphragm], 0);
  const deep = 16 * size;
  ink.save();
  trace(ink, [...diaphragm, [right, bottom - deep], [left, bottom - deep]], true);
  ink.clip();
  trace(ink, diaphragm);
  for (let k = 0; k < DOME; k++) {
    ink.lineWidth = (2 * deep * (k + 1)) / DOME;
    ink.strokeStyle = downFade(ink, bottom, size, look.shade);
    ink.globalAlpha = 0.7 / DOME;
    ink.stroke();
  }
  ink.restore();
}

/** Strokes of which the veil is made. */
const DOME = 12;
