/** The one anatomy in the whole circulation's plane: where heart, lungs and liver are painted, and the vessels that they share with it. */
import { entryAt } from "../../sim/checked/present.ts";
import { band } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { surroundings } from "../../sim/geometry/pathways/surroundings.ts";
import type { Stage } from "../../sim/parameters/request.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import type { Tube } from "../anatomy/great-vessels.ts";
import type { HeartShape } from "../anatomy/heart-shape.ts";
import type { LungShape } from "../anatomy/lung-shape.ts";
import { stemsOf, type Tree } from "../anatomy/tree.ts";
import { curve, placeOn, type Spot, spots, spotsOf } from "../drawing/curve-drawing.ts";
import { middleOf } from "./chamber-blood.ts";
import type { Blood, Vessel } from "./vessel.ts";

/** Plane units of the chest's origin, and of one of its millimetres; the chest counts up, the plane down. */
export const CHEST_AT = { x: 468, y: 276, scale: 3.2 } as const;

export const onPlane = ([x, y]: Point): Spot => [
  CHEST_AT.x + CHEST_AT.scale * x,
  CHEST_AT.y - CHEST_AT.scale * y,
];
export const inChest = ([x, y]: Spot): Point => [
  (x - CHEST_AT.x) / CHEST_AT.scale,
  (CHEST_AT.y - y) / CHEST_AT.scale,
];

/** mm: how far the atrium reaches to the patient's right. */
const EDGE: Readonly<Record<Stage, number>> = {
  "two-ventricle": 18,
  glenn: -14,
  atriopulmonary: 6,
  "lateral-tunnel": -4,
  extracardiac: 8,
};

/** The way from the inferior vena cava to the pulmonary arteries where a graft or a patch makes it. */
export const TRUNKS = {
  "lateral-tunnel": { width: 36, points: spots("468 524, 466 450, 464 360, 468 276") },
  extracardiac: { width: 36, points: spots("468 524, 465 470, 463 400, 464 330, 468 276") },
} as const;

/** The part of that way which is sewn in. */
export const SEWN = { "lateral-tunnel": [0.06, 0.86], extracardiac: [0.2, 0.9] } as const;

/** Plane units by which the cloth lies within the vessel's outline: the blood fills it to its wall. */
const WALL = 3;
function graftOf(stage: Stage): Pick<ChestFrame, "graft"> {
  if (stage !== "extracardiac" && stage !== "lateral-tunnel") return {};
  const { width, points } = TRUNKS[stage];
  const way = spotsOf(curve(points));
  const [from, to] = SEWN[stage].map((part) => part * (way.length - 1)) as [number, number];
  const line = way.filter((_, i) => i >= from && i <= to).map(inChest);
  const kind = stage === "extracardiac" ? "conduit" : "patch";
  return { graft: { kind, line, widths: line.map(() => (width - WALL) / CHEST_AT.scale) } };
}

/** Where a great vessel enters or leaves the chest; mm. */
type Mouth = readonly [centre: Point, normal: Point, width: number];
type Mouths = Readonly<Record<"svc" | "ivc" | "left" | "right", Mouth>>;
/** Under a neck. */
const IN_BODY: Mouths = {
  svc: [[0, 16], [0, 1], 8.6],
  ivc: [[0, -72], [0, -1], 9.4],
  left: [[46.5, -0.5], [0.8, -0.6], 8],
  right: [[-26, -4.5], [-0.84, -0.54], 8],
};
/** As the pathways' own planes have them before a Fontan: from stage to stage the chest keeps its place. */
const CLOSE: Mouths = {
  svc: [[2.4, 30], [0.13, 0.99], 10.5],
  ivc: [[0, -72], [0, -1], 13.5],
  left: [[56, -3], [0.77, -0.63], 10],
  right: [[-38, -9], [-0.75, -0.66], 10.5],
};

const frames = new Map<string, ChestFrame>();

/** @param close heart and lungs fill the picture */
export function chestFrame(stage: Stage, close = false): ChestFrame {
  const key = `${stage} ${close}`;
  const before = frames.get(key);
  if (before) return before;
  const opening = (name: keyof Mouths) => {
    const [centre, normal, width] = (close ? CLOSE : IN_BODY)[name];
    return { name, centre, normal, width };
  };
  const { frame: around } = surroundings({
    scale: 1,
    edge: EDGE[stage],
    // The left side of a heart with two ventricles lies beside its right one, and its right atrium beside a conduit.
    heart: { "two-ventricle": 10, extracardiac: 8 }[stage as string] ?? 5,
    ...(close ? { floor: -48, roof: -8.25 } : { floor: -45, roof: -5 }),
  });
  const frame = {
    ...around,
    svc: opening("svc"),
    ivc: opening("ivc"),
    left: opening("left"),
    right: opening("right"),
    hepaticVein: 7,
    ...graftOf(stage),
  };
  frames.set(key, frame);
  return frame;
}

/** Plane units of the aorta's width beyond its arch. */
export const ARCH = 38;
const DESCENDING = 29;

/** Courses of blood through each lung that are drawn. */
const COURSES = 8;

/** Aorta with its branches, pulmonary veins, and the ways through the lungs. */
export function chestVessels(stage: Stage, close = false): readonly Vessel[] {
  const { before, behind, lungs, heart } = anatomyOf(chestFrame(stage, close));
  const tube = (name: string): Tube => {
    const found = [...before, ...behind].find((each) => each.name === name);
    if (!found) throw new Error(`the anatomy has no ${name}`);
    return found;
  };
  const along = (name: string): readonly Spot[] => thinned(tube(name).line).map(onPlane);
  const toNeck: readonly Spot[] = [...along("brachiocephalicArtery").slice(0, 3), [490, 168]];
  const artery = (name: string, flow: string, width: number, points: readonly Spot[], share = 1) =>
    ({ name, flow, blood: "arterial", width, points, share, joins: "arch" }) as const;
  return [
    {
      ...artery("arch", "aorta", ARCH, fromAnnulus(along("aorta"))),
      tapers: "end",
      narrows: 1 - DESCENDING / ARCH,
      opens: "end",
    },
    artery("brachiocephalicArtery", "upper", 18, toNeck, 0.5),
    {
      // Behind the heart towards the midline, before the lung.
      ...artery("thoracicAorta", "splanchnic+legs", DESCENDING, [
        // Under the arch's end, which melts into it.
        ...tube("aorta")
          .line.slice(-29)
          .filter((_, i) => i % 7 === 0)
          .map(onPlane),
        ...along("descendingAorta").slice(2, 6),
        [594, 394],
        [570, 460],
      ]),
      behind: true,
      joins: "aorta",
    },
    {
      // Through the diaphragm just left of the inferior vena cava.
      ...artery("descending", "splanchnic+legs", DESCENDING, [
        [574, 450],
        [570, 460],
        [546, 516],
        [534, 566],
        [531, 640],
        [529, 740],
        [527, 852],
      ]),
      under: true,
      joins: "aorta",
    },
    ...throughHeart(heart),
    ...lungs.flatMap((lung) => [
      ...through(
        lung,
        stage === "two-ventricle" && lung.side === "right" ? BEFORE_VEINS : Number.POSITIVE_INFINITY,
      ),
      ...veins(lung, tube, heart),
    ]),
  ];
}

/** Part of the arch that lies before the left pulmonary artery, and plane units of its way in the ventricle and under its valve. */
const [ABOVE_ARTERY, BELOW_ANNULUS] = [0.88, 19];

function fromAnnulus(points: readonly Spot[]): readonly Spot[] {
  const line = curve(points);
  const at = new Float64Array(4);
  return Array.from({ length: 25 }, (_, i): Spot => {
    const start = BELOW_ANNULUS / line.length;
    placeOn(line, start + (ABOVE_ARTERY - start) * (i / 24), at);
    return [entryAt(at, 0), entryAt(at, 1)];
  });
}

/** Blood that fills a painted chamber between its `sides`. */
export const throughChamber = (
  name: string,
  [flow, blood]: readonly [flow: string, blood: Blood],
  sides: readonly [readonly Spot[], readonly Spot[]],
): Vessel => ({ name, flow, blood, width: 40, points: middleOf(sides), sides, painted: true });

/** Through atrium and ventricle: along the left side to the apex, and back along the right one. */
function throughHeart({ at }: HeartShape): readonly Vessel[] {
  const within = (way: string): readonly Spot[] =>
    spots(way).map(([along, across]) => onPlane(at(along, across)));
  return [
    throughChamber(
      "throughAtrium",
      ["atrioventricularValve", "arterial"],
      [
        within("-12 -11, -7 -8, 0 -2.4, 10 0, 18 0.6, 23 0.6"),
        within("-14 -15, -6 -14.4, 0 -14, 7 -15.6, 15 -16, 24 -13.6, 32 -9, 36.6 -3.4, 37.6 0.6"),
      ],
    ),
    throughChamber(
      "throughVentricle",
      ["aorta", "arterial"],
      [
        within("23 2.8, 16 3, 8 3.6, 0 4.4"),
        within("37.4 2.8, 36.4 5.6, 32 9.4, 24 13.4, 15 15.6, 7 15.4, 0 13.6"),
      ],
    ),
  ].map((each) => ({ ...each, hangs: true }));
}

/** Every eighth point, the last one too. */
const thinned = <T>(line: readonly T[]): readonly T[] =>
  line.filter((_, i) => (i % 8 === 0 && i < line.length - 4) || i === line.length - 1);

/** Point of a vein's line from which it goes on from its stem in the lung. */
const ON_STEM = 7;

/** Each ends within the left atrium, behind what lies before it. */
function veins({ side }: LungShape, tube: (name: string) => Tube, { at }: HeartShape): readonly Vessel[] {
  return (["Upper", "Lower"] as const).map((which) => ({
    name: `${side}${which === "Upper" ? "" : "Lower"}PulmonaryVein`,
    flow: side,
    blood: "pulmonaryVein",
    width: 22,
    opens: "start",
    points: [
      ...thinned(tube(`${side}${which}PulmonaryVein`).line.slice(ON_STEM)),
      at(which === "Upper" ? -7 : -5, side === "right" ? -4 : -7),
    ].map(onPlane),
    share: 0.5,
    behind: true,
  }));
}

/** Plane units: from here on the right atrium lies before the right pulmonary veins. */
const BEFORE_VEINS = 396;

/** From the pulmonary artery to an end of its tree, and from the nearest end of the veins' tree back along that: between them no vessel is drawn. */
function through({ side, arteries, veins: back, hilum }: LungShape, to: number): readonly Vessel[] {
  const step = arteries.ends.length / COURSES;
  const [upper, lower] = stemsOf(back);
  const overArteries = limbsOf(back, upper);
  const overLower = limbsOf(arteries, [...arteries.nodes.keys()]);
  return Array.from({ length: COURSES }, (_, k): readonly Vessel[] => {
    const end = entryAt(arteries.ends, Math.floor((k + 0.5) * step));
    const [x, y] = entryAt(arteries.nodes, end).at;
    const away = (i: number): number => {
      const [px, py] = entryAt(back.nodes, i).at;
      return Math.hypot(px - x, py - y);
    };
    const near = back.ends.reduce((best, i) => (away(i) < away(best) ? i : best), entryAt(back.ends, 0));
    const half = (
      name: string,
      blood: Blood,
      points: readonly Point[],
      covers: readonly (readonly Spot[])[],
    ): Vessel => ({
      name: k === 0 ? `${side}${name}` : `${side}${name}${k + 1}`,
      flow: side,
      blood,
      width: 10,
      points: points.map(onPlane).filter(([x]) => x < to),
      share: 1 / COURSES,
      painted: true,
      about: onPlane(hilum),
      covers,
    });
    return [
      half("Bed", "pulmonaryArtery", way(arteries, end).reverse(), overArteries),
      half("VeinBed", "pulmonaryVein", way(back, near), lower.includes(near) ? overLower : []),
    ];
  }).flat();
}

/** mm of a limb that hides what lies behind it, and how much wider than its lumen it is painted. */
const [HIDES, OUTSIDE] = [2.2, 1.4];

/** Outlines of a tree's thicker limbs. */
const limbsOf = ({ nodes }: Tree, which: readonly number[]): readonly (readonly Spot[])[] =>
  which.flatMap((i) => {
    const { at, parent, width } = entryAt(nodes, i);
    if (parent < 0 || width < HIDES) return [];
    return [band([entryAt(nodes, parent).at, at], OUTSIDE * width, OUTSIDE * width).map(onPlane)];
  });

/** From an end to its root, a few points. */
function way({ nodes }: Tree, end: number): Point[] {
  const points: Point[] = [];
  for (let i = end; i >= 0; i = entryAt(nodes, i).parent) points.push(entryAt(nodes, i).at);
  return points.filter((_, i) => i % 2 === 0 || i === points.length - 1);
}
