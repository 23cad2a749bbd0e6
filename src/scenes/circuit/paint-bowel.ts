/** Tubes of the belly: the bowel with its round, and the colon's sacs. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { mix } from "../theme/colour.ts";
import type { Outline } from "./outlines.ts";
import { upright } from "./paint-figure.ts";

/** Strokes of which a tube's round is made: width as part of its own, from its colours, moved towards the light. */
export function paintBowel(
  ink: Ink,
  { points, width = 0 }: Outline,
  { edge, shade, body, light }: Tissue,
): void {
  const line = upright(points);
  for (const [part, colour, lift] of [
    [1, edge, 0],
    [0.88, shade, 0],
    [0.74, mix(shade, body, 0.6), 0.03],
    [0.56, body, 0.06],
    [0.34, mix(body, light, 0.5), 0.1],
    [0.14, light, 0.14],
  ] as const) {
    trace(
      ink,
      line.map(([x, y]): Point => [x - lift * width, y + lift * width]),
    );
    ink.lineWidth = part * width;
    ink.strokeStyle = colour;
    ink.stroke();
  }
}

/** Plane units from one fold of the colon to the next, how far it is drawn in there, and how much wider the caecum is. */
const HAUSTRUM = 30;
const DRAWN_IN = 0.2;
const CAECUM = { wider: 0.3, over: 70 } as const;

/** Sacs between folds, and a band of muscle along them. Samples of its line lie 3 units apart. */
export function paintColon(
  ink: Ink,
  { points, width = 0 }: Outline,
  { edge, shade, body, light }: Tissue,
): void {
  const line = upright(points);
  const spotAt = (i: number, across: number, lift = 0): Point => {
    const [[ax, ay], [bx, by]] = [
      entryAt(line, Math.max(0, i - 1)),
      entryAt(line, Math.min(line.length - 1, i + 1)),
    ];
    const step = Math.hypot(bx - ax, by - ay) || 1;
    const [x, y] = entryAt(line, i);
    const sac = 1 - DRAWN_IN + DRAWN_IN * Math.sqrt(Math.abs(Math.sin((Math.PI * 3 * i) / HAUSTRUM)));
    const blind = Math.max(0, 1 - (3 * i) / CAECUM.over);
    // Its blind end is round.
    const round = Math.sqrt(
      Math.min(1, (3 * i + 2) / (0.6 * width)) * (2 - Math.min(1, (3 * i + 2) / (0.6 * width))),
    );
    const half = (width / 2) * sac * (1 + CAECUM.wider * blind) * round * across;
    return [x - ((by - ay) / step) * half - lift * width, y + ((bx - ax) / step) * half + lift * width];
  };
  const band = (part: number, lift: number): Point[] => [
    ...line.map((_, i) => spotAt(i, part, lift)),
    ...line.map((_, i) => spotAt(line.length - 1 - i, -part, lift)),
  ];
  for (const [part, colour, lift] of [
    [1.06, edge, 0],
    [0.95, shade, 0],
    [0.78, mix(shade, body, 0.6), 0.02],
    [0.58, body, 0.05],
    [0.34, mix(body, light, 0.5), 0.08],
  ] as const) {
    trace(ink, band(part, lift), true);
    ink.fillStyle = colour;
    ink.fill();
  }
  ink.save();
  ink.strokeStyle = edge;
  ink.lineWidth = 1.6;
  ink.globalAlpha = 0.55;
  for (let i = HAUSTRUM / 3; i < line.length; i += HAUSTRUM / 3)
    for (const side of [-1, 1]) {
      ink.beginPath();
      ink.moveTo(...spotAt(i, side));
      const [x, y] = spotAt(Math.min(line.length - 1, i + 2), 0.6 * side);
      ink.quadraticCurveTo(x, y, ...spotAt(i, 0.25 * side));
      ink.stroke();
    }
  ink.globalAlpha = 0.5;
  trace(ink, line.slice(6));
  ink.lineWidth = 3;
  ink.strokeStyle = light;
  ink.stroke();
  ink.restore();
}
