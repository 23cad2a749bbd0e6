/** The cells of the tissue, which move apart as the space between them fills; all are painted once, side by side in one picture. */
import { Container, Rectangle, Sprite, Texture } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Ink, inkFor } from "../anatomy/painted-sheet.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { GOLDEN, type Spot } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { CELL_ROOM } from "./packed-cells.ts";
import { CAPILLARY, type TissuePlan, WIDTH } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";

/** Cells in a row of the picture, and the room of each with its line around it. */
const IN_ROW = 12;
const LINE = 4;
const [SLOT_WIDE, SLOT_HIGH] = [2 * (CELL_ROOM[0] + LINE), 2 * (CELL_ROOM[1] + LINE)];

/** Part of an edge that is rounded off at each of its ends. */
const ROUNDED = 0.34;

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
      plan.cells.forEach(({ around }, i) => {
        const [x, y] = [(i % IN_ROW) * SLOT_WIDE, Math.floor(i / IN_ROW) * SLOT_HIGH];
        ink.save();
        ink.translate(x + SLOT_WIDE / 2, y + SLOT_HIGH / 2);
        paintCell(ink, around, i, theme);
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
      const [cx, cy] = [WIDTH / 2, entryAt(CAPILLARY.y, 0)];
      known.cells.forEach(({ at: [x, y] }, i) => {
        entryAt(view.children, i).position.set(cx + (x - cx) * size, cy + (y - cy) * size);
      });
    },
    release,
  };
}

/** A soft body without a hard edge, for it lies behind what the picture is about. */
function paintCell(ink: Ink, around: readonly Spot[], seed: number, theme: Theme): void {
  const cell = tissueTone("cell", theme);
  const nucleus = tissueTone("nucleus", theme);
  /** A place on the edge from a corner to the next. */
  const on = (i: number, share: number): Spot => {
    const [a, b] = [entryAt(around, i % around.length), entryAt(around, (i + 1) % around.length)];
    return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
  };
  ink.beginPath();
  ink.moveTo(...on(0, 1 - ROUNDED));
  around.forEach((_, i) => {
    ink.quadraticCurveTo(...on(i + 1, 0), ...on(i + 1, ROUNDED));
    ink.lineTo(...on(i + 1, 1 - ROUNDED));
  });
  ink.closePath();
  ink.fillStyle = lit(ink, 74, cell);
  ink.fill();
  ink.strokeStyle = cell.edge;
  ink.globalAlpha = 0.55;
  ink.lineWidth = 1.4;
  ink.stroke();
  ink.globalAlpha = 0.5;
  ink.beginPath();
  const turn = (share: number) => 2 * ((seed * GOLDEN * share) % 1) - 1;
  ink.ellipse(14 * turn(1), 8 * turn(3), 17 + 3 * turn(5), 12, turn(7), 0, 2 * Math.PI);
  ink.fillStyle = lit(ink, 18, nucleus);
  ink.fill();
  ink.globalAlpha = 1;
}

/** Light from the upper left. */
function lit(ink: Ink, radius: number, { light, body, shade }: Tissue): CanvasGradient {
  const tints = ink.createRadialGradient(-0.3 * radius, -0.3 * radius, 0, 0, 0, radius);
  tints.addColorStop(0, light);
  tints.addColorStop(0.6, body);
  tints.addColorStop(1, shade);
  return tints;
}
