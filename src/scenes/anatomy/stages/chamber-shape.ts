/** Where things lie in a right atrium that is the pathway itself. */
import { entryAt, lastOf, present } from "../../../sim/checked/present.ts";
import type { ChestFrame, Point } from "../../../sim/geometry/geometry.ts";
import type { Outlines } from "../painted-sheet.ts";

export type Loops = NonNullable<Outlines["lumen"]>;

/** Where its septum is cut: degrees from the patient's left up to the middle of the patch, and to either of its ends. */
export const SEPTUM = { at: -1, half: 11 } as const;

/** A place on its oval by degrees from the patient's left, anticlockwise, `out` mm beyond it. */
export const onOval =
  ([a, b]: Point) =>
  (degrees: number, out = 0): Point => {
    const turn = (degrees * Math.PI) / 180;
    return [(a + out) * Math.cos(turn), (b + out) * Math.sin(turn)];
  };

/** A place by parts of half the width and half the height. */
export const placesIn =
  ([a, b]: Point) =>
  (x: number, y: number): Point => [a * x, b * y];

/** Points to either side over which the lumen's edge is rounded. */
const INNER = 2;

/** The line's points, each the mean of those around it. @param reach points to either side */
function rounded(loop: readonly number[], reach: number): readonly Point[] {
  const count = loop.length / 2;
  const at = (i: number, k: 0 | 1) => entryAt(loop, 2 * ((i + count) % count) + k);
  return Array.from({ length: count }, (_, i): Point => {
    let [x, y] = [0, 0];
    for (let n = -reach; n <= reach; n++) {
      x += at(i + n, 0);
      y += at(i + n, 1);
    }
    return [x / (2 * reach + 1), y / (2 * reach + 1)];
  });
}

/** Parts of its size above the chamber's middle, and beyond its oval, from where on a place lies in an artery. */
const ABOVE = 0.3;
const BEYOND = 0.01;

export type Chambered = ChestFrame & { readonly chamber: Point };

export const chamberedIn = ({ chamber, ...frame }: ChestFrame): Chambered | null =>
  chamber ? { ...frame, chamber } : null;

/** The lumen's own edge. */
const edgesOf = (lumen: Loops): readonly (readonly Point[])[] => lumen.map((loop) => rounded(loop, INNER));

/** Whether a place on it is an artery's. */
function arterial({ chamber: [a, b], scale: s, svc }: Chambered): (place: Point) => boolean {
  // The upper vein leans above the chamber.
  const aside = (y: number) => svc.width / 2 + 2 * s + (y > b ? Math.abs(svc.centre[0]) : 0);
  return ([x, y]) => y > ABOVE * b && Math.abs(x) > aside(y) && Math.hypot(x / a, y / b) > 1 + BEYOND;
}

/** Stretches of the lumen's edge that are an artery's. */
export function arteriesOf(frame: Chambered, lumen: Loops): readonly (readonly Point[])[] {
  const inArtery = arterial(frame);
  return edgesOf(lumen).flatMap((edge) => {
    const found: Point[][] = [];
    edge.forEach((place, i) => {
      if (!inArtery(place)) return;
      if (i === 0 || !inArtery(entryAt(edge, i - 1))) found.push([]);
      lastOf(found).push(place);
    });
    return found;
  });
}

/** Steps in which it is closed before an artery. */
const CLOSING = 16;

/** The same around chamber and veins alone: the arteries come out from behind it. @param loops around the lumen, or around its wall */
export function closedOf(frame: Chambered, loops: Loops): readonly (readonly Point[])[] {
  const [a, b] = frame.chamber;
  const inArtery = arterial(frame);
  const polar = ([x, y]: Point) => [Math.atan2(x / a, y / b), Math.hypot(x / a, y / b)] as const;
  return edgesOf(loops).map((edge) => {
    const first = edge.findIndex((place) => !inArtery(place));
    const kept = [...edge.slice(first), ...edge.slice(0, first)].filter((place) => !inArtery(place));
    return kept.flatMap((place, i): Point[] => {
      const next = entryAt(kept, (i + 1) % kept.length);
      if (Math.hypot(next[0] - place[0], next[1] - place[1]) < frame.left.width / 2) return [place];
      const [[from, near], [to, far]] = [polar(place), polar(next)];
      return Array.from({ length: CLOSING }, (_, k): Point => {
        const turn = from + (k / CLOSING) * (to - from);
        const out = near + (k / CLOSING) * (far - near);
        return [a * out * Math.sin(turn), b * out * Math.cos(turn)];
      });
    });
  });
}

interface Mouth {
  /** mm, where the chamber's edge ends below and above the artery */
  readonly low: Point;
  readonly high: Point;
}

/** Its window's edge, which runs a little within its own, unevenly as scissors go. */
export function windowOf({ chamber: [a, b], scale }: Chambered, edge: readonly Point[]): readonly Point[] {
  return edge.map(([x, y]): Point => {
    const turn = Math.atan2(y / b, x / a);
    const out = Math.hypot(x / a, y / b);
    // Not over the septum, which is cut to the patient's left, nor over the veins.
    const away = Math.max(0, -x / a) * Math.max(0, 1 - (y / (0.94 * b)) ** 4);
    const by = scale * away * (1.9 + 1.1 * Math.sin(3 * turn + 1.2) + 0.7 * Math.sin(7 * turn));
    return [x - (by * x) / (a * out), y - (by * y) / (b * out)];
  });
}

/** Where a pulmonary artery leaves the chamber. */
export function mouthOf(frame: Chambered, side: "left" | "right", lumen: Loops): Mouth {
  const inArtery = arterial(frame);
  const sign = side === "left" ? 1 : -1;
  const ends = edgesOf(lumen).flatMap((edge) => {
    const here = edge.map((place) => sign * place[0] > 0 && inArtery(place));
    return edge.filter((_, i) => !here[i] && (here[(i + 1) % here.length] || here.at(i - 1)));
  });
  const [low, high] = ends.sort((one, other) => one[1] - other[1]);
  return { low: present(low), high: present(high) };
}

/** mm of a 5-year-old by which the artery's hidden edges bow up behind the upper vein's end, and down behind the roof. */
const [RISES, SAGS] = [1.6, 4.4];
/** The opening: its middle and half its width by parts of the chamber's half width, half its height by the artery's width; mm of a 5-year-old by which it lies beneath the middle of what passes behind. */
const OPENING = { x: -0.06, wide: 0.66, high: 0.43, low: 3.6 } as const;

/** Both pulmonary arteries are one vessel that passes behind upper vein and roof; by one long opening the roof is sewn to it. */
export function connectionOf(frame: Chambered, lumen: Loops) {
  const [right, left] = [mouthOf(frame, "right", lumen), mouthOf(frame, "left", lumen)];
  const s = frame.scale;
  const over = bowed(right.high, left.high, RISES * s);
  const under = bowed(right.low, left.low, -SAGS * s);
  const middle = (right.low[1] + right.high[1] + left.low[1] + left.high[1]) / 4 - OPENING.low * s;
  const [x, wide, high] = [
    OPENING.x * frame.chamber[0],
    OPENING.wide * frame.chamber[0],
    OPENING.high * frame.right.width,
  ];
  return {
    /** hidden edges of the one vessel, from shoulder to shoulder */
    over,
    under,
    /** @param more mm further out */
    opening: (more = 0): readonly Point[] =>
      Array.from({ length: 65 }, (_, i): Point => {
        const turn = (Math.PI * i) / 32;
        const [across, up] = [Math.cos(turn), Math.sin(turn)];
        // Its ends turn up towards the shoulders, as the artery does.
        return [x + (wide + more) * across, middle + (high + more) * up + BENT * high * across ** 2];
      }),
  };
}

/** Of its half height, by which the opening's ends turn up. */
const BENT = 0.35;

/** @param by mm upwards in the middle */
function bowed(from: Point, to: Point, by: number): readonly Point[] {
  return Array.from({ length: 49 }, (_, i): Point => {
    const part = i / 48;
    const bow = by * Math.sin(Math.PI * part);
    return [from[0] + (to[0] - from[0]) * part, from[1] + (to[1] - from[1]) * part + bow];
  });
}

/** mm of a 5-year-old over which its muscle grows thin on the veins */
const SLEEVE = 9;

/** How far its muscle has thinned on a vein at a place on its edge: 1 where it ends, and beyond. */
export function sleeveOf({ chamber: [, b], scale }: Chambered): (point: Point) => number {
  return ([, y]) => Math.min(1, Math.max(0, Math.abs(y) - 0.97 * b) / (SLEEVE * scale));
}
