/** A short piece of the tube or chamber seen from above its rim, to scale: wall, blood in the opening and in a window, the body's own lower vein dashed. */
import type { Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import { fromLitresPerMinute, fromSquareMillimetre, toMillimetre } from "../../sim/units.ts";
import { roundOf, type Tissue, tissue } from "../anatomy/tones.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { dashes } from "../drawing/plot.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** CSS px: middle and upper end, height in all, and px for each mm. */
export interface TubePlace {
  readonly x: number;
  readonly top: number;
  readonly height: number;
  readonly perMillimetre: number;
  readonly type: number;
}

/** How far its round opening is seen from the side: height for width. */
const TILT = 0.3;
/** Half of the window's width, in parts of the tube's. */
const WINDOW = 0.62;
/** A graft's wall, quieter than the leaflets that it shares its edge with. */
const CLOTH = {
  dark: { body: "#b9a893", light: "#d8cab6", shade: "#5d5044" },
  light: { body: "#e9e2d6", light: "#fffdf8", shade: "#a89c8c" },
} as const;
/** Strips of which a round is made. */
const STRIPS = 14;

/** Where the parts of a tube lie: middle of its rim, half its lumen's width, its wall, and the window's upper and lower edge at its sides. */
export function tubeLayout({ request }: SweepPoint, { top, height, perMillimetre, type }: TubePlace) {
  const { trunk, ivc } = pathwaySizes(request);
  const half = (trunk / 2) * perMillimetre;
  const wall = Math.max(3, type * 0.24);
  const rim = top + TILT * half + wall;
  const foot = top + height - TILT * (half + wall);
  return {
    half,
    wall,
    rim,
    foot,
    vein: (ivc / 2) * perMillimetre,
    window: { top: rim + 0.42 * TILT * half + 0.16 * half, bottom: foot, half: WINDOW * half },
  };
}

/** mm/s: what flows up through the section that it has. */
export const speedIn = ({ request, circulation }: SweepPoint): number => {
  if (!circulation) return 0;
  const { trunk } = pathwaySizes(request);
  const area = fromSquareMillimetre((Math.PI * trunk * trunk) / 4);
  return toMillimetre(fromLitresPerMinute(circulation.flows.ivc) / area);
};

/** Without blood in it until the state is solved. */
export function drawTubeSegment(ink: Graphics, point: SweepPoint, place: TubePlace, theme: Theme): void {
  const { colour } = theme;
  const { x } = place;
  const { half, wall, rim, foot, vein, window } = tubeLayout(point, place);
  const outside = half + wall;
  const isSewn = point.request.stage !== "atriopulmonary";
  const cloth = tissue(isSewn ? "valve" : "atrium", theme);
  const look: Tissue = isSewn ? { ...cloth, ...CLOTH[theme.name] } : cloth;
  const edge = mix(look.edge, colour.ink, 0.3);
  const { circulation } = point;
  const blood = circulation ? roundOf(circulation.saturations.ivc, theme) : null;
  const front = (radius: number, y: number): Spot[] =>
    Array.from({ length: 25 }, (_, i): Spot => {
      const turn = Math.PI * (1 - i / 24);
      return [x + radius * Math.cos(turn), y + TILT * radius * Math.sin(turn)];
    });
  const side = [[x - outside, rim] as const, ...front(outside, foot), [x + outside, rim] as const];
  shade(
    ink,
    outside,
    (from, to) => [
      [x + from, rim],
      [x + to, rim],
      [x + to, foot + drop(to, outside)],
      [x + from, foot + drop(from, outside)],
    ],
    // Lightest left of the middle, where the light falls.
    (across) => {
      const away = Math.abs(across + 0.5);
      return away < 0.4
        ? mix(look.light, look.body, away / 0.4)
        : mix(look.body, look.shade, Math.min(1, 0.75 * (away - 0.4)));
    },
  );
  if (isSewn)
    for (let y = rim + 5; y < foot + 1; y += 6) {
      line(ink, front(outside, y));
      ink.stroke({ color: edge, width: 1, alpha: 0.22 });
    }
  ink.poly(side.flat(), false).stroke({ color: edge, width: 1.6 });
  const fill = (across: number) => (blood ? mix(blood.edge, blood.body, 0.5 + 0.5 * across) : colour.lumen);
  // The window: the far wall's blood, darker on the side that the light does not reach.
  shade(
    ink,
    window.half,
    (from, to) => [
      [x + from, window.top + drop(from, outside)],
      [x + to, window.top + drop(to, outside)],
      [x + to, window.bottom + drop(to, outside)],
      [x + from, window.bottom + drop(from, outside)],
    ],
    fill,
  );
  const cut = [
    ...arc(x, window.half, (u) => window.top + drop(u, outside)),
    ...arc(x, window.half, (u) => window.bottom + drop(u, outside)).reverse(),
  ];
  ink.poly(cut.flat()).stroke({ color: edge, width: 1.2 });
  // The rim, and the blood within it.
  ink
    .ellipse(x, rim, outside, TILT * outside)
    .fill({ color: mix(look.body, look.light, 0.7) })
    .stroke({ color: edge, width: 1.6 });
  ink.ellipse(x, rim, half, TILT * half).fill({ color: fill(-0.6) });
  if (blood)
    for (let part = 0.86; part > 0.2; part -= 0.16)
      ink
        .ellipse(x + 0.06 * half, rim + 0.06 * TILT * half, part * half, part * TILT * half)
        .fill({ color: blood.body, alpha: 0.3 });
  ink.ellipse(x, rim, half, TILT * half).stroke({ color: edge, width: 1.2 });
  dashed(ink, [x, rim, vein], place.type, theme);
}

/** How much lower a round's front lies `u` px beside its middle. */
const drop = (u: number, radius: number): number => TILT * Math.sqrt(Math.max(0, radius * radius - u * u));

const arc = (x: number, half: number, y: (u: number) => number): Spot[] =>
  Array.from({ length: 13 }, (_, i): Spot => {
    const u = half * (i / 6 - 1);
    return [x + u, y(u)];
  });

/** Upright strips side by side. @param colourAt -1 at the left edge .. 1 at the right */
function shade(
  ink: Graphics,
  half: number,
  strip: (from: number, to: number) => readonly Spot[],
  colourAt: (across: number) => string,
): void {
  const turn = (i: number) => -half * Math.cos((Math.PI * i) / STRIPS);
  for (let i = 0; i < STRIPS; i++) {
    // Each reaches a little under the next, so that no crack shows between them.
    const to = Math.min(half, turn(i + 1) + 0.6);
    ink.poly(strip(turn(i), to).flat()).fill({ color: colourAt((turn(i) + to) / (2 * half)) });
  }
}

function dashed(
  ink: Graphics,
  [x, y, radius]: readonly [x: number, y: number, radius: number],
  type: number,
  { colour }: Theme,
): void {
  const around: [number, number][] = Array.from({ length: 61 }, (_, k) => [
    x + radius * Math.cos((k * Math.PI) / 30),
    y + TILT * radius * Math.sin((k * Math.PI) / 30),
  ]);
  const pieces = dashes(around, [type * 0.36, type * 0.26]);
  const width = Math.max(2, type * 0.15);
  for (const [more, color] of [
    [2.6, colour.stage],
    [0, colour.poor],
  ] as const)
    for (const piece of pieces) {
      line(ink, piece);
      ink.stroke({ color, width: width + more });
    }
}

function line(ink: Graphics, points: readonly (readonly [number, number])[]): void {
  ink.moveTo(...entryAt(points, 0));
  for (const point of points.slice(1)) ink.lineTo(...point);
}
