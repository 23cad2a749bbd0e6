/** Signed distance from the shapes of a plane: shared by the flow solver, the drawn wall and the walls for clots. */

import type { FlowGeometry, Opening, Point, Shape } from "./geometry.ts";

/** Signed distance in mm at a point (x, y) in mm: negative inside. */
export type Distance = (x: number, y: number) => number;

/** What lies nearest on a tube, mm: signed distance to its wall, and its own width at the nearest point of the centre line. */
export interface TubePoint {
  distance: number;
  width: number;
}

const widthAt = (width: number | readonly number[], i: number): number =>
  typeof width === "number" ? width : width[i]!;

/** Numbers of one piece of a line: x and y where it begins, its way in x and y, and the square of its length; mm. */
const PIECE = 5;

/** A line's pieces, one from each point but the last; flat, since they are read for every point of a plane before anything has been compiled. */
function piecesOf(points: readonly Point[], to: (i: number) => Point | undefined): Float64Array {
  const ends = points.map((_, i) => to(i));
  const pieces = new Float64Array(PIECE * ends.filter((end) => end).length);
  points.forEach((a, i) => {
    const b = ends[i];
    if (!b) return;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    pieces.set([a[0], a[1], dx, dy, dx * dx + dy * dy], PIECE * i);
  });
  return pieces;
}

/**
 * Nearest wall of a tube whose width varies linearly between points; ends and joints are round. All in mm.
 * What is returned writes into its last argument and returns that.
 */
export function tubePoints(tube: {
  readonly points: readonly Point[];
  readonly width: number | readonly number[];
}): (x: number, y: number, out: TubePoint) => TubePoint {
  const pieces = piecesOf(tube.points, (i) => tube.points[i + 1]);
  const widths = Float64Array.from(tube.points, (_, i) => widthAt(tube.width, i));
  return (x, y, out) => {
    out.distance = Infinity;
    out.width = widths[0]!;
    let nearest2 = Infinity;
    for (let k = 0, i = 0; k < pieces.length; k += PIECE, i++) {
      const fromX = x - pieces[k]!;
      const fromY = y - pieces[k + 1]!;
      const dx = pieces[k + 2]!;
      const dy = pieces[k + 3]!;
      const length2 = pieces[k + 4]!;
      const along = length2 === 0 ? 0 : (fromX * dx + fromY * dy) / length2;
      const t = Math.min(1, Math.max(0, along));
      const offX = fromX - t * dx;
      const offY = fromY - t * dy;
      const across2 = offX * offX + offY * offY;
      // The centre line's nearest point decides: a wide place's round end must not reach into a narrow one beside it.
      if (across2 >= nearest2) continue;
      nearest2 = across2;
      const across = Math.sqrt(across2);
      const wider = widths[i + 1]! - widths[i]!;
      const local = widths[i]! + wider * t;
      // A tapering wall is nearer along its own normal than across the centre line.
      const slope2 = along === t && length2 > 0 ? (0.5 * wider) ** 2 / length2 : 0;
      out.distance = (across - 0.5 * local) / Math.sqrt(1 + slope2);
      out.width = local;
    }
    return out;
  };
}

/** Distance from a line through the points; in whatever unit these are. */
export function lineDistance(points: readonly Point[]): Distance {
  const nearest = tubePoints({ points, width: 0 });
  const out: TubePoint = { distance: 0, width: 0 };
  return (x, y) => nearest(x, y, out).distance;
}

/** Exact distance to an axis-aligned ellipse centred at the origin, by Newton on the closest point's parameter. */
function ellipseDistance(px: number, py: number, a: number, b: number): number {
  const x = Math.abs(px);
  const y = Math.abs(py);
  let angle = Math.atan2(a * y, b * x);
  for (let n = 0; n < 12; n++) {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const slope = (b * b - a * a) * c * s + a * x * s - b * y * c;
    const curve = (b * b - a * a) * (c * c - s * s) + a * x * c + b * y * s;
    if (Math.abs(curve) < 1e-12) break;
    const step = slope / curve;
    angle = Math.min(Math.PI / 2, Math.max(0, angle - step));
    if (Math.abs(step) < 1e-10) break;
  }
  const gap = Math.hypot(x - a * Math.cos(angle), y - b * Math.sin(angle));
  return (x / a) ** 2 + (y / b) ** 2 < 1 ? -gap : gap;
}

/** Signed distance, in the points' own unit (mm in a plane), from a closed outline: negative within. */
export function outlineDistance(points: readonly Point[]): Distance {
  const pieces = piecesOf(points, (i) => points.at(i - 1));
  return (x, y) => {
    let nearest2 = Infinity;
    let inside = false;
    let above = pieces[pieces.length - PIECE + 1]! > y;
    for (let k = 0; k < pieces.length; k += PIECE) {
      const fromX = x - pieces[k]!;
      const fromY = y - pieces[k + 1]!;
      const dx = pieces[k + 2]!;
      const dy = pieces[k + 3]!;
      const length2 = pieces[k + 4]!;
      const along = length2 === 0 ? 0 : (fromX * dx + fromY * dy) / length2;
      const t = Math.min(1, Math.max(0, along));
      const offX = fromX - t * dx;
      const offY = fromY - t * dy;
      const off2 = offX * offX + offY * offY;
      if (off2 < nearest2) nearest2 = off2;
      const begins = pieces[k + 1]! > y;
      if (begins !== above && x < (dx * fromY) / dy + pieces[k]!) inside = !inside;
      above = begins;
    }
    return (inside ? -1 : 1) * Math.sqrt(nearest2);
  };
}

/** Signed distance (mm) from one shape. */
export function shapeDistance(shape: Shape): Distance {
  if ("tube" in shape) {
    const at = tubePoints(shape.tube);
    const out: TubePoint = { distance: 0, width: 0 };
    return (x, y) => at(x, y, out).distance;
  }
  if ("disc" in shape) {
    const { centre, radius } = shape.disc;
    return (x, y) => Math.hypot(x - centre[0], y - centre[1]) - radius;
  }
  if ("ellipse" in shape) {
    const { centre, radii, angle } = shape.ellipse;
    const c = Math.cos((angle * Math.PI) / 180);
    const s = Math.sin((angle * Math.PI) / 180);
    return (x, y) => {
      const dx = x - centre[0];
      const dy = y - centre[1];
      return ellipseDistance(c * dx + s * dy, c * dy - s * dx, radii[0], radii[1]);
    };
  }
  return outlineDistance(shape.polygon.points);
}

/** mm: [left, bottom, right, top] of one shape. */
export function shapeBounds(shape: Shape): [number, number, number, number] {
  const boxes: [number, number, number][] = [];
  if ("tube" in shape) {
    const { points, width } = shape.tube;
    points.forEach(([x, y], i) => {
      boxes.push([x, y, 0.5 * widthAt(width, i)]);
    });
  } else if ("disc" in shape) boxes.push([...shape.disc.centre, shape.disc.radius]);
  else if ("ellipse" in shape) boxes.push([...shape.ellipse.centre, Math.max(...shape.ellipse.radii)]);
  else for (const [x, y] of shape.polygon.points) boxes.push([x, y, 0]);
  return [
    Math.min(...boxes.map(([x, , r]) => x - r)),
    Math.min(...boxes.map(([, y, r]) => y - r)),
    Math.max(...boxes.map(([x, , r]) => x + r)),
    Math.max(...boxes.map(([, y, r]) => y + r)),
  ];
}

/** A shape's distance (mm) is at least this part of that from the box around it: a wall that tapers counts as nearer than it is. */
const TAPERED = 0.5;

/** mm from a box [left, bottom, right, top]; 0 in it. */
function fromBox(box: readonly [number, number, number, number], x: number, y: number): number {
  const dx = Math.max(box[0] - x, x - box[2]);
  const dy = Math.max(box[1] - y, y - box[3]);
  return Math.max(0, dx, dy);
}

/** Position of the point (x, y), mm, relative to an opening: `beyond` its plane (mm, positive outside the blood) and `across` from its centre (mm). */
export function seenFrom(opening: Opening, x: number, y: number): { beyond: number; across: number } {
  const { beyond, across } = outside(opening, x, y);
  return { beyond, across };
}

const place = { beyond: 0, across: 0 };
function outside(opening: Opening, x: number, y: number): { beyond: number; across: number } {
  const dx = x - opening.centre[0];
  const dy = y - opening.centre[1];
  const [nx, ny] = opening.normal;
  place.beyond = dx * nx + dy * ny;
  place.across = dy * nx - dx * ny;
  return place;
}

/**
 * Signed distance (mm) from the whole plane: union of `open` minus `solid`. Each opening cuts off what lies beyond it, and a
 * channel of the opening's width continues for `channel` mm, so that the opening itself is never a wall.
 */
export function planeDistance(geometry: FlowGeometry, channel: number): Distance {
  const open = geometry.open.map((shape) => ({ to: shapeDistance(shape), box: shapeBounds(shape) }));
  const solid = geometry.solid.map(shapeDistance);
  const aways = new Float64Array(open.length);
  const { openings } = geometry;
  return (x, y) => {
    // Most points lie far from most shapes: the likely nearest is asked first, which spares asking the others.
    let likely = 0;
    for (let i = 0; i < open.length; i++) {
      aways[i] = TAPERED * fromBox(open[i]!.box, x, y);
      if (aways[i]! < aways[likely]!) likely = i;
    }
    let distance = open[likely]?.to(x, y) ?? Infinity;
    for (let i = 0; i < open.length; i++)
      if (i !== likely && (aways[i] === 0 || aways[i]! <= distance))
        distance = Math.min(distance, open[i]!.to(x, y));
    for (const shape of solid) distance = Math.max(distance, -shape(x, y));
    for (const opening of openings) {
      const { beyond, across } = outside(opening, x, y);
      const half = 0.5 * opening.width;
      const side = Math.abs(across) - half;
      const reach = Math.max(half * 1.1, channel) + channel;
      if (beyond > reach || side > channel) continue;
      if (beyond > -1e-6 * half) distance = Math.max(side, beyond - channel);
      // Where the nearest edge is the opening's own, as in a polygon that ends there, the sides are the wall.
      else if (side < 0 && distance <= 0 && Math.abs(distance - beyond) < 1e-6 * half) distance = side;
    }
    return distance;
  };
}
