/** The cells of the tissue, which move apart as the space between them fills; all are painted once, side by side in one picture. */
import { Container, Rectangle, Sprite, Texture } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Ink, inkFor } from "../anatomy/painted-sheet.ts";
import type { Tissue } from "../anatomy/tones.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { CAPILLARY, type Cell, type CellKind, type TissuePlan, WIDTH } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";

/** Cells in a row of the picture, and the room of each, plane units. */
const IN_ROW = 12;
const [SLOT_WIDE, SLOT_HIGH] = [176, 112];

export interface TissueCells {
  readonly view: Container;
  /** Anew for a plan and a stage. @param density device pixels a plane unit */
  paint(plan: TissuePlan, density: number, theme: Theme): void;
  /** @param size of the tissue against rest */
  spread(size: number): void;
  release(): void;
}

export function tissueCells(): TissueCells {
  const view = new Container();
  let known: TissuePlan | null = null;
  let whole: Texture | null = null;
  const release = () => {
    for (const sprite of view.removeChildren()) {
      (sprite as Sprite).texture.destroy();
      sprite.destroy();
    }
    whole?.destroy(true);
  };
  return {
    view,
    paint(plan, density, theme) {
      release();
      known = plan;
      const high = Math.ceil(plan.cells.length / IN_ROW) * SLOT_HIGH;
      const ink = inkFor([0, -high, IN_ROW * SLOT_WIDE, 0], density);
      ink.scale(1, -1);
      whole = Texture.from(ink.canvas, true);
      plan.cells.forEach((cell, i) => {
        const [x, y] = [(i % IN_ROW) * SLOT_WIDE, Math.floor(i / IN_ROW) * SLOT_HIGH];
        ink.save();
        ink.translate(x + SLOT_WIDE / 2, y + SLOT_HIGH / 2);
        ink.rotate(cell.turn);
        paintCell(ink, cell, i, theme);
        ink.restore();
        const frame = new Rectangle(x * density, y * density, SLOT_WIDE * density, SLOT_HIGH * density);
        const sprite = new Sprite(new Texture({ source: (whole as Texture).source, frame }));
        sprite.anchor.set(0.5);
        sprite.scale.set(1 / density);
        view.addChild(sprite);
      });
    },
    spread(size) {
      if (!known) return;
      known.cells.forEach(({ at }, i) => {
        entryAt(view.children, i).position.set(...apart(at, size));
      });
    },
    release,
  };
}

/** Where the middle of a cell lies when the tissue has swollen. @param size of the tissue against rest */
export function apart([x, y]: Spot, size: number): Spot {
  const [cx, cy] = [WIDTH / 2, entryAt(CAPILLARY.y, 0)];
  return [cx + (x - cx) * size, cy + (y - cy) * size];
}

/** Lengthwise along x, about its middle: a soft body without a hard edge, for it lies behind what the picture is about. */
function paintCell(ink: Ink, { kind, half: [a, b] }: Cell, seed: number, theme: Theme): void {
  const cell = tissueTone("cell", theme);
  const nucleus = tissueTone("nucleus", theme);
  ink.beginPath();
  OUTLINES[kind](ink, a, b, seed);
  ink.closePath();
  ink.fillStyle = lit(ink, kind === "fibroblast" ? a : 1.2 * b, cell);
  ink.fill();
  ink.strokeStyle = cell.edge;
  ink.globalAlpha = 0.8;
  ink.lineWidth = 1.6;
  ink.stroke();
  ink.globalAlpha = 0.75;
  ink.beginPath();
  // Bent like a bean; as long as its cell.
  if (kind === "macrophage") {
    ink.ellipse(0.12 * a, 0, 13, 10, 0.5, 0.5, 2 * Math.PI - 0.5);
    ink.quadraticCurveTo(0.1 * a, 0, 0.12 * a + 11, 8);
  } else ink.ellipse(0.06 * a, 0, 20, 0.58 * b, 0, 0, 2 * Math.PI);
  ink.fillStyle = lit(ink, 18, nucleus);
  ink.fill();
  ink.globalAlpha = 1;
}

const OUTLINES: Readonly<Record<CellKind, (ink: Ink, a: number, b: number, seed: number) => void>> = {
  /** With blunt feelers all around. */
  macrophage(ink, a, b, seed) {
    for (let i = 0; i < 40; i++) {
      const turn = (2 * Math.PI * i) / 40;
      const reach = 0.86 + 0.1 * Math.sin(5 * turn + seed) + 0.07 * Math.sin(8 * turn + 2 * seed);
      ink.lineTo(a * reach * Math.cos(turn), b * reach * Math.sin(turn));
    }
  },
  /** A spindle drawn out at both ends, one of them forked. */
  fibroblast(ink, a, b) {
    ink.moveTo(-a, -0.5 * b);
    ink.bezierCurveTo(-0.6 * a, -0.2 * b, -0.45 * a, -b, 0, -b);
    ink.bezierCurveTo(0.45 * a, -b, 0.55 * a, -0.5 * b, a, -0.9 * b);
    ink.bezierCurveTo(0.8 * a, -0.3 * b, 0.72 * a, -0.1 * b, 0.68 * a, 0);
    ink.bezierCurveTo(0.8 * a, 0.2 * b, 0.85 * a, 0.5 * b, 0.94 * a, 0.9 * b);
    ink.bezierCurveTo(0.6 * a, 0.35 * b, 0.4 * a, b, 0, b);
    ink.bezierCurveTo(-0.45 * a, b, -0.6 * a, 0.1 * b, -a, -0.5 * b);
  },
};

/** Light from the upper left. */
function lit(ink: Ink, radius: number, { light, body, shade }: Tissue): CanvasGradient {
  const tints = ink.createRadialGradient(-0.3 * radius, -0.3 * radius, 0, 0, 0, radius);
  tints.addColorStop(0, light);
  tints.addColorStop(0.6, body);
  tints.addColorStop(1, shade);
  return tints;
}
