/** The chest around a pathway in two layers: what lies behind its vessels, and the aorta before them. Painted once, moved by the circulation. */
import { Container } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { ChestFrame } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import { anatomyOf } from "./chest-anatomy.ts";
import { type Painted, sheet } from "./painted-sheet.ts";
import { PIECES, type PieceName, piecesOf, UNSOLVED } from "./pieces.ts";
import type { Standing } from "./standing.ts";
import { valves } from "./valves.ts";

export interface Surface {
  /** closed lines (mm, x and y in turn) around the pathway's vessels, which the aorta lets through */
  readonly seen: readonly (readonly number[])[];
  /** device pixels a millimetre */
  readonly density: number;
}

export interface AnatomyLayer {
  /** behind the pathway's vessels, and before them */
  readonly behind: Container;
  readonly before: Container;
  set(frame: ChestFrame, circulation: Circulation | null, surface: Surface, theme: Theme): void;
  move(standing: Standing): void;
  release(): void;
}

/** mm of a 5-year-old by which the dome goes down when the lungs are one part wider (6 % of a quiet breath: 4 mm). */
const DESCENT = 75;
/** Part of a cavity's change that its muscle's outside follows: the wall keeps its volume. */
const OUTSIDE = 0.35;

export function anatomyLayer(): AnatomyLayer {
  const behind = new Container();
  const before = new Container();
  // Cavity and muscle in the ventricle's own lengths; its valves lie before the opened root of the aorta.
  const [ventricle, base] = [new Container(), new Container()];
  const leaflets = valves();
  base.addChild(leaflets.view);
  const sheets = Object.fromEntries(PIECES.map((name) => [name, sheet()])) as Record<PieceName, Painted>;
  for (const name of PIECES) {
    if (name === "cavity") behind.addChild(ventricle);
    const layer = name === "front" ? before : name === "cavity" || name === "muscle" ? ventricle : behind;
    layer.addChild(sheets[name].view);
  }
  before.addChild(base);
  let size = 1;
  return {
    behind,
    before,
    set(frame, circulation, { seen, density }, theme) {
      const anatomy = anatomyOf(frame);
      const { heart } = anatomy;
      size = frame.scale;
      const pieces = piecesOf(anatomy, circulation?.saturations ?? UNSOLVED, seen, theme);
      for (const name of PIECES) {
        const { bounds, pivot, paint, inVentricle } = pieces[name];
        sheets[name].paint(bounds, inVentricle ? density * heart.size : density, pivot, paint);
      }
      for (const part of [ventricle, base]) {
        part.position.set(...heart.base);
        part.rotation = heart.lean;
        part.scale.set(heart.size);
      }
      leaflets.set(theme);
    },
    move(standing) {
      const { lungs } = standing;
      sheets.rightLung.view.scale.set(lungs);
      sheets.leftLung.view.scale.set(lungs);
      sheets.abdomen.view.y = -(lungs - 1) * DESCENT * size;
      sheets.atrium.view.scale.set(standing.atrium);
      sheets.cavity.view.scale.set(standing.ventricle);
      sheets.muscle.view.scale.set(1 + (standing.ventricle - 1) * OUTSIDE);
      leaflets.move(standing);
    },
    release() {
      for (const name of PIECES) sheets[name].release();
    },
  };
}
