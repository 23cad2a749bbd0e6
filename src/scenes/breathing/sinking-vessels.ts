/** Vessels that go down with the diaphragm: drawn once for each piece of the plane that goes down evenly, which shows its own part of them. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Laid } from "../circuit/dots.ts";
import { BETWEEN_ARMS, PIECES, sink } from "../circuit/sinking.ts";

export interface SinkingVessels {
  readonly view: Container;
  /** @param paint draws those vessels that reach into a piece */
  draw(laid: readonly Laid[], paint: (ink: Graphics, laid: readonly Laid[]) => void): void;
  /** @param fall plane units by which the dome stands lower */
  move(fall: number): void;
}

/** Plane units that hold all of the picture, and by which a piece reaches under the one above, so that no seam shows. */
const [FAR, UNDER] = [1200, 0.25];

/** What each piece shows: the one that stays has the arms too. */
function roomOf(i: number): Graphics {
  const { from, to } = entryAt(PIECES, i);
  const room = new Graphics();
  if (i === 0) {
    const { left, right } = BETWEEN_ARMS;
    room.rect(-FAR, -FAR, 3 * FAR, FAR + to);
    for (const start of [left - 2 * FAR, right]) room.rect(start, to, 2 * FAR, FAR);
  } else
    room.rect(
      BETWEEN_ARMS.left,
      from - UNDER,
      BETWEEN_ARMS.right - BETWEEN_ARMS.left,
      Math.min(FAR, to) - from + UNDER,
    );
  return room.fill(0xffffff);
}

export function sinkingVessels(): SinkingVessels {
  const view = new Container();
  const pieces = PIECES.map((_, i) => {
    const [piece, ink, room] = [new Container(), new Graphics(), roomOf(i)];
    ink.mask = room;
    piece.addChild(room, ink);
    return { piece, ink };
  });
  // Those further down lie under those above.
  view.addChild(...pieces.map(({ piece }) => piece).toReversed());
  return {
    view,
    draw(laid, paint) {
      for (const [i, { ink }] of pieces.entries()) {
        const { from, to } = entryAt(PIECES, i);
        const shows = ({ vessel, line }: Laid): boolean =>
          (i === 0 && vessel.name.includes("Limb")) ||
          line.y.some((y) => y + vessel.width > from && y - vessel.width < to);
        paint(ink.clear(), laid.filter(shows));
      }
    },
    move(fall) {
      for (const [i, { piece }] of pieces.entries()) sink(piece, i, fall);
    },
  };
}
