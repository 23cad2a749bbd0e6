/** A lung: its lobes as a pale ground, and in them the trees of arteries and veins. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { LungShape } from "./lung-shape.ts";
import { paintOrgan } from "./paint-organ.ts";
import { LIGHT } from "./paint-tube.ts";
import { type Ink, trace } from "./painted-sheet.ts";
import { hollow, type Round, tissue } from "./tones.ts";
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
  paintTree(ink, lung.arteries, { tones: bloods.arteries, part: 1, root: hollow(theme) }, size);
}

/** mm over which an artery turns from the hollow vessel that feeds it into one filled with its blood */
const TURNS = 34;
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
  /** tones of the vessel that the tree goes on from; its own when left out */
  readonly root?: Round;
}

/** Wall, body and light of all twigs, each in its own pass, so that forks join without seams. */
function paintTree(ink: Ink, { nodes }: Tree, { tones, part, root = tones }: TreeLook, size: number): void {
  // Of a lung's arteries the stem is the last node; its veins do not turn.
  const [x, y] = lastOf(nodes).at;
  for (const [tone, wide, more, aside] of PASSES) {
    for (const { at, parent, width } of nodes) {
      if (parent < 0) continue;
      const turned = Math.hypot(at[0] - x, at[1] - y) / TURNS / size;
      ink.strokeStyle = mix(root[tone], tones[tone], Math.min(1, turned));
      const from = entryAt(nodes, parent);
      const drawn = Math.max(THINNEST * size, width * part);
      const [dx, dy] = [aside * drawn * LIGHT[0], aside * drawn * LIGHT[1]];
      ink.lineWidth = drawn * wide + more * size * Math.min(1, drawn / (3 * size));
      ink.beginPath();
      ink.moveTo(from.at[0] + dx, from.at[1] + dy);
      ink.lineTo(at[0] + dx, at[1] + dy);
      ink.stroke();
    }
  }
}
