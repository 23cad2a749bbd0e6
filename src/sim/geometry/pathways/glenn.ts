/** At the Glenn stage: the upper vein divides into the pulmonary arteries; the lower one still empties into the atrium and is drawn without a computed field. */
import type { Handle, PathwayGeometry, Point } from "../geometry.ts";
import { branch, tubeOf } from "./branch.ts";
import { upperLine } from "./cross.ts";
import { joint } from "./joint.ts";
import { leftArteryLine, rightArteryLine } from "./pulmonary-arteries.ts";
import { pathwaySections } from "./sections.ts";
import type { PathwaySizes } from "./sizes.ts";
import { surroundings } from "./surroundings.ts";
import { whole } from "./whole.ts";

/**
 * Plane of the Glenn stage, mm: superior vena cava and pulmonary arteries.
 * @param scale the body's lengths over a 5-year-old's, dimensionless
 */
export function glenn(sizes: PathwaySizes, scale: number): PathwayGeometry {
  const { svc, left, right, flare } = sizes;
  const sections = pathwaySections(sizes);
  const meet = joint({ svc, left, right, flare });
  const upper = branch(sections.svc, upperLine(sizes.svcLength, scale, meet.top));
  const leftLung = branch(sections.left, leftArteryLine(meet.right, sizes.leftLength, scale));
  const rightLung = branch(sections.right, rightArteryLine(meet.left, sizes.rightLength, scale));
  const floor = -48 * scale;
  const entering: Point[] = [
    [0, floor - sizes.ivcLength],
    [0, floor],
    [2 * scale, floor + sizes.ivc],
  ];
  const lower = branch(sections.ivc, entering);
  const around = surroundings({
    scale,
    edge: -16 * scale,
    heart: 6 * scale,
    floor,
    roof: -Math.max(left, right) / 2 - 3,
    lowerVein: [
      [0, floor - sizes.ivcLength],
      [0, floor - 4 * scale],
      [0, floor - 2 * scale],
    ],
    junction: { at: [0, meet.top], width: svc },
  });
  const corner = flare * (1 - Math.SQRT1_2);
  const handles: Handle[] = [
    {
      edits: "jointFlare",
      at: [svc / 2 + corner, left / 2 + corner],
      along: [Math.SQRT1_2, Math.SQRT1_2],
      perMillimetre: 1 / (Math.SQRT2 * (1 - Math.SQRT1_2)),
    },
  ];
  return whole({
    name: sizes.stage,
    sizes,
    branches: { svc: upper, left: leftLung, right: rightLung },
    lowerBeyond: lower,
    shapes: [
      meet.shape,
      tubeOf(upper, 0, sizes.svcLength - meet.top + 0.5),
      tubeOf(leftLung, 0, leftLung.length),
      tubeOf(rightLung, 0, rightLung.length),
    ],
    handles,
    places: [],
    around,
  });
}
