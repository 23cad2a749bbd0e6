/** A lung: its lobes as a pale ground, and in them the trees of arteries and veins. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Theme } from "../theme/theme.ts";
import type { LungShape } from "./lung-shape.ts";
import { paintOrgan } from "./paint-organ.ts";
import { LIGHT, laidOver, scratch } from "./paint-tube.ts";
import { type Ink, trace } from "./painted-sheet.ts";
import { type Round, tissue } from "./tones.ts";
import type { Tree } from "./tree.ts";

interface Bloods {
  readonly arteries: Round;
  readonly veins: Round;
}

/** mm of the thinnest twig */
const THINNEST = 0.5;

/** @param size mm of the body for one of a 5-year-old */
export function paintLung(ink: Ink, lung: LungShape, bloods: Bloods, size: number, theme: Theme): void {
  const look = tissue("lung", theme);
  paintOrgan(ink, lung.outline, look, { depth: 11 * size, alpha: 0.86, edge: 0.6 * size });
  ink.save();
  trace(ink, lung.outline, true);
  ink.clip();
  for (const fissure of lung.fissures) {
    trace(ink, fissure);
    ink.lineWidth = 1.8 * size;
    ink.strokeStyle = look.shade;
    ink.globalAlpha = 0.5;
    ink.stroke();
    ink.lineWidth = 0.55 * size;
    ink.strokeStyle = look.edge;
    ink.globalAlpha = 0.6;
    ink.stroke();
  }
  ink.restore();
  paintTree(ink, lung.veins, { tones: bloods.veins, part: 0.8 }, size);
  paintTree(ink, lung.arteries, { tones: bloods.arteries, part: 1 }, size);
  // At the hilum the veins' trunks lie before the arteries.
  for (const { at, parent } of lung.veins.nodes) {
    if (parent >= 0) continue;
    const reach = TRUNK * size;
    const [x, y] = at;
    const bounds = [x - reach, y - reach, x + reach, y + reach] as const;
    const own = scratch(ink, bounds);
    paintTree(own, lung.veins, { tones: bloods.veins, part: 0.8 }, size);
    const fall = own.createRadialGradient(x, y, reach / 2, x, y, reach);
    fall.addColorStop(0, "#000");
    fall.addColorStop(1, "#0000");
    own.globalCompositeOperation = "destination-in";
    own.fillStyle = fall;
    own.fillRect(x - reach, y - reach, 2 * reach, 2 * reach);
    laidOver(ink, own, bounds);
  }
}

/** mm of a 5-year-old from its root over which a vein lies before the arteries, and sinks behind them */
const TRUNK = 17;

/** Of its stem's width that a branch still has a step on. */
const FUNNEL = 0.74;
/** Tone, part of the width, mm beyond it, and how far it lies towards the light. */
const PASSES = [
  ["wall", 1, 0.9, 0],
  ["edge", 0.96, 0, 0],
  ["body", 0.68, 0, 0.1],
  ["light", 0.3, 0, 0.2],
] as const;

interface TreeLook {
  readonly tones: Round;
  /** of a node's width */
  readonly part: number;
}

/** Wall, body and light of all twigs, each in its own pass, so that forks join without seams. */
function paintTree(ink: Ink, { nodes }: Tree, { tones, part }: TreeLook, size: number): void {
  // A branch leaves its stem as a funnel.
  const widths: number[] = [];
  for (const { parent, width } of nodes)
    widths.push(Math.max(width, parent < 0 ? 0 : FUNNEL * (widths[parent] ?? width)));
  for (const [tone, wide, more, aside] of PASSES) {
    ink.strokeStyle = tones[tone];
    for (const [i, { at, parent }] of nodes.entries()) {
      if (parent < 0) continue;
      const from = entryAt(nodes, parent);
      const drawn = Math.max(THINNEST * size, entryAt(widths, i) * part);
      const [dx, dy] = [aside * drawn * LIGHT[0], aside * drawn * LIGHT[1]];
      ink.lineWidth = drawn * wide + more * size * Math.min(1, drawn / (3 * size));
      ink.beginPath();
      ink.moveTo(from.at[0] + dx, from.at[1] + dy);
      ink.lineTo(at[0] + dx, at[1] + dy);
      ink.stroke();
    }
  }
}
