/** Conduit and tunnel: a tube from the lower vein meets the upper vein at the pulmonary arteries. */
import { smoothStep } from "../centreline.ts";
import type { Handle, PathwayGeometry, Place, Point } from "../geometry.ts";
import { type Branch, branch, spotOn, tubeOf, widthOn } from "./branch.ts";
import { fenestration } from "./fenestration.ts";
import { joint } from "./joint.ts";
import { leftArteryLine, rightArteryLine } from "./pulmonary-arteries.ts";
import { narrowingMiddle, pathwaySections } from "./sections.ts";
import type { PathwaySizes } from "./sizes.ts";
import { surroundings } from "./surroundings.ts";
import { whole } from "./whole.ts";

/** Differences between tunnel and conduit in the plane; mm for a 5-year-old. */
interface Course {
  readonly trunk: "conduit" | "tunnel";
  readonly diameterName: "conduitDiameter" | "tunnelDiameter";
  /** how far the lower vein enters nearer to the midline than the trunk ends */
  readonly lean: number;
  /** how far the trunk bows to the patient's right on its way */
  readonly bow: number;
  /** part by which the trunk is wider in its middle */
  readonly bulge: number;
  /** the atrium's edge from the trunk's axis: beside a conduit; behind a tunnel, whose outer wall is the atrium's own */
  readonly atriumEdge: (halfWidth: number) => number;
  /** how far beside the trunk the heart begins */
  readonly beside: number;
}

/** mm between a trunk and the heart beside it: the right atrium fills it beside a conduit, the common atrium beside a tunnel. */
const GAP = 8;

const CONDUIT: Course = {
  trunk: "conduit",
  diameterName: "conduitDiameter",
  lean: 5,
  bow: 0,
  bulge: 0,
  atriumEdge: (halfWidth) => halfWidth + GAP,
  beside: GAP,
};

const TUNNEL: Course = {
  trunk: "tunnel",
  diameterName: "tunnelDiameter",
  lean: 3,
  bow: 4,
  bulge: 0.06,
  atriumEdge: () => -4,
  beside: 8,
};

/**
 * Plane of the extracardiac conduit, mm.
 * @param scale the body's lengths over a 5-year-old's, dimensionless
 */
export const extracardiac = (sizes: PathwaySizes, scale: number): PathwayGeometry =>
  cross(sizes, scale, CONDUIT);

/**
 * Plane of the lateral tunnel, mm.
 * @param scale the body's lengths over a 5-year-old's, dimensionless
 */
export const lateralTunnel = (sizes: PathwaySizes, scale: number): PathwayGeometry =>
  cross(sizes, scale, TUNNEL);

function cross(sizes: PathwaySizes, scale: number, course: Course): PathwayGeometry {
  const { svc, left, right, flare, offset } = sizes;
  const sections = pathwaySections(sizes);
  const meet = joint({ svc, left, right, flare, lower: { diameter: sizes.trunkEnd, offset } });
  const lower = branch(sections.ivc, lowerLine(sizes, scale, course, meet.bottom));
  const upper = branch(sections.svc, upperLine(sizes.svcLength, scale, meet.top));
  const leftLung = branch(sections.left, leftArteryLine(meet.right, sizes.leftLength, scale));
  const rightLung = branch(sections.right, rightArteryLine(meet.left, sizes.rightLength, scale));

  const begin = sizes.ivcLength;
  const end = begin + sizes.trunkLength + meet.bottom;
  const widen = (distance: number) => 1 + course.bulge * Math.sin(Math.PI * smoothStep(begin, end, distance));
  const width = (distance: number) => widthOn(lower, distance) * widen(distance);
  const travel = end - begin;
  const pierced = begin + sizes.fenestrationPlace * travel;
  const hole = spotOn(lower, pierced);
  const outward: Point = [-hole.left[0], -hole.left[1]];
  const half = width(pierced) / 2;
  const wall: Point = [hole.at[0] + half * outward[0], hole.at[1] + half * outward[1]];
  const leak = fenestration(sizes, wall, outward, hole.along, travel);

  const sewn = Array.from({ length: SEWN + 1 }, (_, i) => begin + (travel * i) / SEWN);
  const graft = {
    kind: course.trunk === "conduit" ? "conduit" : "patch",
    line: sewn.map((distance) => spotOn(lower, distance).at),
    widths: sewn.map(width),
  } as const;

  const around = surroundings({
    scale,
    edge: offset + course.atriumEdge(sizes.trunk / 2),
    heart: offset + sizes.trunk / 2 + course.beside * scale,
    floor: -sizes.trunkLength - sizes.ivcRisen - 2 * scale,
    roof: -Math.max(left, right) / 2 - 3,
    junction: { at: [0, meet.top], width: svc },
  });
  return whole({
    name: sizes.stage,
    sizes,
    branches: { ivc: lower, svc: upper, left: leftLung, right: rightLung },
    shapes: [
      meet.shape,
      tubeOf(lower, 0, begin + sizes.trunkLength + meet.bottom + 0.5, widen),
      tubeOf(upper, 0, sizes.svcLength - meet.top + 0.5),
      tubeOf(leftLung, 0, leftLung.length),
      tubeOf(rightLung, 0, rightLung.length),
      ...leak.shapes,
    ],
    openings: leak.openings,
    handles: [...trunkHandles(sizes, lower, width, course), ...leak.handles],
    places: [...leak.places, trunkPlace(lower, begin + 0.3 * travel, course, width)],
    around: { ...around, frame: { ...around.frame, graft } },
  });
}

/** Points along the graft's course. */
const SEWN = 60;

/** From the lower opening to the joint's axis: level with the joint at its end, bowed on its way. */
function lowerLine(sizes: PathwaySizes, scale: number, course: Course, bottom: number): Point[] {
  const base = -sizes.trunkLength - sizes.ivcLength;
  const steps = 48;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const y = base * (1 - i / steps);
    const lean = course.lean * scale * (1 - smoothStep(-sizes.trunkLength, bottom - 4, y));
    const bow = course.bow * scale * Math.sin(Math.PI * smoothStep(-sizes.trunkLength - 4, bottom - 2, y));
    return [sizes.offset + lean - bow, y];
  });
}

/**
 * Centre line (mm) from the upper opening down to the joint's axis, leaning to the midline at its top.
 * @param length mm, from the opening to the axis
 * @param top mm: the joint's upper end, above which the vein may lean
 * @param scale the body's lengths over a 5-year-old's, dimensionless
 */
export function upperLine(length: number, scale: number, top: number): Point[] {
  const steps = 24;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const y = length * (1 - i / steps);
    return [3 * scale * smoothStep(top, length + 8 * scale, y), y];
  });
}

function trunkHandles(
  sizes: PathwaySizes,
  lower: Branch,
  width: (distance: number) => number,
  course: Course,
): Handle[] {
  const onRightWall = (distance: number) => {
    const { at, left } = spotOn(lower, distance);
    const half = width(distance) / 2;
    return { at: [at[0] + half * left[0], at[1] + half * left[1]] as const, out: left };
  };
  const begin = sizes.ivcLength;
  const wide = onRightWall(begin + 0.22 * sizes.trunkLength);
  const narrow = onRightWall(narrowingMiddle(lower.sections, course.trunk));
  const corner = sizes.flare * (1 - Math.SQRT1_2);
  return [
    { edits: course.diameterName, at: wide.at, along: wide.out, perMillimetre: 2 },
    {
      edits: "pathwayNarrowing",
      at: narrow.at,
      along: [-narrow.out[0], -narrow.out[1]],
      perMillimetre: 200 / sizes.trunk,
    },
    { edits: "conduitLength", at: spotOn(lower, begin).at, along: [0, -1], perMillimetre: 1 },
    { edits: "cavalOffset", at: spotOn(lower, begin * 0.4).at, along: [1, 0], perMillimetre: 1 },
    {
      edits: "jointFlare",
      at: [sizes.offset + sizes.trunkEnd / 2 + corner, -sizes.left / 2 - corner],
      along: [Math.SQRT1_2, -Math.SQRT1_2],
      perMillimetre: 1 / (Math.SQRT2 * (1 - Math.SQRT1_2)),
    },
  ];
}

function trunkPlace(
  lower: Branch,
  distance: number,
  { trunk }: Course,
  width: (distance: number) => number,
): Place {
  const { at, left } = spotOn(lower, distance);
  const reach = width(distance) / 2 + 14;
  return { name: trunk, at, label: [at[0] + reach * left[0], at[1] + reach * left[1]] };
}
