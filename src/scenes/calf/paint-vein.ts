/** The deep vein's wall and the cusps of its valves at one moment, and the artery beside it. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Round, roundOf, tissue } from "../anatomy/tones.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { cuspOf, HALF, halfWidth, LENGTH, narrowing, onCusp, placeInLeg, VALVES } from "./vein.ts";

/** Plane units of the vein's wall. */
const WALL = 5;
/** Parts of the vein's width, from its edge to its light. */
export const ROUND = [1, 0.8, 0.5] as const;
/** Samples along the vein. */
const STEPS = 300;

export const veinTones = (saturation: number, theme: Theme): Round => {
  const round = roundOf(saturation, theme);
  return { ...round, wall: mix(round.wall, theme.colour.wallEdge, 0.3) };
};

/** From the edge inward. The blood's marks stand on the last, so that it stays near to the ground. */
export const bandsOf = ({ edge, body, light }: Round): readonly string[] => [
  edge,
  body,
  mix(body, light, 0.3),
];

/** Plane units: half the artery's width, and from the vein's wall to its middle. */
export const ARTERY = { half: 5.4, beside: 9 } as const;
/** Plane units along the vein to where the artery has grown too thin to be drawn. */
const ARTERY_ENDS = 960;

/** In front of the vein, whose wall it follows. @param saturation percent */
function drawArtery(ink: Graphics, pressed: number, saturation: number, theme: Theme): void {
  const tones = veinTones(saturation, theme);
  for (const [part, colour] of [
    [1.35, tones.wall],
    [0.95, tones.edge],
    [0.72, tones.body],
    [0.34, tones.light],
  ] as const) {
    const sides: [Spot[], Spot[]] = [[], []];
    for (let at = 0; at <= ARTERY_ENDS; at += 6) {
      const half = part * ARTERY.half * Math.sqrt(1.02 - at / ARTERY_ENDS);
      const middle = HALF - narrowing(at, pressed) + ARTERY.beside;
      sides[0].push(placeInLeg(at, middle - half).spot);
      sides[1].push(placeInLeg(at, middle + half).spot);
    }
    ink.poly([...sides[0], ...sides[1].toReversed()].flat(), true).fill({ color: colour });
  }
}

/** With the artery beside it. @param saturations percent, of the blood in both */
export function drawVein(
  ink: Graphics,
  pressed: number,
  saturations: { readonly vein: number; readonly artery: number },
  theme: Theme,
): void {
  drawArtery(ink, pressed, saturations.artery, theme);
  const tones = veinTones(saturations.vein, theme);
  const pass = (part: number, more: number, colour: string) => {
    const sides: [Spot[], Spot[]] = [[], []];
    for (let i = 0; i <= STEPS; i++) {
      const at = (LENGTH * i) / STEPS;
      const width = halfWidth(at, pressed);
      // A thin vessel has a thin wall.
      const half = part * width + Math.max(-0.3 * width, Math.min(0.3 * width, more));
      sides[0].push(placeInLeg(at, -half).spot);
      sides[1].push(placeInLeg(at, half).spot);
    }
    ink.poly([...sides[0], ...sides[1].toReversed()].flat(), true).fill({ color: colour });
  };
  pass(1, WALL / 2, tones.wall);
  ROUND.forEach((part, i) => {
    pass(part, -WALL / 2, entryAt(bandsOf(tones), i));
  });
}

const CUSP_STEPS = 12;
const FAR_CUSP = 0.18;

/** The far halves of the cusps, behind the blood. @param open 0..1, by VALVES */
export function drawFarCusps(ink: Graphics, open: readonly number[], theme: Theme): void {
  ink.clear();
  VALVES.forEach((valve, i) => {
    const cusp = cuspOf(valve.at, entryAt(open, i));
    const cut = (side: number) =>
      Array.from({ length: CUSP_STEPS + 1 }, (_, k): Spot => {
        const [across, at] = onCusp(cusp, k / CUSP_STEPS);
        return placeInLeg(at, side * across).spot;
      });
    ink
      .poly([...cut(-1), ...cut(1).toReversed()].flat(), true)
      .fill({ color: tissue("valve", theme).body, alpha: FAR_CUSP });
  });
}

/** @param open 0..1, by VALVES */
export function drawValves(ink: Graphics, open: readonly number[], theme: Theme): void {
  const { body, edge } = tissue("valve", theme);
  ink.clear();
  VALVES.forEach((valve, i) => {
    const cusp = cuspOf(valve.at, entryAt(open, i));
    for (const side of [-1, 1])
      ink
        .poly(cuspOutline(cusp, side).flat(), true)
        .fill({ color: body })
        .stroke({
          color: theme.name === "dark" ? tissue("valve", theme).shade : edge,
          width: 1.4,
          join: "round",
        });
  });
}

/** Thick where it springs from the wall, thin at its free edge. */
function cuspOutline(cusp: ReturnType<typeof cuspOf>, side: number): readonly Spot[] {
  const faces: [Spot[], Spot[]] = [[], []];
  for (let i = 0; i <= CUSP_STEPS; i++) {
    const t = i / CUSP_STEPS;
    const [across, at] = onCusp(cusp, t);
    const half = 1.1 + 2.2 * (1 - t);
    const [nextAcross, nextAt] = onCusp(cusp, t + 0.01);
    const [dx, dy] = [nextAcross - across, nextAt - at];
    const size = Math.hypot(dx, dy) || 1;
    for (const [k, way] of [1, -1].entries())
      faces[k]?.push(
        placeInLeg(at - (way * half * dx) / size, side * Math.max(0.4, across + (way * half * dy) / size))
          .spot,
      );
  }
  return [...faces[0], ...faces[1].toReversed()];
}
