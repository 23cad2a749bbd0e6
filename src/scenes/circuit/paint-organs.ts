/** Organs of the belly and the brain, muted so that the vessels before them carry the picture. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { type Tissue, tissue } from "../anatomy/tones.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { paintLegs } from "./legs.ts";
import {
  APPENDIX,
  BLADDER,
  BRAIN,
  COLON,
  DUODENUM,
  GALLBLADDER,
  KIDNEYS,
  LIVER,
  OESOPHAGUS,
  type Outline,
  PANCREAS,
  SMALL_BOWEL,
  SPLEEN,
  STOMACH,
  URETERS,
} from "./outlines.ts";
import { fadeDown, muted, skinOf, upright } from "./paint-figure.ts";
import type { Proportions } from "./proportions.ts";

/** Bile shows through a gallbladder's wall. */
const GREEN = { shade: "#5d7040", body: "#7f9355", light: "#a9b883" } as const;

/** A pancreas' ochre. */
const OCHRE = { shade: "#b5805c", body: "#dfb48e", light: "#f2d8be", edge: "#96664a" } as const;

/** Part of its own colour that an organ keeps before the skin's. */
const OWN = { dark: 0.62, light: 0.6 } as const;

function tonesIn(theme: Theme) {
  const ground = skinOf(theme).body;
  const own = (of: Tissue, part = 1): Tissue => muted(of, ground, part * OWN[theme.name]);
  const [flesh, liver, lung] = [tissue("atrium", theme), tissue("liver", theme), tissue("lung", theme)];
  const purple = (color: string) => mix(color, theme.colour.poor, 0.3);
  return {
    muscle: own(tissue("muscle", theme), 0.7),
    bone: own(legTissue("bone", theme), 0.8),
    kidney: own(tissue("muscle", theme), 1.35),
    gallbladder: own({ ...liver, body: GREEN.body, light: GREEN.light, shade: GREEN.shade }, 1.2),
    spleen: own({
      shade: purple(liver.shade),
      body: purple(liver.body),
      light: purple(liver.light),
      edge: purple(liver.edge),
    }),
    bowel: own(flesh, 0.8),
    pancreas: own(OCHRE, theme.name === "dark" ? 0.6 : 1.2),
    bladder: own(flesh, 0.66),
    brain: own(lung, 1.3),
  };
}

/** Behind all vessels. */
export function paintOrgansBehind(ink: Ink, proportions: Proportions, theme: Theme): void {
  const tones = tonesIn(theme);
  paintLegs(ink, proportions, tones.muscle, tones.bone);
  for (const { points } of BRAIN) paintBrain(ink, upright(points.map(proportions.carry)), tones.brain);
  paintBowel(ink, OESOPHAGUS, tones.bowel);
  for (const { points } of KIDNEYS) paintKidney(ink, upright(points), tones.kidney);
  paintOrgan(ink, upright(SPLEEN.points), tones.spleen, { depth: 18, edge: 2 });
  for (const ureter of URETERS) paintBowel(ink, ureter, tones.bladder);
  for (const bowel of [DUODENUM, ...SMALL_BOWEL]) paintBowel(ink, bowel, tones.bowel);
}

/** Before the great vessels. */
export function paintOrgansBefore(ink: Ink, theme: Theme): void {
  const { bowel, gallbladder, bladder, pancreas } = tonesIn(theme);
  // The portal vein comes together behind its neck, and the lower vena cava runs behind its head.
  paintPancreas(ink, upright(PANCREAS.points), pancreas);
  // The spleen's vessels are seen through it.
  paintOrgan(ink, upright(STOMACH.points), bowel, { depth: 24, edge: 2, alpha: 0.6 });
  paintOrgan(ink, upright(GALLBLADDER.points), gallbladder, { depth: 8, edge: 1.6 });
  // The liver's left lobe lies before the stomach.
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  trace(ink, upright(LIVER), true);
  ink.fill();
  ink.restore();
  paintBowel(ink, APPENDIX, bowel);
  paintColon(ink, COLON, bowel);
  fadeDown(ink, RECTUM);
  paintOrgan(ink, upright(BLADDER.points), bladder, { depth: 14, edge: 1.8 });
}

/** Lobules bulge along its border, samples of which lie 3 units apart, and part its surface. */
function paintPancreas(ink: Ink, outline: readonly Point[], look: Tissue): void {
  const bulging = outline.map(([x, y], i): Point => {
    const [[ax, ay], [bx, by]] = [
      entryAt(outline, (i + outline.length - 1) % outline.length),
      entryAt(outline, (i + 1) % outline.length),
    ];
    const out = (LOBULE * Math.abs(Math.sin(0.55 * i))) / (Math.hypot(bx - ax, by - ay) || 1);
    return [x + out * (by - ay), y - out * (bx - ax)];
  });
  paintOrgan(ink, bulging, look, { depth: 14, edge: 1.4, alpha: 0.72 });
  ink.save();
  trace(ink, bulging, true);
  ink.clip();
  ink.strokeStyle = look.edge;
  ink.globalAlpha = 0.35;
  ink.lineWidth = 1.2;
  bulging.forEach(([x, y], i) => {
    if (Math.abs(Math.sin(0.55 * i)) > 0.3) return;
    const [cx, cy] = entryAt(outline, (i + 4) % outline.length);
    const [dx, dy] = [cy - y, x - cx];
    ink.beginPath();
    ink.moveTo(x, y);
    ink.quadraticCurveTo(x + 0.6 * (cx - x) - dx, y + 0.6 * (cy - y) - dy, cx - 1.4 * dx, cy - 1.4 * dy);
    ink.stroke();
  });
  ink.restore();
}
/** Plane units by which a lobule stands out. */
const LOBULE = 2.2;

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

/** Pyramids of the medulla around the hilum's hollow, darker than the cortex. */
function paintKidney(ink: Ink, outline: readonly Point[], look: Tissue): void {
  paintOrgan(ink, outline, look, { depth: 16, edge: 2.2 });
  const [cx, cy] = middleOf(outline);
  const towards = cx < 500 ? 1 : -1;
  const around = (turn: number, part: number): Point => [
    cx + towards * (12 - 36 * part * Math.cos(turn)),
    cy + 66 * part * Math.sin(turn),
  ];
  for (let k = -PYRAMIDS; k <= PYRAMIDS; k++) {
    const turn = (k * 1.9) / PYRAMIDS;
    trace(
      ink,
      [around(turn, 0.22), around(turn - 0.3, 0.74), around(turn, 0.8), around(turn + 0.3, 0.74)],
      true,
    );
    ink.fillStyle = mix(look.shade, look.edge, 0.25);
    ink.fill();
  }
  trace(
    ink,
    [-1.6, -0.8, 0, 0.8, 1.6].map((turn) => around(turn, 0.24)).concat([around(Math.PI, 0.3)]),
    true,
  );
  ink.fillStyle = look.light;
  ink.fill();
}
/** On either side of the middle one. */
const PYRAMIDS = 3;

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

/** Plane units from one fold of the colon to the next, how far it is drawn in there, and how much wider the caecum is. */
const HAUSTRUM = 30;
const DRAWN_IN = 0.2;
const CAECUM = { wider: 0.3, over: 70 } as const;

/** Sacs between folds, and a band of muscle along them. Samples of its line lie 3 units apart. */
function paintColon(ink: Ink, { points, width = 0 }: Outline, { edge, shade, body, light }: Tissue): void {
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
