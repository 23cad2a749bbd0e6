/** The painted chest as containers that a scene stacks between its own layers: painted once, moved by the circulation. */
import { Container } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { ChestFrame } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationsOf } from "../theme/unsolved.ts";
import { anatomyOf } from "./chest-anatomy.ts";
import { type Outlines, type Painted, sheet } from "./painted-sheet.ts";
import { PIECES, type PieceName, piecesOf } from "./pieces.ts";
import { DESCENT, OUTSIDE, type Standing, sinksFrom } from "./standing.ts";
import { valves } from "./valves.ts";

/** Part of the atrium's change in height by which its width follows where a vein enters its floor: that holds its width there. */
const HELD = 0.35;
/** and by which one moves whose back wall the veins hold, and its mouth the ventricle's base */
const FIXED = 0.5;

/** What of the rest hangs on the heart. */
const SINKS: ReadonlySet<PieceName> = new Set([
  "back",
  "atrium",
  "rightAtrium",
  "veins",
  "shining",
  "remains",
  "front",
  "passing",
]);

interface Surface extends Outlines {
  /** device pixels a millimetre */
  readonly density: number;
  /** the pieces that are painted; all that were wanted when left out */
  readonly only?: readonly PieceName[];
}

/** In mm of the chest's frame, y up. */
export interface AnatomyLayer {
  /** by piece; bed, cavity and muscle lie in `ventricle` */
  readonly pieces: Readonly<Record<PieceName, Container>>;
  readonly ventricle: Container;
  readonly valves: Container;
  set(frame: ChestFrame, circulation: Circulation | null, surface: Surface, theme: Theme): void;
  /**
   * The same, painted one piece at each call of the function that is returned: the last call shows them all, in place of what was
   * there before, and answers so.
   */
  begin(...what: Parameters<AnatomyLayer["set"]>): () => boolean;
  move(standing: Standing): void;
  /** Lets the heart go down with the dome, as far as it is free of what stays; without it all of it stays. */
  sink(lungs: number): void;
  release(): void;
}

/** @param wanted the pieces that are painted; the rest stay empty */
export function anatomyLayer(wanted: readonly PieceName[] = PIECES): AnatomyLayer {
  // Cavity and muscle in the ventricle's own lengths; its valves lie before the opened root of the aorta.
  const [ventricle, base] = [new Container(), new Container()];
  const leaflets = valves();
  base.addChild(leaflets.view);
  const sheets = Object.fromEntries(PIECES.map((name) => [name, sheet()])) as Record<PieceName, Painted>;
  const pieces = Object.fromEntries(PIECES.map((name) => [name, sheets[name].view])) as Record<
    PieceName,
    Container
  >;
  ventricle.addChild(pieces.bed, pieces.cavity, pieces.muscle);
  const free = [new Container(), new Container()] as const;
  free[0].addChild(ventricle);
  free[1].addChild(base);
  let size = 1;
  let held = false;
  let from: ReturnType<typeof sinksFrom> = { hinge: 0, height: 1 };
  const begin: AnatomyLayer["begin"] = (
    frame,
    circulation,
    { density, only = wanted, ...outlines },
    theme,
  ) => {
    const anatomy = anatomyOf(frame);
    const { heart } = anatomy;
    const painting = piecesOf(anatomy, saturationsOf(circulation), outlines, theme);
    const sinks = sinksFrom(frame);
    const painted: (() => void)[] = [];
    const show = () => {
      size = frame.scale;
      held = frame.lowerVein !== undefined;
      from = sinks;
      for (const part of [ventricle, base]) {
        part.position.set(...heart.base);
        part.rotation = heart.lean;
        // Across its axis it counts towards the patient's right.
        part.scale.set(heart.size, -heart.size);
      }
      leaflets.set(theme);
      for (const each of painted) each();
    };
    return () => {
      const name = only[painted.length];
      if (name) {
        const { bounds, pivot, paint, inVentricle } = painting[name];
        const hinge = SINKS.has(name) ? sinks.hinge : undefined;
        painted.push(
          sheets[name].prepare(bounds, inVentricle ? density * heart.size : density, pivot, paint, hinge),
        );
      }
      if (painted.length < only.length) return false;
      show();
      return true;
    };
  };
  return {
    pieces,
    ventricle: free[0],
    valves: free[1],
    begin,
    set(...what) {
      for (const paintNext = begin(...what); !paintNext(); );
    },
    move(standing) {
      const { lungs } = standing;
      pieces.rightLung.scale.set(lungs);
      pieces.leftLung.scale.set(lungs);
      for (const name of ["abdomen", "inLiver", "hiatus"] as const)
        pieces[name].y = -(lungs - 1) * DESCENT * size;
      const [across, up] = held ? [HELD, 1] : [FIXED, FIXED];
      pieces.atrium.scale.set(1 + (standing.atrium - 1) * across, 1 + (standing.atrium - 1) * up);
      pieces.cavity.scale.set(standing.ventricle);
      const outside = 1 + (standing.ventricle - 1) * OUTSIDE;
      pieces.bed.scale.set(outside);
      pieces.muscle.scale.set(outside);
      leaflets.move(standing);
    },
    sink(lungs) {
      const part = ((lungs - 1) * DESCENT * size) / from.height;
      for (const name of SINKS) sheets[name].lengthen(part);
      for (const view of free) {
        view.scale.y = 1 + part;
        view.y = -part * from.hinge;
      }
    },
    release() {
      for (const name of PIECES) sheets[name].release();
    },
  };
}
