/** Organs of the belly and the brain, muted so that the vessels before them carry the picture. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { type Tissue, tissue } from "../anatomy/tones.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import {
  BRAIN,
  COLON,
  KIDNEYS,
  LIVER,
  type Outline,
  PANCREAS,
  SMALL_BOWEL,
  SPLEEN,
  STOMACH,
} from "./outlines.ts";
import { fadeDown, muted, skinOf, upright } from "./paint-figure.ts";

/** Part of its own colour that an organ keeps before the skin's. */
const OWN = { dark: 0.62, light: 0.6 } as const;

function tonesIn(theme: Theme) {
  const ground = skinOf(theme).body;
  const own = (of: Tissue, part = 1): Tissue => muted(of, ground, part * OWN[theme.name]);
  const [flesh, liver, lung] = [tissue("atrium", theme), tissue("liver", theme), tissue("lung", theme)];
  const purple = (color: string) => mix(color, theme.colour.poor, 0.3);
  return {
    kidney: own(tissue("muscle", theme)),
    spleen: own({
      shade: purple(liver.shade),
      body: purple(liver.body),
      light: purple(liver.light),
      edge: purple(liver.edge),
    }),
    bowel: own(flesh, 0.8),
    pancreas: own({ ...flesh, body: tissue("sac", theme).body, light: tissue("sac", theme).light }, 0.9),
    brain: own(lung, 1.3),
  };
}

/** Behind all vessels. */
export function paintOrgansBehind(ink: Ink, theme: Theme): void {
  const tones = tonesIn(theme);
  for (const { points } of BRAIN) paintBrain(ink, upright(points), tones.brain);
  for (const { points } of KIDNEYS) paintKidney(ink, upright(points), tones.kidney);
  paintOrgan(ink, upright(SPLEEN.points), tones.spleen, { depth: 18, edge: 2 });
  paintOrgan(ink, upright(PANCREAS.points), tones.pancreas, { depth: 10, edge: 1.6 });
  paintBowel(ink, SMALL_BOWEL, tones.bowel);
}

/** Before the great vessels. */
export function paintOrgansBefore(ink: Ink, theme: Theme): void {
  const { bowel } = tonesIn(theme);
  paintOrgan(ink, upright(STOMACH.points), bowel, { depth: 24, edge: 2, alpha: 0.5 });
  // The liver's left lobe lies before the stomach.
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  trace(ink, upright(LIVER), true);
  ink.fill();
  ink.restore();
  paintColon(ink, COLON, bowel);
  fadeDown(ink, RECTUM);
}

/** Plane units between which the rectum is lost behind the pelvis. */
const RECTUM = { from: 1006, to: 1050 } as const;

/** With the folds of its surface. */
function paintBrain(ink: Ink, outline: readonly Point[], look: Tissue): void {
  paintOrgan(ink, outline, look, { depth: 16, edge: 1.8 });
  const [cx, cy] = middleOf(outline);
  ink.save();
  trace(ink, outline, true);
  ink.clip();
  ink.strokeStyle = look.edge;
  ink.globalAlpha = 0.4;
  ink.lineWidth = 1.6;
  for (const size of [0.82, 0.6, 0.38]) {
    trace(
      ink,
      outline.map(([x, y], i): Point => {
        const fold = size * (1 + 0.09 * Math.sin(i * 0.5 + 9 * size));
        return [cx + fold * (x - cx), cy + fold * (y - cy)];
      }),
      true,
    );
    ink.stroke();
  }
  ink.restore();
}

/** Its cortex, lighter within, where the pyramids and the hilum's hollow lie. */
function paintKidney(ink: Ink, outline: readonly Point[], look: Tissue): void {
  paintOrgan(ink, outline, look, { depth: 20, edge: 2.2 });
  const [cx, cy] = middleOf(outline);
  const towards = cx < 500 ? 1 : -1;
  ink.save();
  ink.globalAlpha = 0.55;
  ink.fillStyle = look.light;
  trace(
    ink,
    outline.map(([x, y]): Point => [cx + towards * 7 + 0.5 * (x - cx), cy + 0.58 * (y - cy)]),
    true,
  );
  ink.fill();
  ink.restore();
}

const middleOf = (outline: readonly Point[]): Point => {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
};

/** Strokes of which a tube's round is made: width as part of its own, from its colours, moved towards the light. */
function paintBowel(ink: Ink, { points, width = 0 }: Outline, { edge, shade, body, light }: Tissue): void {
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

/** Plane units from one fold of the colon to the next. */
const HAUSTRUM = 27;

/** A wider tube, drawn in by folds, with a band of muscle along it. */
function paintColon(ink: Ink, colon: Outline, look: Tissue): void {
  paintBowel(ink, colon, look);
  const { points, width = 0 } = colon;
  const line = upright(points);
  ink.strokeStyle = look.edge;
  ink.lineWidth = 2;
  ink.save();
  ink.globalAlpha = 0.75;
  // Samples lie 3 units apart.
  for (let i = 6; i < line.length - 4; i += HAUSTRUM / 3) {
    const [[ax, ay], [bx, by]] = [entryAt(line, i - 1), entryAt(line, i + 1)];
    const step = Math.hypot(bx - ax, by - ay) || 1;
    const [x, y] = entryAt(line, i);
    for (const side of [-0.49, 0.49]) {
      const [nx, ny] = [(-(by - ay) / step) * side * width, ((bx - ax) / step) * side * width];
      ink.beginPath();
      ink.moveTo(x + nx, y + ny);
      ink.quadraticCurveTo(x + 0.6 * nx + 3, y + 0.6 * ny, x + 0.42 * nx, y + 0.42 * ny);
      ink.stroke();
    }
  }
  ink.globalAlpha = 0.5;
  trace(ink, line);
  ink.lineWidth = 3;
  ink.strokeStyle = look.light;
  ink.stroke();
  ink.restore();
}
