/** The cells of the tissue, which move apart as the space between them fills; each kind is painted once. */
import { Container, Sprite, Texture } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Ink, inkFor, trace } from "../anatomy/painted-sheet.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { curve, type Spot } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { type TissuePlan, WIDTH } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";

/** Half the width and height of a cell's picture. */
const ROOM = [72, 52] as const;
/** Corners of each kind of cell, by angle: parts of its half width and height. */
const KINDS = [
  [1, 0.86, 0.95, 0.8, 1, 0.92, 0.84, 0.9],
  [0.9, 1, 0.78, 0.95, 0.86, 0.96, 0.9, 0.8],
  [0.84, 0.92, 1, 0.86, 0.94, 0.78, 1, 0.9],
] as const;

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
  let textures: readonly Texture[] = [];
  let known: TissuePlan | null = null;
  const release = () => {
    for (const sprite of view.removeChildren()) sprite.destroy();
    for (const texture of textures) texture.destroy(true);
  };
  return {
    view,
    paint(plan, density, theme) {
      release();
      known = plan;
      textures = KINDS.map((corners) => {
        const ink = inkFor([-ROOM[0], -ROOM[1], ROOM[0], ROOM[1]], density);
        paintCell(ink, corners, theme);
        return Texture.from(ink.canvas, true);
      });
      for (const { turned, kind } of plan.cells) {
        const sprite = new Sprite(entryAt(textures, kind % textures.length));
        sprite.anchor.set(0.5);
        sprite.rotation = turned;
        sprite.setSize(2 * ROOM[0], 2 * ROOM[1]);
        view.addChild(sprite);
      }
    },
    spread(size) {
      if (!known) return;
      const [cx, cy] = [WIDTH / 2, known.height * 0.43];
      known.cells.forEach(({ at: [x, y] }, i) => {
        entryAt(view.children, i).position.set(cx + (x - cx) * size, cy + (y - cy) * size);
      });
    },
    release,
  };
}

function paintCell(ink: Ink, corners: readonly number[], theme: Theme): void {
  const cell = tissueTone("cell", theme);
  const nucleus = tissueTone("nucleus", theme);
  const around = corners.map((reach, i): Spot => {
    const angle = (2 * Math.PI * i) / corners.length;
    return [62 * reach * Math.cos(angle), 38 * reach * Math.sin(angle)];
  });
  const { x, y } = curve([...around, entryAt(around, 0)]);
  trace(
    ink,
    [...x].map((each, i): Spot => [each, entryAt(y, i)]),
    true,
  );
  ink.fillStyle = lit(ink, 62, cell);
  ink.fill();
  ink.strokeStyle = cell.edge;
  ink.lineWidth = 2.5;
  ink.stroke();
  ink.beginPath();
  ink.ellipse(9, -2, 18, 13, 0.2, 0, 2 * Math.PI);
  ink.fillStyle = lit(ink, 18, nucleus);
  ink.fill();
  ink.strokeStyle = nucleus.edge;
  ink.lineWidth = 1.5;
  ink.stroke();
}

/** Light from above, a little to the left. */
function lit(ink: Ink, radius: number, { light, body, shade }: Tissue): CanvasGradient {
  const tints = ink.createRadialGradient(-0.25 * radius, 0.25 * radius, 0, 0, 0, radius);
  tints.addColorStop(0, light);
  tints.addColorStop(0.6, body);
  tints.addColorStop(1, shade);
  return tints;
}
