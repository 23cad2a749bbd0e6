/** The deep vein's valves at one moment, cut open along the middle of their cusps. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { roundOf, tissue } from "../anatomy/tones.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { slicesOf } from "../drawing/cusp-sheet.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { cutWall } from "./paint-vein.ts";
import { type Cusp, cuspOf, freeHalf, HALF, halfWidth, MEET, onCusp, placeInLeg, VALVES } from "./vein.ts";

const STEPS = 12;
const SLICES = 5;
/** Of their colour, how much the blood before them takes from the sheets: by the cut, and where both meet. */
const [NEAR, DEEP] = [0.22, 0.84];
/** How much of what is left of it goes when the valve stands open: where the far edges cross, it would look shut. */
const OPENED = 0.85;

/** How the valves stand, and what colours them. */
export interface Cusps {
  /** 0..1, by VALVES */
  readonly open: readonly number[];
  /** percent, of the vein's blood */
  readonly saturation: number;
}

/** Calls for each cusp, with the size of its valve against the widest, and what lays a place of it in the leg. */
function eachCusp(
  open: readonly number[],
  draw: (cusp: Cusp, stands: { at: number; open: number; size: number }, lay: (spot: Spot) => Spot) => void,
): void {
  VALVES.forEach(({ at }, i) => {
    const stands = { at, open: entryAt(open, i), size: freeHalf(at) / HALF };
    const cusp = cuspOf(at, stands.open);
    for (const side of [-1, 1])
      draw(cusp, stands, ([across, along]) => placeInLeg(along, side * across).spot);
  });
}

/** What of the cusps lies behind the cut, behind the blood. */
export function drawFarCusps(ink: Graphics, { open, saturation }: Cusps, theme: Theme): void {
  const { body, edge } = tissue("valve", theme);
  const { body: blood, edge: dark } = roundOf(saturation, theme);
  ink.clear();
  eachCusp(open, (cusp, { at, open: opened, size }, lay) => {
    const sunk = (part: number) => part + (1 - part) * OPENED * opened;
    const slices = slicesOf(
      {
        cut: (t) => {
          const [across, along] = onCusp(cusp, t);
          return [across, at - along];
        },
        wall: (along) => halfWidth(at - along, 0) - 2,
        meets: MEET * freeHalf(at),
      },
      SLICES,
      STEPS,
    ).map((slice) => slice.map(([across, along]) => lay([across, at - along])));
    for (let k = SLICES; k > 0; k--) {
      const [front, back] = [entryAt(slices, k - 1), entryAt(slices, k)];
      const color = mix(body, mix(blood, dark, 0.2), sunk(NEAR + ((DEEP - NEAR) * (k - 1)) / (SLICES - 1)));
      ink.poly([...front, ...back.toReversed()].flat(), true).fill({ color });
    }
    for (const end of [0, STEPS])
      ink
        .poly(
          slices.flatMap((slice) => entryAt(slice, end)),
          false,
        )
        .stroke({ color: mix(edge, blood, sunk(0.35)), width: 0.8 * size, join: "round" });
  });
}

/** Where they are cut: sheets thick at the wall, thin at the free edge. */
export function drawCutCusps(ink: Graphics, { open, saturation }: Cusps, theme: Theme): void {
  const { edge, shade } = tissue("valve", theme);
  const color = cutWall(saturation, theme);
  const rim = { color: theme.name === "dark" ? shade : edge, join: "round", cap: "round" } as const;
  ink.clear();
  // Rims first: shut, two cusps lie on each other.
  for (const rims of [true, false])
    eachCusp(open, (cusp, { size }, lay) => {
      const faces = facesOf(cusp, size).map((face) => face.map(lay)) as [Spot[], Spot[]];
      const outline = [...faces[0], ...faces[1].toReversed()];
      if (!rims) ink.poly(outline.flat(), true).fill({ color });
      // None across its root, which is one with the wall.
      else ink.poly(outline.slice(2, -2).flat(), false).stroke({ ...rim, width: 1.9 * size });
    });
}

/** Both faces of a cut cusp, from its root in the wall. */
function facesOf(cusp: Cusp, size: number): readonly [Spot[], Spot[]] {
  const faces: [Spot[], Spot[]] = [[], []];
  for (let i = 0; i <= STEPS; i++) {
    const t = i / STEPS;
    const [across, at] = onCusp(cusp, t);
    const half = size * (0.72 + 0.7 * (1 - t) ** 2 + 0.7 * Math.exp(-t / 0.05));
    const [nextAcross, nextAt] = onCusp(cusp, t + 0.01);
    const [dx, dy] = [nextAcross - across, nextAt - at];
    const long = Math.hypot(dx, dy) || 1;
    for (const [k, way] of [1, -1].entries())
      faces[k]?.push([
        Math.max(0.3 * size, across + (way * half * dy) / long),
        at - (way * half * dx) / long,
      ]);
  }
  return faces;
}
