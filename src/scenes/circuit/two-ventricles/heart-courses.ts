/** The ways of blood through a heart with two ventricles, on the circulation's plane; its vessels are painted. */
import { lastOf } from "../../../sim/checked/present.ts";
import { band } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { anatomyOf } from "../../anatomy/chest-anatomy.ts";
import type { BloodTube } from "../../anatomy/great-vessels.ts";
import type { Ventricle } from "../../anatomy/standing.ts";
import { type Spot, spots } from "../../drawing/curve-drawing.ts";
import { chestFrame, chestVessels, onPlane, throughChamber } from "../chest-plan.ts";
import type { Blood, Vessel } from "../vessel.ts";
import { BEFORE_OUTFLOW, EARS, LEFT_ATRIUM, PIVOT, RIGHT_ATRIUM, SAC, VENTRICLES } from "./heart-plan.ts";
import { downToDiaphragm, type GreatVessels, greatVessels } from "./heart-vessels.ts";

type Carries = readonly [flow: string, blood: Blood];

const course = (
  name: string,
  [flow, blood]: Carries,
  width: number,
  way: readonly Point[],
  more: Partial<Vessel> = {},
): Vessel => ({ name, flow, blood, width, points: way.map(onPlane), painted: true, ...more });

/** Each side as a way in the chest. */
const chamber = (name: string, carries: Carries, ...sides: readonly [string, string]): Vessel =>
  throughChamber(name, carries, [spots(sides[0]).map(onPlane), spots(sides[1]).map(onPlane)]);

/** Blood in a ventricle keeps its place in the cavity as that draws together. */
const beating = (beats: Ventricle, vessel: Vessel): Vessel => ({
  ...vessel,
  beats,
  about: onPlane(PIVOT[beats]),
});

/** Every fourth point, the last one too. */
const thinned = <T>(line: readonly T[]): readonly T[] =>
  line.filter((_, i) => (i % 4 === 0 && i < line.length - 3) || i === line.length - 1);

const EJECTED: Carries = ["pulmonaryValve", "pulmonaryArtery"];
const LUNGS: Carries = ["atrioventricularValve", "arterial"];

function rightSide({ trunk, leftArtery, rightArtery }: GreatVessels): readonly Vessel[] {
  const fork = leftArtery.line.findIndex(([x]) => x > 44);
  const leaves = rightArtery.line.findIndex(([x]) => x < 38);
  const covered = rightArtery.line.findIndex(([x]) => x < 26);
  const upper: Carries = ["svc", "svc"];
  const lower: Carries = ["ivc", "ivc"];
  return [
    course("svc", upper, 28, spots("0 28, 0 4, 0 -16")),
    course("ivc", lower, 30, spots("0 -76, 0 -66, 0 -59")),
    chamber(
      "fromUpperVein",
      upper,
      "-3.4 -17, -10 -25, -12.6 -34, -8 -41, 2 -44, 10.8 -46.4",
      "3.4 -17, 5.2 -22, 8 -27.4, 10.2 -32, 11.2 -35.6, 11.8 -38.6",
    ),
    chamber(
      "fromLowerVein",
      lower,
      "3.6 -59, 6.4 -56.6, 8.6 -55, 9.6 -53.6, 10.2 -52, 10.6 -50.6",
      "-3.4 -59, -9.4 -53.6, -12.4 -46, -8 -41.6, 1 -42, 11.2 -41",
    ),
    beating(
      "rightVentricle",
      chamber(
        "throughRightVentricle",
        ["tricuspidValve", "pulmonaryArtery"],
        "11.8 -38.4, 17 -44.6, 23 -51, 29.6 -59.4, 39 -66.6",
        "9.8 -53, 13 -60.8, 19.4 -67.6, 31 -73.8, 47 -77",
      ),
    ),
    beating(
      "rightVentricle",
      chamber(
        "throughOutflow",
        EJECTED,
        "39.6 -67, 31 -60, 23.6 -52, 19.4 -43.6, 21.2 -38, 25 -32.6, 27.8 -26, 29.2 -17.6",
        "52 -76, 42.6 -67.6, 35 -58, 33 -47, 34.4 -39.6, 36.6 -32.8, 38.4 -27.4, 40.6 -21.4",
      ),
    ),
    course("lungTrunk", EJECTED, 30, thinned(trunk.line.filter(([, y]) => y > -17 && y < 0))),
    course("leftPulmonaryArtery", ["left", "pulmonaryArtery"], 26, thinned(leftArtery.line.slice(fork, -6))),
    course(
      "rightArteryRoot",
      ["right", "pulmonaryArtery"],
      24,
      thinned(rightArtery.line.slice(leaves, covered)),
    ),
    course(
      "rightPulmonaryArtery",
      ["right", "pulmonaryArtery"],
      26,
      thinned(rightArtery.line.slice(covered, -6)),
      {
        behind: true,
      },
    ),
  ];
}

function leftSide({ returning, aorta, leftArtery, rightArtery }: GreatVessels): readonly Vessel[] {
  const behind = { behind: true } as const;
  const veins = returning.map(({ name, line }): Vessel => {
    const side = name.startsWith("left") ? "left" : "right";
    const ear = side === "left" ? [EARS.left.map(onPlane)] : [];
    return course(name.replace("Upper", ""), [side, "pulmonaryVein"], 18, thinned(line), {
      ...behind,
      share: 0.5,
      covers: [coverOf(rightArtery), ...ear],
    });
  });
  const root = aorta.line.findIndex(([, y]) => y > -28);
  return [
    ...veins,
    course("inLeftAtrium", ["left", "arterial"], 36, spots("58 -17, 54 -18.6, 53 -24"), behind),
    beating(
      "ventricle",
      chamber(
        "throughAtrium",
        LUNGS,
        "46.4 -20, 45.4 -30, 47.6 -39, 51 -48, 54.4 -57",
        "58 -20, 60 -30.6, 64.4 -39.6, 66.6 -49.6, 65.4 -60, 60 -68.6",
      ),
    ),
    beating(
      "ventricle",
      chamber(
        "throughVentricle",
        ["aorta", "arterial"],
        "52.6 -56.6, 50.6 -50, 47.4 -44, 43.4 -38.4",
        "58 -68.6, 50.4 -62.6, 45.4 -56, 42.4 -50.6, 40.8 -46",
      ),
    ),
    course("leftOutflow", ["aorta", "arterial"], 30, spots("41 -42, 34 -37, 26 -32.4, 18.6 -27.4"), {
      covers: [BEFORE_OUTFLOW.map(onPlane)],
    }),
    course("arch", ["aorta", "arterial"], 40, thinned(aorta.line.slice(root)), {
      covers: [coverOf(leftArtery), BEFORE_OUTFLOW.map(onPlane), EARS.right.map(onPlane)],
    }),
  ];
}

/** The part of the aorta that the heart covers. */
const BEHIND_HEART = "thoracicAorta";

const drawnVessels = (close: boolean): GreatVessels =>
  greatVessels(anatomyOf(chestFrame("two-ventricle", close)));

/** The outline in the plane under which a vessel hides what lies behind it. */
export const coverOf = ({ line, from, to }: Pick<BloodTube, "line" | "from" | "to">): readonly Spot[] =>
  band(line, from + WALLS, to + WALLS).map(onPlane);

/** mm: both walls of a great vessel, and half of a mark */
const WALLS = 4;

/** Through the heart and the vessels at it. */
export const throughHeart = (drawn: GreatVessels): readonly Vessel[] => [
  ...rightSide(drawn),
  ...leftSide(drawn),
];

/** Through the heart, the vessels at it, and both lungs. @param close heart and lungs fill the picture */
export function heartVessels(close = false): readonly Vessel[] {
  const drawn = drawnVessels(close);
  const own = throughHeart(drawn);
  const names = new Set(own.map(({ name }) => name));
  const heart = [VENTRICLES, LEFT_ATRIUM, RIGHT_ATRIUM, SAC].map((outline) => outline.map(onPlane));
  const rightArtery = coverOf(drawn.rightArtery);
  const inLungs = chestVessels("two-ventricle", close).flatMap((each) => {
    if (!/Bed\d*$/.test(each.name) || names.has(each.name)) return [];
    const tubes = each.blood === "pulmonaryVein" ? [rightArtery] : drawn.returning.map(coverOf);
    return [{ ...each, covers: [...(each.covers ?? []), ...heart, ...tubes] }];
  });
  return [...inLungs, ...own];
}

/** All vessels of the chest: in place of what a single ventricle has, those of the heart; the aorta as drawn in every body from the diaphragm down. */
export function twoVentricleVessels(): readonly Vessel[] {
  const own = heartVessels();
  const names = new Set(own.map(({ name }) => name));
  const [x, y] = onPlane(lastOf(downToDiaphragm(drawnVessels(false).descending).line));
  const others = chestVessels("two-ventricle")
    .filter(({ name }) => !names.has(name) && name !== BEHIND_HEART)
    .map((vessel) =>
      vessel.name === "descending"
        ? { ...vessel, points: [[x, y] as const, ...vessel.points.filter(([, down]) => down > y + 8)] }
        : vessel,
    );
  return [...others, ...own];
}
