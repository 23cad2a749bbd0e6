/** The leg's still parts from back to front: skin and fat, bones, muscles with their tendons. Painted once for a size and a stage. */
import { entryAt } from "../../sim/checked/present.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { curve, type Spot } from "../drawing/curve-drawing.ts";
import { GOLDEN } from "../drawing/even-spread.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import {
  ARCH,
  BICEPS_FEMORIS,
  CALCANEUS,
  CONDYLES,
  DEEP_FLEXORS,
  FASCIA,
  FEMUR,
  FIBULA,
  GASTROCNEMIUS,
  INNER_TENDON,
  MALLEOLUS,
  MENISCI,
  MUSCLE_BED,
  NAIL,
  OUTER_FOOT,
  PAD,
  PATELLA,
  QUADRICEPS,
  SKIN,
  SOLE,
  SOLEUS,
  SUSTENTACULUM,
  TENDONS,
  TIBIA,
  TRIBUTARIES,
} from "./leg-parts.ts";
import { legTissue } from "./leg-tones.ts";
import { EDGE, paintMuscle } from "./paint-muscles.ts";
import { paintRounded } from "./paint-rounded.ts";
import { outlineOf, type Part } from "./rounded.ts";
import { paintThinVein } from "./thin-veins.ts";

/** Of a far part's colours, how much is lost in the tissue before it. */
const FAR = 0.42;

/** @param saturation percent, of the blood in the veins */
export function paintBehindVein(ink: Ink, saturation: number, theme: Theme): void {
  paintSkin(ink, theme);
  paintFar(ink, theme);
  const bone = legTissue("bone", theme);
  paintMuscle(ink, QUADRICEPS, theme);
  paintMuscle(ink, SOLE, theme);
  for (const { line, width } of TENDONS) paintTendon(ink, line, width, theme);
  for (const part of [FEMUR, CALCANEUS, SUSTENTACULUM, ...ARCH]) paintRounded(ink, part, bone, EDGE);
  paintCartilage(ink, entryAt(ARCH, 0), (y) => y < 836, theme);
  for (const part of [TIBIA, PATELLA]) paintRounded(ink, part, bone, EDGE);
  const swell = mix(bone.shade, bone.body, 0.55);
  for (const part of CONDYLES) paintRounded(ink, part, { ...bone, shade: swell, edge: swell }, 1);
  paintCartilage(ink, FEMUR, (y) => y > 92, theme);
  paintCartilage(ink, TIBIA, (y) => y < 153, theme);
  for (const part of MENISCI) paintRounded(ink, part, legTissue("tendon", theme), 1.2);
  paintTendon(ink, INNER_TENDON.line, INNER_TENDON.width, theme);
  paintRounded(ink, MALLEOLUS, { ...bone, shade: swell, edge: swell }, 1);
  trace(
    ink,
    outlineOf(MALLEOLUS).filter(([, y]) => y > 800),
  );
  ink.lineWidth = EDGE;
  ink.strokeStyle = bone.edge;
  ink.stroke();
  for (const vein of TRIBUTARIES.foot) paintThinVein(ink, vein, saturation, theme);
}

/** Behind the vein: the calf muscles but for the near head. */
export function paintCalfMuscles(ink: Ink, theme: Theme): void {
  paintMuscle(ink, SOLEUS, theme);
  paintMuscle(ink, GASTROCNEMIUS, theme);
}

/** Between the vein's front wall and the bones. */
export function paintDeepMuscles(ink: Ink, theme: Theme): void {
  paintMuscle(ink, DEEP_FLEXORS, theme);
  paintBehindMuscle(ink, FIBULA, theme);
}

/** How much of a bone is seen through what lies before it. */
const THROUGH = 0.24;

/** A bone behind muscle: faint, its outline dashed. */
function paintBehindMuscle(ink: Ink, part: Part, theme: Theme): void {
  const bone = legTissue("bone", theme);
  trace(ink, outlineOf(part), true);
  ink.globalAlpha = THROUGH;
  ink.fillStyle = bone.body;
  ink.fill();
  ink.globalAlpha = 1;
  ink.setLineDash([9, 6]);
  ink.lineWidth = 1.6;
  ink.strokeStyle = theme.name === "dark" ? bone.light : bone.edge;
  ink.stroke();
  ink.setLineDash([]);
}

function paintSkin(ink: Ink, theme: Theme): void {
  const skin = legTissue("skin", theme);
  const fat = legTissue("fat", theme);
  const fascia = legTissue("fascia", theme);
  ink.save();
  trace(ink, outlineOf(SKIN), true);
  ink.fillStyle = fat.body;
  ink.fill();
  ink.clip();
  paintLobules(ink, fat);
  trace(ink, outlineOf(FASCIA), true);
  ink.fillStyle = fascia.body;
  ink.fill();
  ink.lineWidth = 4.5;
  ink.strokeStyle = fascia.edge;
  ink.stroke();
  ink.lineWidth = 2.5;
  ink.strokeStyle = fascia.light;
  ink.stroke();
  trace(ink, outlineOf(SKIN), true);
  for (const [width, colour] of [
    [15, skin.shade],
    [12, skin.body],
    [3.5, skin.edge],
  ] as const) {
    ink.lineWidth = width;
    ink.strokeStyle = colour;
    ink.stroke();
  }
  ink.restore();
  trace(ink, NAIL);
  ink.lineWidth = 1.2;
  ink.strokeStyle = skin.edge;
  ink.stroke();
}

function paintPad(ink: Ink, theme: Theme): void {
  const fat = legTissue("fat", theme);
  ink.save();
  trace(ink, outlineOf(PAD), true);
  ink.clip();
  ink.fillStyle = fat.body;
  ink.fill();
  paintLobules(ink, fat);
  ink.restore();
}

/** Fat under the skin: lobules, which lie in no rows. */
function paintLobules(ink: Ink, { shade, light }: Tissue): void {
  const [across, down] = [46, 76];
  for (let i = 0; i < across * down; i++) {
    const [column, row] = [i % across, Math.floor(i / across)];
    const [dx, dy] = [(i * GOLDEN) % 1, (i * GOLDEN * 7.3) % 1];
    ink.beginPath();
    ink.ellipse(
      84 + 14 * (column + 0.7 * dx),
      14 * (row + 0.7 * dy) - 20,
      5 + 3 * dy,
      4 + 3 * dx,
      3 * dx,
      0,
      7,
    );
    ink.globalAlpha = 0.5;
    ink.fillStyle = light;
    ink.fill();
    ink.globalAlpha = 0.32;
    ink.lineWidth = 1;
    ink.strokeStyle = shade;
    ink.stroke();
  }
  ink.globalAlpha = 1;
}

/** Where a bone glides on another. */
function paintCartilage(ink: Ink, part: Part, glides: (y: number) => boolean, theme: Theme): void {
  const { light, shade } = legTissue("tendon", theme);
  ink.save();
  trace(ink, outlineOf(part), true);
  ink.clip();
  ink.globalAlpha = 0.8;
  for (const [width, colour] of [
    [11, shade],
    [9, light],
  ] as const)
    for (const border of [part.left, part.right]) {
      const face = border.filter(([, y]) => glides(y));
      trace(ink, face);
      ink.lineWidth = width;
      ink.strokeStyle = colour;
      ink.stroke();
    }
  ink.restore();
  trace(ink, outlineOf(part), true);
  ink.lineWidth = EDGE;
  ink.strokeStyle = legTissue("bone", theme).edge;
  ink.stroke();
}

/** What lies farther from us than the bones and the vein. */
function paintFar(ink: Ink, theme: Theme): void {
  const veil = legTissue("fascia", theme).body;
  const far = ({ shade, body, light, edge }: Tissue): Tissue => ({
    shade: mix(shade, veil, FAR),
    body: mix(body, veil, FAR),
    light: mix(light, veil, FAR),
    edge: mix(edge, veil, FAR),
  });
  const bone = far(legTissue("bone", theme));
  paintMuscle(ink, BICEPS_FEMORIS, theme, far);
  paintRounded(ink, FIBULA, bone, EDGE);
  paintPad(ink, theme);
  paintMuscle(ink, MUSCLE_BED, theme, shaded);
  paintRounded(ink, OUTER_FOOT, bone, EDGE);
}

/** In the shade of what is before it. */
const shaded = ({ shade, body, edge }: Tissue): Tissue => ({
  shade,
  body: mix(shade, body, 0.3),
  light: mix(shade, body, 0.6),
  edge,
});

function paintTendon(ink: Ink, spots: readonly Spot[], size: number, theme: Theme): void {
  const { edge, shade, body, light } = legTissue("tendon", theme);
  const { x, y } = curve(spots);
  trace(
    ink,
    [...x].map((each, i): Spot => [each, entryAt(y, i)]),
  );
  for (const [width, colour] of [
    [size + 2.5, edge],
    [size, shade],
    [0.7 * size, body],
    [0.25 * size, light],
  ] as const) {
    ink.lineWidth = width;
    ink.strokeStyle = colour;
    ink.stroke();
  }
}
