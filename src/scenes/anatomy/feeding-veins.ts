/** The veins that bring blood to the pathway from beyond its openings: from head and arms, from the liver, from the legs. */
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Tube } from "./great-vessels.ts";
import { type Placing, smoothLine } from "./placing.ts";
import { DEEP, DESCENT } from "./standing.ts";

/** mm of a 5-year-old by which a feeding vein runs on into the pathway, whose wall covers it */
export const INTO = 5;
/** mm of a 5-year-old by which the lower one runs on: as far as a deep breath draws it down, in whole ones so that it still overlaps */
const DRAWN = Math.ceil(DEEP * DESCENT);
/** 1/mm of a 5-year-old: how it bends towards the patient's right where it goes over into an atrium */
const BEND = 0.0075;

export interface FeedingVein extends Tube {
  /** those of a group are painted together; "cava" is the inferior vena cava, "atrium" its further way where the pathway leaves that out */
  readonly group: "cava" | "hepatic" | "brachiocephalic" | "atrium";
}

export const feedingVeins = (place: Placing): readonly FeedingVein[] => [
  ...lowerVeins(place),
  ...hepaticVeins(place),
  ...upperVeins(place),
];

function lowerVeins({ frame: { scale: s, ivc, lowerVein, chamber } }: Placing): readonly FeedingVein[] {
  const [x, y] = ivc.centre;
  const below = (across: number, down: number): Point => [x + across * s, y - down * s];
  const vein = { to: ivc.width } as const;
  const reach = DRAWN * s;
  const on = lowerVein?.filter(([, up]) => up > y + s && up < y + reach) ?? [];
  const [nx, ny] = ivc.normal;
  // As the pathway itself curves towards an atrium.
  const ahead = (part: number): Point => [
    x - part * reach * nx - (chamber ? (BEND / s) * (part * reach) ** 2 : 0),
    y - part * reach * ny,
  ];
  const end: readonly Point[] = on.length > 0 ? on : [ahead(0.5), ahead(1)];
  return [
    {
      ...vein,
      name: "lowerInferiorVenaCava",
      line: smoothLine([below(-1, 52), below(-0.6, 24), below(0, 7), [x, y], ...end]),
      from: 0.9 * ivc.width,
      fades: "start",
      group: "cava",
    },
    ...(lowerVein
      ? [
          {
            ...vein,
            name: "lowerVein",
            line: [below(0, INTO), ...lowerVein],
            from: ivc.width,
            group: "atrium",
            fades: "start",
            over: 0.18,
          } as const,
        ]
      : []),
  ];
}

/** Of the inferior vena cava's width: how far from its axis the blood of the hepatic veins joins it */
const BESIDE = 0.28;

/** Three that join the inferior vena cava right under the diaphragm, and twigs that join these. */
function hepaticVeins({ frame: { scale: s, ivc, hepaticVein }, inChest }: Placing): readonly FeedingVein[] {
  const [x, y] = ivc.centre;
  const below = (across: number, down: number): Point => [x + across * s, y - down * s];
  const vein = (name: string, width: number, ...line: readonly Point[]): FeedingVein => ({
    name,
    line: smoothLine(line),
    from: 0.14 * width * hepaticVein,
    to: width * hepaticVein,
    group: "hepatic",
  });
  // Their blood goes on up beside the stream from the legs.
  const beside = (BESIDE * ivc.width) / s;
  const [right, middle, left] = [
    [inChest(-52, -65), inChest(-32, -58.5), below(-11, 8.6), below(-beside - 2, 5), below(-beside, 3)],
    [inChest(-14, -72), inChest(-6, -66), below(-4, 11), below(-0.8 * beside, 4)],
    [inChest(40, -57.4), inChest(28, -57), below(12, 8), below(beside + 2, 5), below(beside, 3)],
  ] as const;
  return [
    vein(
      "upperHepaticTwig",
      0.42,
      inChest(-56, -51),
      inChest(-40, -52),
      inChest(-28, -54.4),
      inChest(-19, -54.8),
    ),
    vein(
      "lowerHepaticTwig",
      0.4,
      inChest(-46, -80),
      inChest(-36, -69),
      inChest(-28, -60.4),
      inChest(-21, -55.6),
    ),
    vein("leftHepaticTwig", 0.3, inChest(26, -65), inChest(24, -61), below(14, 10), below(10, 7)),
    vein("rightHepaticVein", 0.78, ...right),
    vein("middleHepaticVein", 0.66, ...middle),
    vein("leftHepaticVein", 0.66, ...left),
  ];
}

/** The left one comes from farther, before the branches of the arch. */
function upperVeins({ frame: { scale: s, svc } }: Placing): readonly FeedingVein[] {
  const [x, y] = svc.centre;
  const above = (across: number, up: number): Point => [x + across * s, y + up * s];
  // Its end lies as the pathway's own upper end does.
  const [nx, ny] = svc.normal;
  const into: Point = [x - INTO * s * nx, y - INTO * s * ny];
  const besideMouth = (side: 1 | -1, part: number): readonly Point[] => {
    const off = (side * (1 - part) * svc.width) / 2;
    return [
      [x + off * ny, y - off * nx],
      [into[0] + off * ny, into[1] - off * nx],
    ];
  };
  // Each keeps to its own side of the mouth, so that its outer wall goes on as the mouth's.
  const vein = (name: string, from: number, to: number, line: readonly Point[]): FeedingVein => ({
    name,
    line: smoothLine([...line, ...besideMouth(name.startsWith("right") ? -1 : 1, to)]),
    from: from * svc.width,
    to: to * svc.width,
    group: "brachiocephalic",
    fades: "start",
  });
  return [
    {
      name: "superiorVenaCava",
      line: [[x + 3 * s * nx, y + 3 * s * ny], into],
      from: svc.width,
      to: svc.width,
      group: "brachiocephalic",
    },
    vein("rightBrachiocephalicVein", 0.7, 0.8, [above(-14, 36), above(-10, 22), above(-3.4, 10)]),
    vein("leftBrachiocephalicVein", 0.66, 0.78, [
      above(56, 29),
      above(36, 20),
      above(16, 11.5),
      above(4.4, 6),
    ]),
  ];
}
