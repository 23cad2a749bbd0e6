/** Centre lines of the pulmonary arteries, from the joint with the veins: the right slopes down at once, the left arches over its bronchus. */
import { arc } from "../centreline.ts";
import type { Point } from "../geometry.ts";

/**
 * Centre line of the left pulmonary artery, mm.
 * @param straight mm: how far the artery is level beside the joint
 * @param reach mm: where it ends, sideways from the joint's axis
 * @param scale the body's lengths over a 5-year-old's, dimensionless
 */
export function leftArteryLine(straight: number, reach: number, scale: number): Point[] {
  const end = Math.max(reach, straight + 24 * scale);
  const span = end - straight;
  return [
    [0, 0],
    ...arc(
      [straight, 0],
      [straight + 0.35 * span, 0],
      [straight + 0.62 * span, 13 * scale],
      [end, -3 * scale],
    ),
  ];
}

/** Centre line of the right pulmonary artery, mm; parameters as {@link leftArteryLine}, sideways to the patient's right. */
export function rightArteryLine(straight: number, reach: number, scale: number): Point[] {
  const end = Math.max(reach, straight + 18 * scale);
  const span = end - straight;
  return [
    [0, 0],
    ...arc([-straight, 0], [-straight - 0.4 * span, 0], [-straight - 0.7 * span, -scale], [-end, -9 * scale]),
  ];
}
