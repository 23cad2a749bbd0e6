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

/** The caval opening in the diaphragm's central tendon: the diaphragm's line around it, and its near and far rims, before and behind the vein. */
export interface Hiatus {
  readonly tendon: readonly Point[];
  readonly rim: readonly Point[];
  readonly far: readonly Point[];
}

export function hiatusOf({ abdomen: { diaphragm }, frame: { ivc, scale } }: Anatomy): Hiatus {
  const [x] = ivc.centre;
  const half = ivc.width / 2 + WALL + 1.6 * scale;
  const tendon = diaphragm.filter((at) => Math.abs(at[0] - x) < half + TENDON * scale);
  const heightAt = (side: number): number =>
    entryAt(
      tendon.reduce((best, at) => (Math.abs(at[0] - side) < Math.abs(best[0] - side) ? at : best)),
      1,
    );
  const [right, left] = [heightAt(x - half), heightAt(x + half)];
  const arch = (rise: number) =>
    Array.from({ length: 25 }, (_, i): Point => {
      const part = i / 24;
      const bowed = 4 * part * (1 - part) * rise * half;
      return [x + half * (2 * part - 1), right + (left - right) * part + bowed];
    });
  // A lip between two arches, which runs out into the tendon at both ends.
  return { tendon, rim: [...arch(-0.11), ...arch(-0.24).reverse()], far: arch(0.2) };
}

/** mm of a 5-year-old by which the tendon reaches beyond the opening */
const TENDON = 17;

/** Around the opening the dome is tendon, pale and thin, and behind the vein its far rim. */
export function paintTendon(ink: Ink, { tendon, far }: Hiatus, size: number, theme: Theme): void {
  const { shade, body, light } = tissue("tendon", theme);
  strokes(ink, far, size, [
    [2, shade],
    [1.4, body],
  ]);
  const [left, , right] = boundsOf([tendon], 0);
  trace(ink, tendon);
  for (const [width, colour] of [
    [2.9, body],
    [1.3, light],
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

/** The opening's near rim, a lip of the tendon that holds on to the vein. */
export function paintRim(ink: Ink, { rim }: Hiatus, size: number, theme: Theme): void {
  const { shade, body, light } = tissue("tendon", theme);
  trace(ink, rim, true);
  ink.fillStyle = mix(body, light, 0.5);
  ink.fill();
  ink.lineWidth = 0.3 * size;
  ink.strokeStyle = shade;
  ink.stroke();
}

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
