/** The still parts of the tissue, painted once: behind its cells the interstitium with its fibres; before them fibres, lymph vessels, the serous cavity with its drain. */
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import type { Curve, Spot } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { paintLymph } from "./paint-lymph.ts";
import { type TissuePlan, WIDTH } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";
import { strokeBeside } from "./tube.ts";

/** Water between the cells tints what is seen there. */
const WET = 0.09;

export function paintGround(ink: Ink, { height, fibres }: TissuePlan, theme: Theme): void {
  const tone = tissueTone("ground", theme);
  const deep = ink.createLinearGradient(0, 0, 0, height);
  deep.addColorStop(0, mix(tone.body, theme.colour.pressure, WET));
  deep.addColorStop(1, mix(tone.shade, theme.colour.pressure, WET));
  ink.fillStyle = deep;
  ink.fillRect(0, 0, WIDTH, height);
  for (const line of fibres) paintBundle(ink, line, tone.light, 0.8);
}

export function paintTissue(ink: Ink, plan: TissuePlan, theme: Theme): void {
  const tone = tissueTone("ground", theme);
  plan.fibres.forEach((line, i) => {
    if (i % 3 === 1) paintBundle(ink, line, tone.light, 0.38);
  });
  paintCavity(ink, plan, theme);
  paintLymph(ink, plan, theme);
}

/** Collagen: a few strands side by side. */
function paintBundle(ink: Ink, line: Curve, colour: string, alpha: number): void {
  ink.globalAlpha = alpha;
  for (const across of [-3, 0, 3.5]) strokeBeside(ink, line, across, across === 0 ? 2.2 : 1.3, colour);
  ink.globalAlpha = 1;
}

/** Plane units: round of the cavity's corners, thickness of its lining, and between two of the lining's cells on top. */
const ROUND = 30;
const LINING = 9;
const PORE = 16;
const LINING_CELLS = 6;

/** Where the rest collects: a cavity lined by flat cells, open between them to the tissue above, with a drain. */
function paintCavity(ink: Ink, { cavity, drain }: TissuePlan, theme: Theme): void {
  const { left, right, top, bottom } = cavity;
  const tone = tissueTone("endothelium", theme);
  const nucleus = tissueTone("nucleus", theme);
  const inside = tissueTone("cavity", theme);
  for (const [width, colour] of [
    [34, tone.edge],
    [30, tone.body],
    [22, inside.body],
  ] as const)
    strokeBeside(ink, drain, 0, width, colour);
  ink.beginPath();
  ink.roundRect(left, top, right - left, bottom - top, ROUND);
  const air = ink.createLinearGradient(0, top, 0, bottom);
  air.addColorStop(0, inside.light);
  air.addColorStop(1, inside.body);
  ink.fillStyle = air;
  ink.fill();
  // Side and bottom walls in one, the upper one cell by cell.
  trace(ink, wallOf(cavity));
  for (const [width, colour] of [
    [LINING + 3, tone.edge],
    [LINING, tone.body],
    [0.4 * LINING, tone.light],
  ] as const) {
    ink.lineWidth = width;
    ink.strokeStyle = colour;
    ink.stroke();
  }
  const wide = (right - left - 2 * ROUND) / LINING_CELLS;
  for (let k = 0; k < LINING_CELLS; k++) {
    const middle = left + ROUND + (k + 0.5) * wide;
    for (const [grow, colour] of [
      [1.5, tone.edge],
      [0, tone.body],
    ] as const) {
      ink.beginPath();
      ink.ellipse(middle, top, (wide - PORE) / 2 + grow, LINING / 2 + 1.5 + grow, 0, 0, 2 * Math.PI);
      ink.fillStyle = colour;
      ink.fill();
    }
    ink.beginPath();
    ink.ellipse(middle, top, 11, 4, 0, 0, 2 * Math.PI);
    ink.fillStyle = nucleus.body;
    ink.fill();
  }
  // The drain's mouth.
  strokeBeside(ink, drain, 0, 22, inside.body);
}

/** From the upper left corner down, along the bottom and up to the upper right one. */
function wallOf({ left, right, top, bottom }: TissuePlan["cavity"]): readonly Spot[] {
  const corner = (x: number, y: number, from: number): readonly Spot[] =>
    Array.from({ length: 9 }, (_, i): Spot => {
      const angle = from - ((i / 8) * Math.PI) / 2;
      return [x + ROUND * Math.cos(angle), y + ROUND * Math.sin(angle)];
    });
  return [
    ...corner(left + ROUND, top + ROUND, 1.5 * Math.PI),
    ...corner(left + ROUND, bottom - ROUND, Math.PI),
    ...corner(right - ROUND, bottom - ROUND, 0.5 * Math.PI),
    ...corner(right - ROUND, top + ROUND, 0),
  ];
}
