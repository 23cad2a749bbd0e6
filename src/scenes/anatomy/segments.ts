/** The lungs' vessels as far as their segments (common textbook course, no source); mm of a 5-year-old in the chest, seen from the front. */
import { VEIN_ROOTS } from "./great-vessels.ts";
import type { Limb } from "./tree.ts";

export type Side = "left" | "right";

type Table = Readonly<Record<Side, readonly Limb[]>>;

/** "limb point: x y, x y ...": which limb it leaves at which of its points, and where it goes; a stem leaves none. */
function limbs(...rows: readonly string[]): readonly Limb[] {
  const numbers = (text: string) => text.trim().split(/ +/).map(Number);
  return rows.map((row) => {
    const [course = "", joint] = row.split(":").reverse();
    const through = course.split(",").map((pair) => numbers(pair) as unknown as Limb["through"][number]);
    return joint ? { from: numbers(joint) as unknown as NonNullable<Limb["from"]>, through } : { through };
  });
}

export const ARTERIES: Table = {
  right: limbs(
    // interlobar artery, on to the basal trunk
    "-38 19, -42 13, -43.6 4.5, -44.6 -5, -46.4 -15, -49.5 -25, -51 -32",
    // truncus anterior to the upper lobe: apical, posterior, anterior
    "0 1: -46.5 20, -49 31, -46 44, -42 55",
    "1 2: -54 39, -53 47",
    "1 1: -56 27, -62 31",
    // middle lobe
    "0 2: -40 -5, -35.5 -15, -31 -24",
    // lower lobe: superior segment, then medial, lateral and anterior basal
    "0 2: -52 6, -63 8",
    "0 4: -43.6 -23, -40 -31",
    "0 4: -56 -20, -65 -30, -70 -39",
    "0 3: -55 -8, -66 -14",
  ),
  left: limbs(
    // over the bronchus, then down behind it to the basal trunk
    "56 25, 63 18.5, 69 9, 73 -2, 76 -13, 78 -24, 78 -34",
    // upper lobe: apicoposterior, anterior
    "0 1: 64 29, 60 41, 55 55",
    "1 2: 66 46, 66 54",
    "1 1: 71 33, 73 41",
    // lingula, and superior segment of the lower lobe
    "0 3: 72 -14, 69 -24",
    "0 2: 78 4, 86 2",
    // anterior and lateral basal
    "0 4: 73 -25, 71 -33",
    "0 4: 83 -21, 88 -31, 91 -41",
  ),
};

const [rightUpper, rightLower, leftUpper, leftLower] = [...VEIN_ROOTS.right, ...VEIN_ROOTS.left].map((root) =>
  root.join(" "),
);

/** Between the arteries, an upper and a lower vein of each lung. */
export const VEINS: Table = {
  right: limbs(
    `${rightUpper}, -27 11, -34.5 17.5, -37.5 29, -38 43, -35.5 57`,
    "0 3: -31.5 39, -27.5 49",
    "0 1: -30 5, -34 -2, -31 -12",
    `${rightLower}, -30 -13, -38 -18, -44 -21`,
    "3 1: -40 -11, -52 -9, -62 -4, -68 -2",
    "3 2: -47 -20, -56 -24, -61 -33, -63 -40",
    "3 3: -48 -29, -48 -35",
  ),
  left: limbs(
    `${leftUpper}, 67 13, 74 13, 79 20, 79 29, 75 38`,
    "0 2: 81 10, 86 4",
    `${leftLower}, 70 -1, 74 -6, 81 -9, 87 -15, 91 -24`,
    "2 2: 81 -3, 90 -4",
    "2 3: 84 -18, 83 -30",
  ),
};
