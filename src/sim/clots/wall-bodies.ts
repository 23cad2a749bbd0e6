/** The plane's walls as thin rigid blocks behind the traced outline, for clots to collide with. */
import Matter from "matter-js";
import type { FlowGeometry, Opening, Point } from "../geometry/geometry.ts";
import { type WallOutline, wallOutlines } from "../geometry/walls.ts";

/** Engine lengths in one mm: the engine's tolerances are made for bodies some tens of units wide. */
export const UNITS = 20;

/** mm: mesh of the traced outline, and by how much a simplified wall may miss it */
const MESH = 0.35;
const MISS = 0.04;
/** mm: thickness of the blocks behind the wall; less than the wall that a fenestration passes */
const DEEP = 1.5;

/**
 * Blocks in engine lengths ({@link UNITS} per mm).
 * @param passable openings through which clots may leave; every other cut counts as wall
 */
export function wallBodies(geometry: FlowGeometry, passable: readonly string[]): Matter.Body[] {
  return wallOutlines(geometry, MESH).flatMap((outline) =>
    simplified(outline).flatMap(([from, to, opening]) =>
      opening !== null && passable.includes(opening) ? [] : [block(from, to)],
    ),
  );
}

type Piece = readonly [from: Point, to: Point, opening: string | null];

/** Pieces as long as they may be: cut where the opening changes, then as few points as keep within MISS (Douglas & Peucker). */
function simplified({ points, openings }: WallOutline): Piece[] {
  const count = points.length;
  const start = openings.findIndex((name, i) => name !== openings[(i + count - 1) % count]);
  const first = Math.max(0, start);
  const pieces: Piece[] = [];
  for (let run = 0; run < count; ) {
    const opening = openings[(first + run) % count]!;
    let length = 1;
    while (run + length < count && openings[(first + run + length) % count] === opening) length++;
    const stretch = Array.from({ length: length + 1 }, (_, i) => points[(first + run + i) % count]!);
    const kept = thinned(stretch);
    for (let i = 1; i < kept.length; i++) pieces.push([kept[i - 1]!, kept[i]!, opening]);
    run += length;
  }
  return pieces;
}

function thinned(points: readonly Point[]): Point[] {
  const first = points[0]!;
  const last = points[points.length - 1]!;
  const dx = last[0] - first[0];
  const dy = last[1] - first[1];
  const length = Math.hypot(dx, dy);
  let worst = MISS;
  let at = -1;
  for (let i = 1; i < points.length - 1; i++) {
    const px = points[i]![0] - first[0];
    const py = points[i]![1] - first[1];
    const miss = length > 0 ? Math.abs(px * dy - py * dx) / length : Math.hypot(px, py);
    if (miss > worst) {
      worst = miss;
      at = i;
    }
  }
  if (at < 0) return [first, last];
  return [...thinned(points.slice(0, at + 1)).slice(0, -1), ...thinned(points.slice(at))];
}

/** A block whose front is the piece of wall; blood lies on the left of the piece, the block on its right. */
function block(from: Point, to: Point, category = 1): Matter.Body {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const length = Math.hypot(dx, dy) || 1e-9;
  const centre = {
    x: (UNITS * (from[0] + to[0] + (dy / length) * DEEP)) / 2,
    y: (UNITS * (from[1] + to[1] - (dx / length) * DEEP)) / 2,
  };
  return Matter.Bodies.rectangle(centre.x, centre.y, UNITS * length, UNITS * DEEP, {
    isStatic: true,
    angle: Math.atan2(dy, dx),
    friction: 0.05,
    restitution: 0.1,
    collisionFilter: { category },
  });
}

/**
 * A block that closes an opening's outer cut, in engine lengths, for clots whose mask has the bit `category` (dimensionless): wall contacts are slightly soft,
 * but a rim that is too narrow must hold.
 */
export function gate({ centre, normal, width }: Opening, category: number): Matter.Body {
  const end = (side: number): Point => [
    centre[0] - (side * normal[1] * width) / 2,
    centre[1] + (side * normal[0] * width) / 2,
  ];
  return block(end(-1), end(1), category);
}
