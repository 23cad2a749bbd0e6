/** A look into the chest: lungs, liver, heart and great vessels grow with the body; tube or chamber has the size that it has, to the same scale. */
import type { Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import type { CirculationRequest, PathwayStage } from "../../sim/parameters/request.ts";
import { type Round, roundOf, type Tissue, tissue } from "../anatomy/tones.ts";
import { curve, type Spot, spots, traceCurve } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { pathwayStage, wallOf, wallsOf } from "./pathway-walls.ts";
import { softShape, vessels } from "./soft-shape.ts";

/** mm: half of what is seen of the chest of a body with a surface of 1.73 m2; its heart is then some 110 mm wide (adults: 110 to 140, from memory). */
const REACH = 96;
const GROWN = 1.73;
/** mm. @param bsa m2 */
export const chestReach = (bsa: number): number => REACH * Math.sqrt(bsa / GROWN);

/** CSS px: the middle of the round picture, its radius, and px for each mm. */
export interface ChestPlace {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly perMillimetre: number;
}

/** Parts of the radius from the middle, y down, the body's right on the left. Lungs, liver, heart and aorta seen from the front. */
const RIGHT_LUNG = spots(
  "-0.4 -0.86, -0.62 -0.74, -0.84 -0.48, -0.95 -0.14, -0.95 0.22, -0.9 0.38, -0.74 0.27, -0.5 0.25, -0.26 0.36, -0.22 0.1, -0.24 -0.3, -0.26 -0.66",
);
const LEFT_LUNG = spots(
  "0.44 -0.84, 0.64 -0.72, 0.84 -0.48, 0.95 -0.14, 0.95 0.22, 0.9 0.4, 0.76 0.44, 0.68 0.1, 0.42 -0.12, 0.3 -0.34, 0.3 -0.66",
);
const LIVER = spots(
  "-0.89 0.43, -0.72 0.33, -0.5 0.31, -0.24 0.42, 0.12 0.53, 0.46 0.58, 0.56 0.66, 0.3 0.8, 0.06 0.97, -0.2 0.965, -0.5 0.84, -0.76 0.62",
);
const HEART = spots(
  "-0.02 -0.2, 0.14 -0.25, 0.32 -0.2, 0.42 -0.1, 0.56 0.06, 0.72 0.28, 0.74 0.44, 0.62 0.53, 0.4 0.52, 0.1 0.45, -0.12 0.4, -0.23 0.24, -0.24 0.02, -0.16 -0.14",
);
const LEFT_APPENDAGE = spots("0.34 -0.2, 0.46 -0.16, 0.54 -0.04, 0.5 0.06, 0.4 0.02, 0.32 -0.08");
/** Up to the groove, and as far out as a conduit beside it reaches; its appendage before the aorta's root. */
const RIGHT_ATRIUM = spots(
  "0.02 -0.24, -0.08 -0.23, -0.2 -0.16, -0.28 -0.02, -0.31 0.14, -0.28 0.3, -0.17 0.41, -0.02 0.44, -0.07 0.28, -0.11 0.08, -0.07 -0.1, 0.04 -0.16",
);
/** Arteries of the heart's own, and the groove between atrium and ventricle. */
const GROOVES = [
  "-0.08 -0.16, -0.12 0.04, -0.08 0.24, 0.06 0.42",
  "0.3 -0.18, 0.36 0.06, 0.5 0.3, 0.66 0.5",
].map(spots);
/** From the heart over the arch and down behind it; mm; and up to where it is seen before the arteries of the lungs. */
const AORTA = {
  line: "0.08 -0.12, 0 -0.36, 0.05 -0.54, 0.2 -0.62, 0.35 -0.56, 0.42 -0.42, 0.42 -0.26, 0.4 -0.1",
  wide: 24,
  before: 0.6,
} as const;
const NECK = [
  "0.06 -0.56, 0 -0.8, -0.02 -0.97",
  "0.22 -0.62, 0.22 -0.82, 0.24 -0.95",
  "0.32 -0.58, 0.4 -0.76, 0.48 -0.85",
];
/** Percent, until they are computed: of a body with a pathway, whose arteries are red. */
const UNSOLVED = { ivc: 70, svc: 70, arterial: 97 } as const;
/** Where the arteries of the lungs begin, in the middle, and where they branch. */
const JOINT = -0.36;
const TWIGS = {
  right: [
    "-0.58 -0.32, -0.7 -0.42, -0.8 -0.5",
    "-0.58 -0.32, -0.72 -0.28, -0.86 -0.2",
    "-0.56 -0.32, -0.64 -0.18, -0.68 0.08",
  ],
  left: [
    "0.6 -0.36, 0.7 -0.46, 0.78 -0.54",
    "0.6 -0.36, 0.74 -0.34, 0.86 -0.24",
    "0.58 -0.36, 0.72 -0.2, 0.8 0.06",
  ],
} as const;

/** Part of the radius by which it lies within the heart: a conduit lies beside it, a tunnel and a chamber are part of it. */
const INSIDE: Readonly<Record<PathwayStage, number>> = {
  extracardiac: 0,
  "lateral-tunnel": 0.09,
  atriopulmonary: 0.26,
};
/** CSS px under which no wall is drawn. */
const MIN_WALL = 2;

/** Where tube or chamber lies, CSS px: middle, upper and lower end, half its lumen's width and its wall. */
export function trunkPlace(request: CirculationRequest, { x, y, radius, perMillimetre }: ChestPlace) {
  const sizes = pathwaySizes(request);
  const half = (sizes.trunk / 2) * perMillimetre;
  const wall = Math.max(MIN_WALL, wallOf(request) * perMillimetre);
  const top = y + JOINT * radius;
  return {
    x: x + (-0.2 + INSIDE[pathwayStage(request)]) * radius - half - wall,
    top,
    bottom: top + sizes.trunkLength * perMillimetre,
    half,
    wall,
  };
}

/** @param circulation null until it is computed */
export function drawChest(
  ink: Graphics,
  request: CirculationRequest,
  circulation: Circulation | null,
  place: ChestPlace,
  theme: Theme,
): void {
  const { x, y, radius, perMillimetre } = place;
  const { colour } = theme;
  const sizes = pathwaySizes(request);
  const stage = pathwayStage(request);
  const saturations = circulation?.saturations;
  const at = ([u, v]: Spot): Spot => [x + u * radius, y + v * radius];
  const look = { round: 0.09 * radius, width: 1 };
  const shape = (outline: readonly Spot[], tones: Tissue) => softShape(ink, outline.map(at), tones, look);
  const trunk = trunkPlace(request, place);
  const { ivc, svc, arterial } = saturations ?? UNSOLVED;
  const [low, high, red] = [roundOf(ivc, theme), roundOf(svc, theme), roundOf(arterial, theme)];
  const way = (line: string, millimetres: number) =>
    [spots(line).map(at), millimetres * perMillimetre] as const;
  const lay = (line: string, millimetres: number, round: Round, part = 1) =>
    vessels(ink, [way(line, millimetres)], round, part);
  // mm of a vessel of the heart's own in this body
  const grown = (adult: number) => (adult * radius) / perMillimetre / REACH;
  const heart = tissue("muscle", theme);
  const joint = (trunk.x - x) / radius;
  const edge = Math.sqrt(1 - joint * joint) - 0.01;
  const [top, bottom] = [trunk.top, trunk.bottom].map((each) => (each - y) / radius) as [number, number];

  ink.circle(x, y, radius).fill({ color: mix(colour.backdrop, colour.stage, 0.25) });
  for (const each of [RIGHT_LUNG, LEFT_LUNG]) shape(each, tissue("lung", theme));
  shape(LIVER, tissue("liver", theme));
  for (const line of NECK) lay(line, grown(8), red);
  lay(AORTA.line, grown(AORTA.wide), red);
  for (const twig of TWIGS.right) lay(twig, 0.55 * sizes.right, low);
  for (const twig of TWIGS.left) lay(twig, 0.55 * sizes.left, low);
  lay(`-0.6 -0.32, -0.4 -0.35, ${joint} ${JOINT}`, sizes.right, low);
  lay(`${joint} ${JOINT}, 0.2 -0.38, 0.62 -0.36`, sizes.left, low);
  vessels(
    ink,
    [
      way(`0.52 -0.84, 0.2 -0.81, -0.12 -0.72, ${joint} -0.54`, 0.75 * sizes.svc),
      way(`${joint} ${-edge}, ${joint} -0.6, ${joint} ${top + 0.03}`, sizes.svc),
    ],
    high,
  );
  if (stage === "atriopulmonary") {
    drawChamber(ink, trunk, saturations?.ivc ?? null, theme);
    // It opens into the arteries of the lungs.
    if (saturations) ink.ellipse(trunk.x, trunk.top, 0.11 * radius, 0.07 * radius).fill({ color: low.body });
  }
  lay(`${joint} ${bottom - 0.03}, ${joint + 0.01} 0.6, ${joint + 0.01} ${edge}`, sizes.ivc, low);
  shape(LEFT_APPENDAGE, tissue("atrium", theme));
  if (stage === "lateral-tunnel")
    softShape(ink, atriumAround(trunk, [x, y], radius), tissue("atrium", theme), look);
  shape(HEART, heart);
  if (stage === "extracardiac") shape(RIGHT_ATRIUM, tissue("atrium", theme));
  lay(AORTA.line, grown(AORTA.wide), red, AORTA.before);
  for (const line of GROOVES) {
    traceCurve(ink, curve(line.map(at), 1));
    ink.stroke({
      color: mix(heart.light, colour.rich, 0.25),
      width: Math.max(1, 0.018 * radius),
      cap: "round",
    });
  }
  if (stage !== "atriopulmonary")
    drawTube(ink, [stage, sizes.trunkEnd / sizes.trunk], trunk, saturations?.ivc ?? null, theme);
  ink.circle(x, y, radius).stroke({ color: colour.hair, width: 2.5 });
}

type Trunk = ReturnType<typeof trunkPlace>;

/** The right atrium around a tunnel within it. */
function atriumAround({ x, top, bottom, half, wall }: Trunk, [cx]: Spot, radius: number): readonly Spot[] {
  const out = x - half - 1.3 * wall;
  return [
    [x - 0.8 * half, top + 0.06 * radius],
    [out, top + 0.25 * (bottom - top)],
    [out - 0.6 * wall, (top + bottom) / 2],
    [out, bottom - 0.16 * (bottom - top)],
    [x - 0.6 * half, bottom],
    [cx, bottom - 0.02 * radius],
    [cx + 0.1 * radius, (top + bottom) / 2],
    [cx, top + 0.1 * radius],
  ];
}

/** Cut open, with its blood. */
function drawChamber(
  ink: Graphics,
  { x, top, bottom, half, wall }: Trunk,
  saturation: number | null,
  theme: Theme,
): void {
  const blood = saturation === null ? null : roundOf(saturation, theme);
  const { body, edge } = tissue("atrium", theme);
  const [middle, high] = [(top + bottom) / 2, (bottom - top) / 2];
  ink
    .ellipse(x, middle, half + wall, high + wall)
    .fill({ color: body })
    .stroke({ color: edge, width: 1.2 });
  ink.ellipse(x, middle, half, high).fill({ color: blood?.edge ?? theme.colour.lumen });
  if (!blood) return;
  for (const part of [0.85, 0.65])
    ink.ellipse(x, middle, part * half, part * high).fill({ color: blood.body, alpha: 0.6 });
}

/** @param narrows its upper end over its width */
function drawTube(
  ink: Graphics,
  [stage, narrows]: readonly [PathwayStage, number],
  { x, top, bottom, half, wall }: Trunk,
  saturation: number | null,
  theme: Theme,
): void {
  const blood = saturation === null ? null : roundOf(saturation, theme);
  const [right, left] = wallsOf(stage, theme);
  const end = half * narrows;
  const side = (sign: number, more: number): Spot[] => [
    [x + sign * (end + more), top],
    [x + sign * (half + more), top + 0.35 * (bottom - top)],
    [x + sign * (half + more), bottom],
  ];
  const fill = (inside: number, color: string) =>
    ink.poly([...side(-1, inside), ...side(1, inside).reverse()].flat()).fill({ color });
  fill(0, blood?.edge ?? theme.colour.lumen);
  if (blood) {
    fill(-0.24 * half, blood.body);
    fill(-0.6 * half, blood.light);
  }
  for (const [sign, { body, edge }] of [
    [-1, right],
    [1, left],
  ] as const) {
    ink.poly([...side(sign, 0), ...side(sign, wall).reverse()].flat());
    ink.fill({ color: body }).stroke({ color: edge, width: 1, join: "round" });
  }
}
