/** The opened right side of a heart with two ventricles: walls, cavities by their computed volumes, valves by the computed flow. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { chamberSize, OPEN, OUTSIDE } from "../anatomy/standing.ts";
import { roundOf, tissue } from "../anatomy/tones.ts";
import { curve, type Spot } from "../drawing/curve-drawing.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationOf } from "./circuit-blood.ts";
import { dimOf, type Emphasis } from "./emphasis.ts";
import {
  MOUTHS,
  PULMONARY,
  RIGHT_CHAMBERS,
  RIGHT_PAPILLARY,
  type RightChamber,
  type RightValve,
  TRICUSPID,
} from "./right-heart-shape.ts";

interface Moved {
  readonly circulation: Circulation;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
}

export interface RightHeart {
  /** walls and cavities; their blood's marks lie over them, and the valves over those */
  readonly chambers: Container;
  readonly valves: Graphics;
  draw(moved: Moved, theme: Theme, emphasis: Emphasis): void;
}

/** Fills of which a cavity's round is made. */
const ROUNDS = 6;

export function rightHeart(): RightHeart {
  const chambers = new Container();
  const [walls, cavities, valves] = [new Graphics(), new Graphics(), new Graphics()];
  chambers.addChild(walls, cavities);
  const shapes = RIGHT_CHAMBERS.map((chamber) => ({ chamber, points: sampled(chamber.cavity) }));
  return {
    chambers,
    valves,
    draw({ circulation, time, still }, theme, emphasis) {
      const shown = circulation.request.stage === "two-ventricle";
      chambers.visible = valves.visible = shown;
      if (!shown) return;
      walls.clear();
      cavities.clear();
      const sizes = shapes.map(({ chamber }) => (still ? 1 : chamberSize(circulation, chamber.volume, time)));
      shapes.forEach(({ chamber, points }, i) => {
        drawWall(
          walls,
          swollen(points, chamber, 1 + OUTSIDE * (entryAt(sizes, i) - 1)),
          chamber,
          theme,
          emphasis,
        );
      });
      const saturation = saturationOf(circulation, "pulmonaryArtery");
      const { edge, body, light } = roundOf(saturation, theme);
      shapes.forEach(({ chamber, points }, i) => {
        const back = (color: string) => mix(color, theme.colour.stage, dimOf(emphasis, chamber.volume));
        for (let k = 0; k < ROUNDS; k++) {
          const depth = k / (ROUNDS - 1);
          const inset = swollen(points, chamber, entryAt(sizes, i) * (1 - 0.1 * depth));
          cavities.poly(inset.flat()).fill({
            color: back(depth < 0.7 ? mix(edge, body, depth / 0.7) : mix(body, light, 0.5 * (depth - 0.7))),
            alpha: k === 0 ? 1 : 0.5,
          });
        }
      });
      // Where one chamber opens into the next, or a vein into it, there is no wall.
      for (const [a, b] of MOUTHS)
        cavities
          .moveTo(...a)
          .lineTo(...b)
          .stroke({ width: 20, color: mix(body, edge, 0.3), cap: "butt" });
      drawTrabeculae(cavities, theme);
      drawValves(valves, circulation, { time, still }, theme);
    },
  };
}

function sampled(points: readonly Spot[]): readonly Spot[] {
  const { x, y } = curve(points, 6);
  return Array.from(x, (each, i): Spot => [each, entryAt(y, i)]);
}

const swollen = (points: readonly Spot[], { pivot: [px, py] }: RightChamber, size: number): Spot[] =>
  points.map(([x, y]) => [px + size * (x - px), py + size * (y - py)]);

/** From outside in: edge, muscle, the light along it. */
function drawWall(
  ink: Graphics,
  points: readonly Spot[],
  { volume, wall }: RightChamber,
  theme: Theme,
  emphasis: Emphasis,
): void {
  const look = tissue(volume === "rightVentricle" ? "muscle" : "atrium", theme);
  const lit = emphasis.lit.has(volume);
  const back = (color: string) => mix(color, theme.colour.stage, dimOf(emphasis, volume));
  const outline = points.flat();
  for (const [width, color] of [
    [2 * wall + 5, lit ? theme.colour.accent : back(look.edge)],
    [2 * wall + (lit ? -2 : 2.5), back(look.body)],
    [1.4 * wall, back(mix(look.body, look.light, 0.45))],
    [1.1 * wall, back(mix(look.body, look.shade, 0.35))],
  ] as const)
    ink.poly(outline, true).stroke({ width, color, join: "round" });
}

/** Ridges of the right ventricle's apex, the moderator band across it, and the papillary muscles. */
function drawTrabeculae(ink: Graphics, theme: Theme): void {
  const look = tissue("muscle", theme);
  const ridge = (from: Spot, by: Spot, to: Spot, width: number) => {
    for (const [part, color] of [
      [1, look.shade],
      [0.72, look.body],
      [0.25, look.light],
    ] as const)
      ink
        .moveTo(...from)
        .quadraticCurveTo(...by, ...to)
        .stroke({ width: part * width, color, cap: "round" });
  };
  ridge([568, 480], [572, 502], [560, 530], 5);
  for (const [head, root] of RIGHT_PAPILLARY)
    ridge(root, [(head[0] + root[0]) / 2 + 4, (head[1] + root[1]) / 2], head, 8);
  for (const [from, to] of RIDGES)
    ink
      .moveTo(...from)
      .lineTo(...to)
      .stroke({ width: 8, color: mix(look.body, look.shade, 0.35), cap: "round" });
}

/** Short and thick, from the wall inwards. */
const RIDGES: readonly (readonly [Spot, Spot])[] = [
  [
    [636, 542],
    [630, 536],
  ],
  [
    [616, 542],
    [610, 534],
  ],
  [
    [596, 542],
    [592, 533],
  ],
  [
    [544, 527],
    [548, 519],
  ],
  [
    [524, 517],
    [530, 510],
  ],
];

function drawValves(
  ink: Graphics,
  circulation: Circulation,
  { time, still }: { readonly time: number; readonly still: boolean },
  theme: Theme,
): void {
  const look = tissue("valve", theme);
  ink.clear();
  const [filling, ejecting] = still ? [1, 0] : valvesAt(circulation, time);
  for (const [valve, open, outlet] of [
    [TRICUSPID, filling, false],
    [PULMONARY, ejecting, true],
  ] as const)
    leafletsOf(valve, open, outlet).forEach((leaflet, side) => {
      const [hinge, belly, tip] = leaflet;
      if (!outlet)
        for (const [head] of RIGHT_PAPILLARY.slice(side === 0 ? 1 : 0, side === 0 ? 2 : 1))
          ink
            .moveTo(...tip)
            .lineTo(...head)
            .moveTo(...belly)
            .lineTo(...head)
            .stroke({ width: 1, color: look.edge, alpha: 0.8 });
      for (const [width, color] of [
        [5, look.shade],
        [3.4, look.body],
      ] as const)
        ink
          .moveTo(...hinge)
          .quadraticCurveTo(...belly, ...tip)
          .stroke({ width, color, cap: "round" });
    });
}

/** 0 shut .. 1 open: the tricuspid valve while more comes into its ventricle than leaves it, the pulmonary one while blood passes it. */
export function valvesAt(
  { traces }: Circulation,
  time: number,
): readonly [filling: number, ejecting: number] {
  const { rightVentricle } = traces.volumes;
  const { pulmonary } = traces.flows;
  if (!rightVentricle || !pulmonary) return [1, 0];
  const most = pulmonary.reduce((a, b) => Math.max(a, b), 1e-9);
  const out = valueAt(traces, pulmonary, time);
  const step = traces.heartPeriod / 100;
  const grows =
    ((valueAt(traces, rightVentricle, time + step) - valueAt(traces, rightVentricle, time - step)) /
      (2 * step)) *
    0.06;
  const part = (flow: number) => Math.min(1, Math.max(0, flow / (OPEN * most)));
  const ejecting = part(out);
  // What opens the one shuts the other; the difference blurs the moment between.
  return [part(grows + out) * (1 - ejecting), ejecting];
}

type Leaflet = readonly [hinge: Spot, belly: Spot, tip: Spot];

/** Shut they meet in the middle of their ring, a little down the way of the blood; open they lie along it. */
export function leafletsOf(
  { hinges: [a, b], way: [wx, wy], leaflet }: RightValve,
  open: number,
  outlet: boolean,
): readonly [Leaflet, Leaflet] {
  const [dx, dy] = [(b[0] - a[0]) / 2, (b[1] - a[1]) / 2];
  const length = leaflet * Math.hypot(dx, dy);
  const shut = Math.acos(1 / leaflet);
  const angle = shut + (1.3 - shut) * open;
  const half = Math.hypot(dx, dy);
  const side = (hinge: Spot, sign: number): Leaflet => {
    const [ux, uy] = [(sign * dx) / half, (sign * dy) / half];
    const at = (part: number, turn: number): Spot => [
      hinge[0] + part * length * (ux * Math.cos(turn) + wx * Math.sin(turn)),
      hinge[1] + part * length * (uy * Math.cos(turn) + wy * Math.sin(turn)),
    ];
    // The outlet's pockets bulge against the way of the blood while shut.
    return [hinge, at(0.55, angle + (outlet ? -0.5 * (1 - open) : 0.3)), at(1, angle)];
  };
  return [side(a, 1), side(b, -1)];
}
