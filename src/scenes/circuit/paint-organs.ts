/** Organs of the belly and the brain, muted so that the vessels before them carry the picture. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { type Tissue, tissue } from "../anatomy/tones.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { GUT_ARTERIES, PORTAL_VEINS } from "./belly-vessels.ts";
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
  PANCREAS,
  SMALL_BOWEL,
  SPLEEN,
  STOMACH,
  URETERS,
} from "./outlines.ts";
import { paintBowel, paintColon } from "./paint-bowel.ts";
import { fadeDown, muted, skinOf, upright } from "./paint-figure.ts";
import type { Proportions } from "./proportions.ts";
import type { Vessel } from "./vessel.ts";

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
  for (const bowel of SMALL_BOWEL) paintBowel(ink, bowel, tones.bowel);
}

/** Before the great vessels. @param mesenteric the bowel's, where they are drawn */
export function paintOrgansBefore(ink: Ink, theme: Theme, mesenteric = MESENTERIC): void {
  const { bowel, gallbladder, bladder, pancreas } = tonesIn(theme);
  paintBowel(ink, DUODENUM, bowel);
  paintPancreas(ink, upright(PANCREAS.points), pancreas);
  showVessels(ink, mesenteric);
  paintOrgan(ink, upright(GALLBLADDER.points), gallbladder, { depth: 8, edge: 1.6 });
  wipe(ink, () => {
    trace(ink, upright(LIVER), true);
    ink.fill();
  });
  paintBowel(ink, APPENDIX, bowel);
  paintColon(ink, COLON, bowel);
  fadeDown(ink, RECTUM);
  paintOrgan(ink, upright(BLADDER.points), bladder, { depth: 14, edge: 1.8 });
}

/** Before all of these, and so clear that they are seen through it; the liver's left lobe lies before it. */
export function paintStomach(ink: Ink, theme: Theme): void {
  paintOrgan(ink, upright(STOMACH.points), tonesIn(theme).bowel, { depth: 24, edge: 2.4, alpha: CLEAR });
  wipe(ink, () => {
    trace(ink, upright(LIVER), true);
    ink.fill();
  });
}
const CLEAR = 0.34;

function wipe(ink: Ink, what: () => void): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  what();
  ink.restore();
}

/** The bowel's great vessels come out from behind the pancreas' neck and go on before its head and the duodenum; above they are seen through it. */
function showVessels(ink: Ink, vessels: readonly Vessel[]): void {
  wipe(ink, () => {
    ink.lineCap = "butt";
    for (const { points, width } of vessels) {
      const line = upright(points);
      for (const [part, alpha] of [
        [line.filter(([, y]) => y <= -NECK), 1],
        [line.filter(([, y]) => y >= -NECK), THROUGH],
      ] as const) {
        if (part.length < 2) continue;
        trace(ink, part);
        ink.globalAlpha = alpha;
        ink.lineWidth = width + 4;
        ink.stroke();
      }
    }
  });
}
const MESENTERIC: readonly Vessel[] = [...GUT_ARTERIES, ...PORTAL_VEINS].filter(({ name }) =>
  ["gutArtery", "gutVein", "gutSplenicVein", "portal"].includes(name),
);
/** Plane units of the lower border of the pancreas' neck, and how much of a vessel behind is seen. */
const NECK = 710;
const THROUGH = 0.5;

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
  paintOrgan(ink, bulging, look, { depth: 14, edge: 1.4, alpha: 0.86 });
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
