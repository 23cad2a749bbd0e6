/** The chamber: both cavae empty into a wide atrium, and each pulmonary artery leaves from its roof beside the upper vein. */
import { arc } from "../centreline.ts";
import type { Handle, PathwayGeometry, Place, Point, Shape } from "../geometry.ts";
import { branch, tubeOf } from "./branch.ts";
import { fenestration } from "./fenestration.ts";
import { pathwaySections } from "./sections.ts";
import type { PathwaySizes } from "./sizes.ts";
import { surroundings } from "./surroundings.ts";
import { whole } from "./whole.ts";

/** degrees from the top of the chamber at which the pulmonary arteries leave it */
const MOUTH = 50;

/**
 * Plane of the atriopulmonary connection, mm.
 * @param scale the body's lengths over a 5-year-old's, dimensionless
 */
export function atriopulmonary(sizes: PathwaySizes, scale: number): PathwayGeometry {
  const sections = pathwaySections(sizes);
  const radii: Point = [sizes.trunk / 2, sizes.trunkLength / 2];
  const onWall = (degrees: number): Point => {
    const angle = (degrees * Math.PI) / 180;
    return [radii[0] * Math.sin(angle), radii[1] * Math.cos(angle)];
  };
  const ivc = branch(sections.ivc, veinLine(sizes.offset, -radii[1], -sizes.ivcLength, 4 * scale));
  const svc = branch(sections.svc, veinLine(0, radii[1], sizes.svcLength, 3 * scale));
  const left = branch(sections.left, arteryLine(onWall(MOUTH), sizes.leftLength, scale, 1));
  const right = branch(sections.right, arteryLine(onWall(-MOUTH), sizes.rightLength, scale, -1));

  // Place 0..100 % counts up the chamber's wall towards the atrium.
  const degrees = 150 - 90 * sizes.fenestrationPlace;
  const angle = (degrees * Math.PI) / 180;
  const slope: Point = [Math.sin(angle) / radii[0], Math.cos(angle) / radii[1]];
  const steep = Math.hypot(...slope);
  const outward: Point = [slope[0] / steep, slope[1] / steep];
  const travel = ((90 * Math.PI) / 180) * ((radii[0] + radii[1]) / 2);
  const leak = fenestration(sizes, onWall(degrees), outward, [-outward[1], outward[0]], travel);

  const around = surroundings({
    scale,
    edge: radii[0] - 6 * scale,
    heart: radii[0] - 2 * scale,
    floor: -0.95 * radii[1],
    roof: 0.42 * radii[1],
  });
  return whole({
    name: sizes.stage,
    sizes,
    branches: { ivc, svc, left, right },
    shapes: [
      ...chamber(radii),
      tubeOf(ivc, 0, sizes.ivcLength + Math.min(radii[1] / 2, sizes.ivc)),
      tubeOf(svc, 0, sizes.svcLength + Math.min(radii[1] / 2, sizes.svc)),
      tubeOf(left, 0, left.length),
      tubeOf(right, 0, right.length),
      ...leak.shapes,
    ],
    openings: leak.openings,
    handles: [...chamberHandles(sizes, radii), ...leak.handles],
    places: [...leak.places, chamberPlace(radii)],
    around: { ...around, frame: { ...around.frame, chamber: radii } },
  });
}

/** The free wall of a distended atrium leans out to the patient's right and below. */
const chamber = ([a, b]: Point): Shape[] => [
  { ellipse: { centre: [0, 0], radii: [a, b], angle: 0 } },
  { ellipse: { centre: [-0.16 * a, -0.14 * b], radii: [0.94 * a, 0.8 * b], angle: 12 } },
];

/** From the opening, `length` beyond the chamber's edge, straight on to its middle; leaning to the midline outside. */
function veinLine(axis: number, edge: number, length: number, lean: number): Point[] {
  const end = edge + length;
  return [
    ...arc([axis + lean, end], [axis + lean, end - length * 0.5], [axis, edge + length * 0.4], [axis, edge]),
    [axis, 0],
  ];
}

/** From the chamber's wall outwards, level at the top of its arch, sloping down to the lung. */
function arteryLine([x, y]: Point, length: number, scale: number, side: 1 | -1): Point[] {
  const end = x + side * Math.max(length, 24 * scale);
  const rise = side > 0 ? 10 : 6;
  return arc(
    [x, y],
    [x + side * 0.3 * length, y + rise * scale],
    [x + side * 0.7 * length, y + rise * scale],
    [end, y - 2 * scale],
    28,
  );
}

function chamberHandles(sizes: PathwaySizes, radii: Point): Handle[] {
  return [
    {
      edits: "chamberDiameter",
      at: [-radii[0] * 1.08, -0.1 * radii[1]],
      along: [-1, 0],
      perMillimetre: 2 / 1.08,
    },
    {
      edits: "cavalOffset",
      at: [sizes.offset, -radii[1] - sizes.ivcLength * 0.6],
      along: [1, 0],
      perMillimetre: 1,
    },
  ];
}

const chamberPlace = (radii: Point): Place => ({
  name: "chamber",
  radius: Math.max(...radii),
  at: [0, 0],
  label: [-radii[0] - 16, -0.4 * radii[1]],
});
