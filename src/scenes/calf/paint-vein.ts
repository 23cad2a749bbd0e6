/** The deep vein at one moment, cut open along its middle, and the artery beside it. */
import type { Graphics } from "pixi.js";
import { smoothStep } from "../../sim/geometry/centreline.ts";
import { type Round, roundOf, tissue } from "../anatomy/tones.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { footTurn } from "./foot.ts";
import { freeHalf, halfWidth, LENGTH, narrowing, placeInLeg, VALVES } from "./vein.ts";

/** Plane units of the vein's wall, and of the line around it. */
export const WALL = 4.4;
const RIM = 1;
/** Parts of the vein's width, from its edge to its light. */
export const ROUND = [1, 0.8, 0.5] as const;
/** Samples along the vein, plane units: close together where valves bulge, for a lens shows those. */
const [WIDE, CLOSE, BULGES] = [6, 1.5, 56];
const SAMPLES: readonly number[] = Array.from({ length: Math.ceil(LENGTH / CLOSE) + 1 }, (_, i) =>
  Math.min(LENGTH, CLOSE * i),
).filter(
  (at, i) =>
    i % (WIDE / CLOSE) === 0 ||
    at === LENGTH ||
    VALVES.some((each) => at < each.at + CLOSE && at > each.at - BULGES),
);

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

/** Of the deep vein, cut open: parts of its lumen's width, from the wall inward. */
const lumenOf = ({ edge, body, light }: Round): Tones => [
  [1, mix(edge, body, 0.25)],
  [0.95, mix(edge, body, 0.62)],
  [0.87, mix(edge, body, 0.85)],
  [0.74, mix(body, light, 0.06)],
  [0.52, mix(body, light, 0.3)],
];

/** Of what is cut: the vein's wall and its cusps. @param saturation percent */
export const cutWall = (saturation: number, theme: Theme): string =>
  mix(tissue("valve", theme).body, roundOf(saturation, theme).body, 0.22);

/** Plane units: half the artery's width, and from the vein's wall to its middle. */
export const ARTERY = { half: 7.5, beside: 12 } as const;
/** Plane units along the vein to where the artery has grown too thin to be drawn. */
const ARTERY_ENDS = 1200;

type Tones = readonly (readonly [part: number, colour: string])[];
const tubeOf = ({ wall, edge, body, light }: Round): Tones => [
  [1.35, wall],
  [0.95, edge],
  [0.72, body],
  [0.34, light],
];

/** Plane units from the deep vein's middle to the artery's, in front of the wall, which it follows. */
const besideVein = (at: number, pressed: number): number =>
  freeHalf(at) - narrowing(at, pressed) + ARTERY.beside;

interface Tube {
  readonly from: number;
  readonly to: number;
  /** plane units at a place along the vein: from its middle, and half the width */
  readonly middle: (at: number) => number;
  readonly half: (at: number) => number;
}

/** Along the deep vein, at a distance from it. */
function drawBeside(ink: Graphics, { from, to, middle, half }: Tube, turn: number, tones: Tones): void {
  for (const [part, colour] of tones) {
    const sides: [Spot[], Spot[]] = [[], []];
    for (let at = from; at <= to; at += 6)
      for (const [i, way] of [-1, 1].entries())
        sides[i]?.push(placeInLeg(at, middle(at) + way * part * half(at), turn).spot);
    ink.poly([...sides[0], ...sides[1].toReversed()].flat(), true).fill({ color: colour });
  }
}

/** Each posterior tibial artery runs between two veins: the second, from where it joins the first behind the knee to where it does so again under the ankle; half its width, and from the artery's middle to its own. */
const SECOND = { joins: 190, parted: 410, nears: 880, ends: 1010, half: 5, beside: 16 } as const;
/** Where the two are joined across the artery. */
const BRIDGES = [420, 510, 600] as const;

/** In front of the vein: the artery and the second vein. @param saturations percent, of the blood in both */
function drawCompanions(
  ink: Graphics,
  pressed: number,
  { vein, artery }: Readonly<Record<"vein" | "artery", number>>,
  theme: Theme,
): void {
  const blue = tubeOf(veinTones(vein, theme));
  const turn = footTurn(pressed);
  const apart = (at: number) =>
    smoothStep(SECOND.joins, SECOND.parted, at) * (1 - smoothStep(SECOND.nears, SECOND.ends, at));
  const second = (at: number) => apart(at) * (besideVein(at, pressed) + SECOND.beside);
  drawBeside(
    ink,
    {
      from: SECOND.joins,
      to: SECOND.ends,
      middle: second,
      half: (at) => SECOND.half * Math.sqrt(1.3 - at / SECOND.ends),
    },
    turn,
    blue,
  );
  drawBeside(
    ink,
    {
      from: 0,
      to: ARTERY_ENDS,
      middle: (at) => besideVein(at, pressed),
      half: (at) => ARTERY.half * Math.sqrt(1.02 - at / ARTERY_ENDS),
    },
    turn,
    tubeOf(veinTones(artery, theme)),
  );
  for (const [part, colour] of blue)
    for (const at of BRIDGES) {
      const [near, far] = [placeInLeg(at + 10, 0).spot, placeInLeg(at - 8, second(at - 8)).spot];
      ink
        .moveTo(...near)
        .lineTo(...far)
        .stroke({ color: colour, width: 5.4 * part });
    }
}

/** With what runs beside it. @param saturations percent, of the blood in both */
export function drawVein(
  ink: Graphics,
  pressed: number,
  saturations: { readonly vein: number; readonly artery: number },
  theme: Theme,
): void {
  drawCompanions(ink, pressed, saturations, theme);
  const tones = veinTones(saturations.vein, theme);
  const turn = footTurn(pressed);
  const pass = (part: number, more: number, colour: string) => {
    const sides: [Spot[], Spot[]] = [[], []];
    for (const at of SAMPLES) {
      const width = halfWidth(at, pressed);
      // A thin vessel has a thin wall.
      const half = part * width + Math.max(-0.3 * width, Math.min(0.3 * width, more));
      sides[0].push(placeInLeg(at, -half, turn).spot);
      sides[1].push(placeInLeg(at, half, turn).spot);
    }
    ink.poly([...sides[0], ...sides[1].toReversed()].flat(), true).fill({ color: colour });
  };
  // Cut open: its wall has the colour of the cusps that spring from it.
  pass(1, WALL / 2, tones.wall);
  pass(1, WALL / 2 - RIM, cutWall(saturations.vein, theme));
  for (const [part, colour] of lumenOf(tones)) pass(part, -WALL / 2, colour);
}
