/** Muscles of the leg with their fibres, and the calf's near head from its origin to the tendon. */
import { eraseAlong, type Ink, trace } from "../anatomy/painted-sheet.ts";
import { type Tissue, tissue } from "../anatomy/tones.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { GOLDEN } from "../drawing/even-spread.ts";
import type { Theme } from "../theme/theme.ts";
import { ACHILLES_TENDON, INNER_HEAD } from "./leg-parts.ts";
import { legTissue } from "./leg-tones.ts";
import { paintRounded } from "./paint-rounded.ts";
import { along, outlineOf, type Part } from "./rounded.ts";

/** Plane units of the line around a part. */
export const EDGE = 2;
/** Fibres of a muscle, each as far from one border to the other. */
const FIBRES = 15;
/** Plane units: heights between which fibres end and tendon begins, and how many of both stand side by side. */
const MUSCLE_ENDS = [470, 548] as const;
const TEETH = 6;

/** The calf muscle's near head, which crosses before the vein, and the tendon into which it passes. */
export function paintNearHead(ink: Ink, theme: Theme): void {
  const tendon = legTissue("tendon", theme);
  paintRounded(ink, ACHILLES_TENDON, tendon, EDGE);
  paintGrain(ink, ACHILLES_TENDON, { count: 8, width: 1 }, tendon);
  const ends = fibresEnd(INNER_HEAD);
  ink.save();
  trace(ink, [[0, 0], ...ends, [400, 0]], true);
  ink.clip();
  paintMuscle(ink, INNER_HEAD, theme);
  paintOrigin(ink, theme);
  trace(ink, ends);
  ink.lineWidth = EDGE;
  ink.strokeStyle = tissue("muscle", theme).shade;
  ink.stroke();
  ink.restore();
}

/** Part of a muscle's length over which it springs from bone as tendon, in so many strands; and x, plane units, between which that melts into the bone. */
const ORIGIN = { part: 0.11, strands: 44, melts: [290, 306] } as const;

/** The near head seizes the condyle with a sheet of tendon, which goes over into its fibres. */
function paintOrigin(ink: Ink, theme: Theme): void {
  const { light, body, shade } = legTissue("tendon", theme);
  const { part, strands } = ORIGIN;
  for (let i = 0; i < strands; i++) {
    const line = along(INNER_HEAD, (i + 0.5) / strands);
    const to = Math.round(line.length * part * (0.7 + ((i * GOLDEN) % 1)));
    for (let k = 1; k < to; k++) {
      trace(ink, line.slice(k - 1, k + 1));
      ink.lineWidth = 3.2 * (1 - 0.8 * (k / to));
      ink.strokeStyle = i % 4 === 0 ? shade : i % 2 ? light : body;
      ink.globalAlpha = 0.85 * (1 - 0.6 * (k / to));
      ink.stroke();
    }
  }
  const [from, to] = ORIGIN.melts;
  ink.globalAlpha = 1;
  eraseAlong(ink, [from, 0], [to, 0], [from, 0, from + 60, 160]);
}

/** Where a muscle's fibres end, some lower than others, and tendon reaches up between them. */
function fibresEnd(part: Part): readonly Spot[] {
  const [high, low] = MUSCLE_ENDS;
  return Array.from({ length: 2 * TEETH + 1 }, (_, i): Spot => {
    const height = (i % 2 ? low : high) - 40 * ((i * GOLDEN) % 1);
    const line = along(part, (1.4 * i) / (2 * TEETH) - 0.2);
    return line.reduce((near, spot) =>
      Math.abs(spot[1] - height) < Math.abs(near[1] - height) ? spot : near,
    );
  });
}

export function paintMuscle(
  ink: Ink,
  part: Part,
  theme: Theme,
  tint = (tones: Tissue): Tissue => tones,
): void {
  const own = tissue("muscle", theme);
  const tones = tint({ ...own, edge: theme.name === "dark" ? own.shade : own.edge });
  paintRounded(ink, part, tones, EDGE);
  paintGrain(ink, part, { count: FIBRES, width: 1.1 }, tones);
}

/** Fibres along a part. */
function paintGrain(
  ink: Ink,
  part: Part,
  { count, width }: { readonly count: number; readonly width: number },
  { shade, light }: Tissue,
): void {
  ink.save();
  trace(ink, outlineOf(part), true);
  ink.clip();
  for (let i = 1; i < count; i++) {
    trace(ink, along(part, (i + 0.5 * ((i * GOLDEN) % 1)) / count));
    ink.globalAlpha = 0.2 + 0.25 * ((i * GOLDEN) % 1);
    ink.lineWidth = width;
    ink.strokeStyle = i % 3 === 0 ? light : shade;
    ink.stroke();
  }
  ink.restore();
}
