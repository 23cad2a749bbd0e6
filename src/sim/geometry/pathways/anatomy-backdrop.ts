/** What lies around the pathway and is drawn without computed flow: heart, aorta, lungs, and the veins before they enter. Seen from the front. */
import { arc, band, closedOutline } from "../centreline.ts";
import type { Place, Point } from "../geometry.ts";
import type { Branch } from "./branch.ts";
import { spotOn } from "./branch.ts";
import type { PathwaySizes } from "./sizes.ts";

/** Outlines (mm) and labelled places that are drawn without computed flow. */
export interface Backdrop {
  readonly outlines: readonly { readonly name: string; readonly outline: readonly Point[] }[];
  readonly places: readonly Place[];
}

interface Around {
  readonly sizes: PathwaySizes;
  readonly ivc: Branch;
  readonly svc: Branch;
  /** mm: the atrium's edge towards the pathway, and its lower and upper end */
  readonly edge: number;
  readonly floor: number;
  readonly roof: number;
  /** mm: where the pathway's lumen ends towards the patient's left at that height, for the atrium's label to clear */
  readonly clear: number;
  /** the body's lengths over a 5-year-old's */
  readonly scale: number;
}

/** The surroundings in mm, back to front. */
export function backdrop(around: Around): Backdrop {
  const { edge, floor, roof, clear, scale: s } = around;
  const middle = (floor + roof) / 2;
  const tall = (roof - floor) / 2;
  const at = (x: number, y: number): Point => [edge + x * s, middle + y * tall];
  const lung = (points: readonly Point[]) => closedOutline(points.map(([x, y]) => [x * s, middle + y * s]));
  const atrium = closedOutline([
    at(0, 0.1),
    at(3, 0.75),
    at(14, 1),
    at(32, 0.92),
    at(42, 0.45),
    at(40, -0.3),
    at(27, -0.85),
    at(10, -1),
    at(1, -0.6),
  ]);
  const ventricle = closedOutline([
    at(20, -0.25),
    at(34, -0.1),
    at(50, -0.35),
    at(61, -1),
    at(62, -1.75),
    at(52, -2.05),
    at(34, -1.75),
    at(20, -1.15),
  ]);
  const aorta = band(
    [
      ...arc(at(34, -0.4), at(27, 0.3), at(16, 1.5), at(19, 2.35), 20),
      ...arc(at(19, 2.35), at(22, 3.25), at(46, 3.3), at(47, 2.1), 20).slice(1),
      ...arc(at(47, 2.1), at(48, 0.9), at(45, -0.6), at(44, -2.3), 20).slice(1),
    ],
    13 * s,
    8 * s,
  );
  const outlines = [
    {
      name: "rightLung",
      outline: lung([
        [-30, 58],
        [-48, 48],
        [-66, 16],
        [-74, -28],
        [-70, -50],
        [-44, -40],
        [-24, -38],
        [-17, -12],
        [-16, 20],
        [-20, 46],
      ]),
    },
    {
      name: "leftLung",
      outline: lung([
        [52, 58],
        [68, 48],
        [84, 18],
        [94, -24],
        [92, -52],
        [76, -44],
        [66, -42],
        [62, -22],
        [46, -6],
        [34, 20],
        [38, 46],
      ]),
    },
    { name: "aorta", outline: aorta },
    { name: "atrium", outline: atrium },
    { name: "ventricle", outline: ventricle },
    ...veins(around),
  ];
  const places: Place[] = [
    { name: "atrium", at: at(30, 0.2), label: [Math.max(at(28, 0)[0], clear + 13 * s), at(0, 0.45)[1]] },
    { name: "ventricle", at: at(42, -1.1), label: at(42, -1.2) },
    { name: "aorta", at: at(32, 2.9), label: at(32, 3.6) },
    { name: "rightLung", at: [-58 * s, middle], label: [-60 * s, middle - 26 * s] },
    { name: "leftLung", at: [80 * s, middle], label: [82 * s, middle + 6 * s] },
  ];
  return { outlines, places };
}

/** Hepatic veins and the vein from the legs below the lower opening; the two arm and head veins above the upper one. */
function veins({ sizes, ivc, svc, scale: s }: Around): Backdrop["outlines"] {
  const below = spotOn(ivc, 0).at;
  const above = spotOn(svc, 0).at;
  const { hepaticVein, ivc: lower, svc: upper } = sizes;
  const liver = (sideways: number) =>
    band(
      arc(
        [below[0] + sideways * 24 * s, below[1] - 11 * s],
        [below[0] + sideways * 14 * s, below[1] - 11 * s],
        [below[0] + sideways * (lower / 4), below[1] - 8 * s],
        [below[0] + (sideways * (lower - hepaticVein)) / 2, below[1]],
      ),
      hepaticVein * 0.8,
      hepaticVein,
    );
  const head = (sideways: number, reach: number) =>
    band(
      arc(
        [above[0] + sideways * reach * s, above[1] + 16 * s],
        [above[0] + sideways * reach * 0.6 * s, above[1] + 12 * s],
        [above[0] + (sideways * upper) / 4, above[1] + 9 * s],
        [above[0] + (sideways * upper) / 8, above[1]],
      ),
      upper * 0.6,
      upper * 0.75,
    );
  return [
    {
      name: "legVein",
      outline: band(
        [[below[0] + 1.5 * s, below[1] - 22 * s], [below[0], below[1] - 8 * s], below],
        lower * 0.72,
        lower,
      ),
    },
    { name: "rightLiverVein", outline: liver(-1) },
    { name: "leftLiverVein", outline: liver(1) },
    { name: "rightHeadVein", outline: head(-1, 13) },
    { name: "leftHeadVein", outline: head(1, 30) },
  ];
}
