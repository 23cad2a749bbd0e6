/** A child or young person standing, from the front, with the proportions of its age: outlines in parts of the body's height above the ground. */
import { entryAt } from "../../sim/checked/present.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";

/**
 * Right half of the outline in thousandths of the height, from the neck over shoulder, arm and hand to the armpit, down the flank
 * and leg, and up to the crotch: at five years and grown, point by point. Heads in a height: 7.5 to 8 when grown (Domljan et al.,
 * Appl. Sci. 2024;14:7185), 5.75 at five years, between 5 at two and 6 at six, and legs of 0.44 and 0.47 of the height (Stratz 1909, from memory).
 */
const YOUNG = spots(
  "0 850, 25 848, 26 828, 28 816, 46 802, 72 793, 98 782, 112 758, 117 712, 119 662, 121 620, 127 586, 128 548, 125 492, 131 474, 136 452, 139 434, 134 428, 130 440, 129 412, 123 397, 115 412, 112 446, 111 486, 107 540, 102 590, 98 628, 95 680, 91 714, 91 690, 90 640, 90 596, 94 545, 97 502, 97 464, 94 392, 84 300, 75 262, 76 226, 76 186, 66 106, 57 58, 60 38, 77 18, 80 6, 62 0, 34 0, 26 12, 30 38, 30 66, 28 138, 24 190, 25 236, 24 264, 18 332, 9 414, 0 436",
);
const GROWN = spots(
  "0 880, 31 878, 32 862, 36 851, 62 836, 96 825, 124 810, 138 784, 142 738, 142 690, 142 642, 147 600, 146 556, 141 494, 147 472, 153 446, 155 424, 149 418, 144 432, 144 398, 137 378, 129 396, 127 438, 126 484, 122 544, 116 600, 111 644, 107 704, 101 748, 100 720, 91 650, 86 602, 92 548, 98 508, 99 468, 97 400, 86 306, 75 272, 76 232, 78 190, 67 108, 57 56, 58 36, 73 17, 78 6, 62 0, 36 0, 28 13, 32 40, 32 70, 29 150, 24 202, 25 250, 25 282, 18 354, 9 440, 0 466",
);
/** Points of that outline where clothes begin and end: collar, sleeve outside and inside, hem of the shirt, waist, hems of a child's shorts and of long trousers, shoe. */
const [COLLAR, SLEEVE_OUT, SLEEVE_IN, SHIRT_HEM] = [4, 9, 27, 33] as const;
const WAIST = 32;
/** Points of an arm, from the shoulder on and up to the armpit. */
const ARM = [5, 28] as const;
/** Part of the head's half width by which a face is turned to the pictures beside it. */
const TURN = 0.1;
/** On the left of the picture the upper arm is lifted and the forearm turned back, hand in the pocket: degrees, and of the way from the shoulder to the hand's end the elbow and the stretch over which it bends. */
const BENT = { lift: -16, back: 40, elbow: 0.44, over: 0.12 } as const;
/** With parts of the height beyond which the outer side of a leg, and within which its inner side, of long trousers lies. */
const HEMS = {
  short: { out: 36, in: 53, outer: 0, inner: 1 },
  long: { out: 41, in: 49, outer: 0.082, inner: 0.025 },
} as const;
const LONG_FROM = 12;
const SHOE = [41, 48] as const;
/** Thousandths by which cloth stands off. */
const LOOSE = 5;

/** Right half of the head: across in half widths, up in parts of its height from the chin; hair over it. */
const HEAD = {
  young: spots("0 1, 0.42 0.98, 0.78 0.87, 0.97 0.68, 0.98 0.48, 0.9 0.28, 0.68 0.1, 0.34 0.01, 0 0"),
  // A jaw with its angle, and a chin.
  grown: spots("0 1, 0.44 0.98, 0.8 0.88, 0.96 0.7, 0.95 0.5, 0.91 0.32, 0.8 0.16, 0.42 0.02, 0 -0.01"),
} as const;
const HAIR = {
  young: spots("0 1.03, 0.46 1.01, 0.84 0.89, 1.05 0.68, 1.04 0.5, 0.94 0.56, 0.86 0.7, 0.5 0.77, 0 0.75"),
  grown: spots("0 1.04, 0.5 1.02, 0.88 0.91, 1.04 0.72, 1.02 0.52, 0.94 0.58, 0.88 0.72, 0.6 0.83, 0 0.84"),
} as const;
const EAR = spots("0.94 0.5, 1.1 0.5, 1.1 0.36, 0.94 0.3");

const GROWN_AT = 18;
const YOUNG_AT = 5;
/** Height of the head, and half of its width, in thousandths. */
const HEAD_HEIGHT = { young: 174, grown: 133 } as const;
const HEAD_HALF = { young: 66, grown: 46 } as const;
/** Eyes lie lower in a child's face, and are larger: parts of the head's height. */
const EYES = { young: 0.4, grown: 0.47 } as const;
const EYE_SIZE = { young: 0.052, grown: 0.036 } as const;
/** Where the nose ends, the mouth's middle, and by how much its corners lie higher. */
const NOSE = { young: 0.22, grown: 0.26 } as const;
const MOUTH = { young: 0.135, grown: 0.16 } as const;
const SMILE = { young: 0.045, grown: 0.018 } as const;
/** Eyebrows over the eyes. */
const BROWS = { young: 0.15, grown: 0.11 } as const;

/** 1 at five years, 0 when grown. */
const youthOf = (years: number): number =>
  Math.min(1, Math.max(0, (GROWN_AT - years) / (GROWN_AT - YOUNG_AT)));
/** A line between its two ages, point by point. */
const between = (
  { young, grown }: { readonly young: readonly Spot[]; readonly grown: readonly Spot[] },
  years: number,
) =>
  grown.map(([x, y], i): Spot => {
    const [a, b] = entryAt(young, i);
    return [x + (a - x) * youthOf(years), y + (b - y) * youthOf(years)];
  });
const aged = ({ young, grown }: { readonly young: number; readonly grown: number }, years: number) =>
  grown + (young - grown) * youthOf(years);

/** Youth from which cheeks are red. */
const RED_CHEEKS = 0.4;

/** Part of the height. */
export const headOf = (years: number): number => aged(HEAD_HEIGHT, years) / 1000;
/** Where the heart lies. */
export const chestOf = (years: number): number => aged({ young: 672, grown: 722 }, years) / 1000;
export const crotchOf = (years: number): number =>
  aged({ young: entryAt(YOUNG, YOUNG.length - 1)[1], grown: entryAt(GROWN, GROWN.length - 1)[1] }, years) /
  1000;

export interface StandingFigure {
  /** closed, back to front */
  readonly parts: readonly {
    readonly of: "skin" | "shirt" | "shorts" | "shoes" | "hair";
    readonly outline: readonly Spot[];
  }[];
  /** open lines of the face and the hands */
  readonly lines: readonly (readonly Spot[])[];
  /** middle and radius of each */
  readonly eyes: readonly (readonly [x: number, y: number, radius: number])[];
  readonly cheeks: readonly (readonly [x: number, y: number, radius: number])[];
}

const mirror = (line: readonly Spot[]): readonly Spot[] => line.map(([x, y]): Spot => [-x, y]);
/** Closed around both sides, each given as if it were on the right. */
const around = (right: readonly Spot[], left = right): readonly Spot[] => [
  ...right,
  ...mirror(left).toReversed(),
];

/** One arm's points with its elbow bent. @param arm from the shoulder outside down to the hand and up inside */
function bent(arm: readonly Spot[]): readonly Spot[] {
  const shoulder = entryAt(arm, 0);
  const hand = Math.min(...arm.map(([, y]) => y));
  const turned = ([x, y]: Spot, [cx, cy]: Spot, degrees: number): Spot => {
    const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    return [cx + (x - cx) * c + (y - cy) * s, cy + (y - cy) * c - (x - cx) * s];
  };
  const down = ([, y]: Spot): number => (shoulder[1] - y) / (shoulder[1] - hand);
  const near = (low: number, at: number): number => Math.min(1, Math.max(0, (at - low) / BENT.over));
  const about = arm.filter((spot) => Math.abs(down(spot) - BENT.elbow) < BENT.over);
  const mean = (i: 0 | 1) => about.reduce((sum, spot) => sum + spot[i], 0) / about.length;
  const elbow: Spot = [mean(0), mean(1)];
  return arm.map((spot) => {
    const fore = turned(spot, elbow, BENT.back * near(BENT.elbow - BENT.over / 2, down(spot)));
    return turned(fore, shoulder, BENT.lift * near(0.02, down(spot)));
  });
}

/** Weight on the leg on the right of the picture: hips over it, shoulders and head a little against that, the other knee forward and aside. */
function eased([x, y]: Spot, crotch: number): Spot {
  const hips = 0.012 * Math.sin(Math.PI * Math.min(1, y / (1.9 * crotch)));
  const knee = x < 0 && y < crotch ? -0.014 * Math.sin((Math.PI * y) / crotch) : 0;
  const tilt =
    0.04 * x * Math.min(1, Math.max(0, (y - crotch) / 0.2)) * Math.min(1, Math.max(0, (0.88 - y) / 0.08));
  return [x + hips + knee, y + tilt];
}

/** @param years of age, which the parts of the height follow */
export function standingFigure(years: number): StandingFigure {
  const half = between({ young: YOUNG, grown: GROWN }, years).map(([x, y]): Spot => [x / 1000, y / 1000]);
  const height = headOf(years);
  const wide = aged(HEAD_HALF, years) / 1000;
  const inHead = (across: number, up: number): Spot => [across * wide, 1 - height * (1 - up)];
  const onHead = (line: readonly Spot[]) => line.map(([x, y]) => inHead(x, y));
  const inFace = (line: readonly Spot[]) => line.map(([x, y]) => inHead(x + TURN, y));
  const [eyes, nose, mouth] = [aged(EYES, years), aged(NOSE, years), aged(MOUTH, years)];
  const [brows, corners] = [eyes + aged(BROWS, years), mouth + aged(SMILE, years)];
  const hems = HEMS[years < LONG_FROM ? "short" : "long"];
  const outer = half.slice(WAIST, hems.out + 1).map(([x, y]): Spot => [Math.max(hems.outer, x), y]);
  const inner = half.slice(hems.in).map(([x, y]): Spot => [Math.min(hems.inner, x), y]);
  const [[hemX, hemY], [inX]] = [entryAt(outer, outer.length - 1), entryAt(inner, 0)];
  // Corners of a hem are sharp.
  const hem: readonly Spot[] = [
    [hemX + LOOSE / 1000, hemY - 0.004],
    [hemX, hemY - 0.008],
    [inX + 0.004, hemY - 0.012],
    [inX - 0.002, hemY - 0.008],
  ];
  const off = ([x, y]: Spot): Spot => [x + LOOSE / 1000, y];
  const [neck, collar] = entryAt(half, COLLAR - 1);
  const other = [...half.slice(0, ARM[0]), ...bent(half.slice(...ARM)), ...half.slice(ARM[1])];
  const shirtOn = (side: readonly Spot[]): readonly Spot[] => [
    [0, collar - 0.02],
    [0.55 * neck, collar - 0.015],
    [0.92 * neck, collar - 0.002],
    ...side.slice(COLLAR, SLEEVE_OUT + 1).map(off),
    ...side.slice(SLEEVE_IN, SLEEVE_IN + 2),
    ...side.slice(SLEEVE_IN + 2, SHIRT_HEM + 1).map(off),
    [0, entryAt(side, SHIRT_HEM)[1] - 0.006],
  ];
  const inBoth = (line: readonly Spot[]) => [line, mirror(line)];
  const ease = (line: readonly Spot[]) => line.map((spot) => eased(spot, crotchOf(years)));
  const parts: StandingFigure["parts"] = [
    ...inBoth(onHead(EAR)).map((outline) => ({ of: "skin", outline }) as const),
    { of: "skin", outline: around(half, other) },
    ...inBoth(half.slice(SHOE[0], SHOE[1] + 1)).map((outline) => ({ of: "shoes", outline }) as const),
    { of: "shorts", outline: around([...outer.map(off), ...hem, ...inner.slice(1)]) },
    { of: "shirt", outline: around(shirtOn(half), shirtOn(other)) },
    { of: "skin", outline: around(onHead(between(HEAD, years))) },
    { of: "hair", outline: around(onHead(between(HAIR, years))) },
  ];
  return {
    parts: parts.map(({ of, outline }) => ({ of, outline: ease(outline) })),
    lines: [
      ...inBoth([
        [0.18, brows - 0.01],
        [0.4, brows + 0.015],
        [0.62, brows - 0.02],
      ]).map(inFace),
      inFace([
        [0.06, eyes - 0.02],
        [0.13, nose],
        [-0.06, nose - 0.01],
      ]),
      inFace([
        [-0.36, corners],
        [-0.16, mouth],
        [0.16, mouth],
        [0.36, corners],
      ]),
    ],
    eyes: [-0.4, 0.4].map((side) => [...inHead(side + TURN, eyes), aged(EYE_SIZE, years) * height] as const),
    cheeks: (youthOf(years) < RED_CHEEKS ? [] : [-0.56, 0.56]).map(
      (side) => [...inHead(side + TURN, eyes - 0.16), 0.08 * height] as const,
    ),
  };
}
