/** Puts branches, joint or chamber, hole and surroundings together into one pathway. */

import { entryAt, lastOf, present } from "../../checked/present.ts";
import { shapeBounds } from "../distance.ts";
import type { Handle, Opening, PathwayGeometry, Place, Point, Shape, Station } from "../geometry.ts";
import { pathOrder } from "../path-order.ts";
import { type Branch, openingOf, spotOn, widthOn } from "./branch.ts";
import { courseOf, followedLung, narrowingMiddle } from "./sections.ts";
import type { PathwaySizes } from "./sizes.ts";
import type { Surroundings } from "./surroundings.ts";

interface Branches {
  readonly ivc?: Branch;
  readonly svc: Branch;
  readonly left: Branch;
  readonly right: Branch;
}

interface Parts {
  readonly name: string;
  readonly sizes: PathwaySizes;
  readonly branches: Branches;
  readonly shapes: readonly Shape[];
  readonly openings?: readonly Opening[];
  readonly handles: readonly Handle[];
  readonly places: readonly Place[];
  readonly around: Surroundings;
  /** the lower branch's way, when its blood has no field in this plane */
  readonly lowerBeyond?: Branch;
}

/** The complete pathway in mm: openings, bounds, handles, places and path from its parts. */
export function whole({
  name,
  sizes,
  branches,
  shapes,
  openings = [],
  handles,
  places,
  around,
  lowerBeyond,
}: Parts): PathwayGeometry {
  const { ivc, svc, left, right } = branches;
  const lower = lowerBeyond ?? present(ivc);
  const cuts = [
    ...(ivc ? [openingOf(ivc, "ivc")] : []),
    openingOf(svc, "svc"),
    openingOf(left, "left"),
    openingOf(right, "right"),
    ...openings,
  ];
  return {
    name,
    open: shapes,
    solid: [],
    openings: cuts,
    bounds: bounds(shapes, cuts),
    handles: [...handles, stenosisHandle(left, "left"), stenosisHandle(right, "right")],
    places: [...places, ...veinPlaces(branches, lower), ...around.places],
    path: path(sizes, branches, lower),
    chest: {
      ...around.frame,
      svc: openingOf(svc, "svc"),
      ivc: openingOf(lower, "ivc"),
      left: openingOf(left, "left"),
      right: openingOf(right, "right"),
      arteries: { left: lastStretch(left), right: lastStretch(right) },
      hepaticVein: sizes.hepaticVein,
      ...(openings[0] && { hole: openings[0] }),
    },
  };
}

/** As long as the vessel is wide one and a half times. */
const lastStretch = (branch: Branch): Point[] =>
  Array.from({ length: 9 }, (_, i) => {
    const back = 1.5 * widthOn(branch, branch.length) * (1 - i / 8);
    return spotOn(branch, branch.length - back).at;
  });

function stenosisHandle(branch: Branch, side: "left" | "right"): Handle {
  const middle = narrowingMiddle(branch.sections, `${side}Artery`);
  const { at, left } = spotOn(branch, middle);
  // The upper wall: left of the way on the patient's left, right of it on the other side.
  const up: Point = side === "left" ? left : [-left[0], -left[1]];
  const half = widthOn(branch, middle) / 2;
  const whole = lastOf(branch.sections).after;
  return {
    edits: `${side}BranchStenosis`,
    at: [at[0] + half * up[0], at[1] + half * up[1]],
    along: [-up[0], -up[1]],
    perMillimetre: 200 / whole,
  };
}

function veinPlaces({ svc, left, right }: Branches, lower: Branch): Place[] {
  const beside = (name: string, branch: Branch, distance: number, gap: number): Place => {
    const { at, left: across } = spotOn(branch, distance);
    const reach = gap < 0 ? gap - widthOn(branch, distance) / 2 : gap + widthOn(branch, distance) / 2;
    return { name, at, label: [at[0] + reach * across[0], at[1] + reach * across[1]] };
  };
  return [
    beside("svc", svc, svc.length * 0.15, -14),
    beside("leftPulmonaryArtery", left, left.length * 0.8, 9),
    beside("rightPulmonaryArtery", right, right.length * 0.8, -9),
    beside("ivc", lower, entryAt(lower.sections, 0).to * 0.5, 14),
    beside("hepaticVein", lower, 0, 26),
  ];
}

function path(sizes: PathwaySizes, branches: Branches, lower: Branch): Station[] {
  const lung = branches[followedLung(sizes)];
  const area = new Map(
    [lower, lung].flatMap((branch) =>
      branch.sections.map(({ element, from, to }) => {
        const radius = Math.max(to - from, widthOn(branch, (from + to) / 2)) / 2;
        return [element, { centre: spotOn(branch, (from + to) / 2).at, radius }] as const;
      }),
    ),
  );
  return pathOrder(lower.sections, lung.sections, courseOf(sizes.stage)).map((station) => {
    const lit = area.get(station.element);
    return lit ? { ...station, area: lit } : station;
  });
}

/** [left, bottom, right, top] of the shapes, cut off at the openings that face outwards. */
function bounds(
  shapes: readonly Shape[],
  cuts: readonly Opening[],
): readonly [number, number, number, number] {
  const boxes = shapes.map(shapeBounds);
  const low = (k: 0 | 1) => Math.min(...boxes.map((box) => box[k]));
  const high = (k: 2 | 3) => Math.max(...boxes.map((box) => box[k]));
  const edge = [low(0), low(1), high(2), high(3)] as [number, number, number, number];
  for (const { centre, normal, width } of cuts) {
    const reach = (k: 0 | 1) => (width / 2) * Math.abs(entryAt(normal, 1 - k));
    if (centre[0] + reach(0) > edge[2] - width / 2 && normal[0] > 0) edge[2] = centre[0] + reach(0);
    if (centre[0] - reach(0) < edge[0] + width / 2 && normal[0] < 0) edge[0] = centre[0] - reach(0);
    if (centre[1] + reach(1) > edge[3] - width / 2 && normal[1] > 0.7) edge[3] = centre[1] + reach(1);
    if (centre[1] - reach(1) < edge[1] + width / 2 && normal[1] < -0.7) edge[1] = centre[1] - reach(1);
  }
  return edge;
}
