/** Where heart, lungs and great vessels lie around the pathway, and the places among them that are named. Seen from the front, mm. */
import { closedOutline } from "../centreline.ts";
import type { ChestFrame, Place, Point } from "../geometry.ts";

/** What a pathway tells of its surroundings; where its vessels end is known when it is whole. */
export interface Surroundings {
  readonly frame: Pick<
    ChestFrame,
    "scale" | "level" | "heart" | "heartScale" | "atrium" | "lowerVein" | "junction" | "chamber" | "graft"
  >;
  readonly places: readonly Place[];
}

interface Around {
  /** mm: the atrium's edge towards the patient's right */
  readonly edge: number;
  /** mm: where the heart begins beside the pathway */
  readonly heart: number;
  /** mm: the atrium's lower and upper end */
  readonly floor: number;
  readonly roof: number;
  /** the body's lengths over a 5-year-old's */
  readonly scale: number;
  /** the inferior vena cava's course into the atrium where the pathway leaves it out, mm */
  readonly lowerVein?: readonly Point[];
  /** where the superior vena cava is sewn to the pulmonary arteries */
  readonly junction?: ChestFrame["junction"];
}

/** The chest's frame and its named places, all in mm. */
export function surroundings({
  edge,
  heart,
  floor,
  roof,
  scale: s,
  lowerVein,
  junction,
}: Around): Surroundings {
  const level = (floor + roof) / 2;
  // The heart keeps to the room that the pathway's length leaves it above the diaphragm.
  const heartScale = s * Math.min(1.15, Math.max(0.75, (roof - floor) / (40 * s)));
  const inHeart = (x: number, y: number): Point => [heart + x * heartScale, level + y * heartScale];
  const inChest = (x: number, y: number): Point => [x * s, level + y * s];
  const places: Place[] = [
    { name: "atrium", at: inHeart(31, 0), label: inHeart(31, 6) },
    { name: "ventricle", at: inHeart(42, -31), label: inHeart(42, -31) },
    { name: "aorta", at: inChest(31, 54), label: inChest(46, 68) },
    { name: "rightLung", at: inChest(-58, -6), label: inChest(-60, -26) },
    { name: "leftLung", at: inChest(84, 0), label: inChest(84, 8) },
  ];
  const atrium = atriumOutline((edge - heart) / heartScale, lowerVein !== undefined).map((point) =>
    inHeart(...point),
  );
  const course = { ...(lowerVein && { lowerVein }), ...(junction && { junction }) };
  return { frame: { scale: s, level, heart, heartScale, atrium, ...course }, places };
}

/** Beside a pathway or, where its edge lies far to the right, around it; in mm of a 5-year-old's heart. Where a tunnel keeps the lower vein out of it, its floor rises beside that. */
function atriumOutline(edge: number, entered: boolean): Point[] {
  const wide = Math.max(0, -edge);
  const around = wide > 12;
  return closedOutline([
    [edge, -2],
    [edge + 1.5, 9],
    ...(around && entered
      ? ([
          [edge + 7.5, 13.4],
          [edge + 0.6 * wide + 3, 13],
          [edge + 0.9 * wide + 4, 15],
        ] as const)
      : [[edge + 8, around ? 17.6 : 16] as const]),
    [18, 18.4],
    [28, 17.4],
    [35.5, 13],
    [38.5, 5.5],
    [37.5, -2],
    [34, -8],
    [28.5, -13],
    ...(around && !entered
      ? ([
          [17, -29],
          [9, -31.4],
          [0, -30],
          [edge + 2, -24],
        ] as const)
      : ([
          [15, -25],
          [9, -24],
          ...(around ? [[edge + 0.5 * wide + 2, -24] as const] : []),
          [edge + 4, -15],
        ] as const)),
  ]);
}
