/** An atrioventricular valve, whole: seen from before and beneath, its leaflets hang from an oval ring into the ventricle, held by cords. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import { smoothLine } from "./placing.ts";
import type { Tissue } from "./tones.ts";

/** From and to as turns (times pi) on its ring: 0 at the second hinge, the far side up to 1, the near side from there to 2; and how long it is in its middle, in halves of the ring. */
type Leaflet = readonly [from: number, to: number, long: number];

/** Where each leaflet meets its neighbours, and where all of them meet: across, and towards the far side. */
export interface Leaflets {
  readonly each: readonly Leaflet[];
  readonly meet: Point;
  /** part of its depth by which the ring is seen from the ventricle's side */
  readonly aslant: number;
}

export interface Hanging extends Leaflets {
  /** a place by `u` across the ring towards its second hinge and `v` down the blood's way, in halves of the ring */
  readonly at: (u: number, v: number) => Point;
  /** of the papillary muscles: that of the first hinge's side, and that of the second's */
  readonly heads: readonly [Point, Point];
}

/** Of two leaflets the one before the aorta is long and takes a third of the ring. */
export const MITRAL: Leaflets = {
  each: [
    [-0.12, 1.12, 0.82],
    [1.12, 1.88, 1.12],
  ],
  meet: [0, 0.34],
  aslant: 0.3,
};

/** Radius of the free edge where the valve stands open, and of its ends on the ring where it is shut. */
const OPEN = 0.76;
const ENDS = 0.95;
/** Part of a leaflet's length that is left where it meets its neighbour, and how deep its free edge is notched. */
const SHORT = 0.3;
const NOTCHED = 0.07;
/** How far down the edges lie where the leaflets are shut: at the ring, and where all meet. */
const SUNK = [0.1, 0.4] as const;

const STEPS = 24;

/** A sheet from its ring to its free edge, both as they run round. */
export interface Sheet {
  readonly joint: readonly Point[];
  readonly edge: readonly Point[];
  /** before the blood that passes */
  readonly near: boolean;
  /** which of the heads holds it at a part of its breadth */
  readonly held: (part: number) => 0 | 1;
}

/** @param open 0 shut .. 1 open */
export function sheetsOf({ each, meet, aslant, at }: Hanging, open: number): readonly Sheet[] {
  const place = (r: number, turn: number, v: number): Point => [
    r * Math.cos(Math.PI * turn),
    v + aslant * r * Math.sin(Math.PI * turn),
  ];
  return each.map(([from, to, long]) => {
    const turns = Array.from({ length: STEPS + 1 }, (_, i) => from + ((to - from) * i) / STEPS);
    const edge = turns.map((turn, i): Point => {
      const part = (2 * i) / STEPS - 1;
      const reach = SHORT + (1 - SHORT) * (1 - part ** 2) ** 0.7;
      const notch = NOTCHED * Math.abs(Math.sin(1.5 * Math.PI * part));
      const [ou, ov] = place(OPEN, turn, long * reach - notch);
      const near = (1 - Math.abs(part)) ** 0.9;
      const end = Math.PI * (part < 0 ? from : to);
      const [cu, cz] = [ENDS * Math.cos(end), ENDS * Math.sin(end)];
      const [su, sz] = [cu + near * (meet[0] - cu), cz + near * (meet[1] - cz)];
      const sv = SUNK[0] + (SUNK[1] - SUNK[0]) * Math.sqrt(near) + aslant * sz;
      return at(su + open * (ou - su), sv + open * (ov - sv));
    });
    return {
      joint: turns.map((turn) => at(...place(1, turn, 0))),
      edge: smoothLine(
        edge.filter((_, i) => i % 2 === 0),
        3,
      ),
      near: Math.sin((Math.PI * (from + to)) / 2) < -0.4,
      held: (part) => (Math.cos(Math.PI * (from + part * (to - from))) < 0 ? 0 : 1),
    };
  });
}

const on = (way: readonly Point[], part: number): Point => entryAt(way, Math.round(part * (way.length - 1)));
const between = ([ax, ay]: Point, [bx, by]: Point, part: number): Point => [
  ax + part * (bx - ax),
  ay + part * (by - ay),
];
/** On a sheet: which part of its breadth, and which of its way down. */
const downOn = ({ joint, edge }: Pick<Sheet, "joint" | "edge">, across: number, part: number): Point =>
  between(on(joint, across), on(edge, across), part);

/** Parts of a leaflet's breadth between which it folds away from the light. */
const FOLDS = [
  [0.1, 0.24],
  [0.42, 0.56],
  [0.76, 0.9],
] as const;
/** Parts of its way down to which the shade beneath its ring reaches. */
const SHADES = [0.42, 0.28, 0.14];

/** Of how much each sheet is painted, and how dark it is against its tissue, and within its folds. */
export interface Cloth {
  readonly alpha: number;
  readonly dark: number;
  readonly folded: number;
}

export function drawSheet(
  ink: Graphics,
  sheet: Pick<Sheet, "joint" | "edge">,
  { body, shade }: Tissue,
  { alpha, dark, folded }: Cloth,
): void {
  ink
    .poly([...sheet.edge, ...[...sheet.joint].reverse()].flat())
    .fill({ color: mix(body, shade, dark), alpha })
    .stroke({ color: shade, width: 0.3, alpha: 0.75 });
  const across = Array.from({ length: 9 }, (_, i) => i / 8);
  for (const part of SHADES)
    ink
      .poly(
        [
          ...across.map((each) => downOn(sheet, each, 0)),
          ...across.reverse().map((each) => downOn(sheet, each, part)),
        ].flat(),
      )
      .fill({ color: shade, alpha: 0.11 });
  for (const [from, to] of FOLDS) {
    const middle = (from + to) / 2;
    ink
      .poly(
        [
          [middle, 0.12],
          [to, 0.96],
          [middle, 0.9],
          [from, 0.96],
        ].flatMap(([part, down]) => downOn(sheet, part ?? 0, down ?? 0)),
      )
      .fill({ color: shade, alpha: folded });
  }
}

/** Parts of a free edge from which cords go. */
const CORDS = [0.08, 0.26, 0.42, 0.58, 0.74, 0.92];
/** Of the belly of one that is seen from its ventricle's side: which parts of its breadth and of its way down. */
const STRUTS = [
  [0.3, 0.66],
  [0.7, 0.66],
] as const;
/** Part of the way from a muscle's head at which a cord divides, and half of the edge's part between its ends. */
const DIVIDES = 0.6;
const APART = 0.04;

/** Each half of a leaflet is held by the muscle of its side; each cord begins at a place of its own on that one's head. */
function drawCords(ink: Graphics, sheet: Sheet, heads: Hanging["heads"], { body, edge: line }: Tissue): void {
  const lines: (readonly Point[])[] = [];
  const cord = (ends: readonly Point[], part: number) => {
    const [first, last] = [entryAt(ends, 0), entryAt(ends, ends.length - 1)];
    const middle = between(first, last, 0.5);
    const [hx, hy] = entryAt(heads, sheet.held(part));
    const from: Point = [hx + 2.2 * (part - 0.5), hy + 0.5 - 1.2 * Math.abs(part - 0.5)];
    const fork = between(from, middle, DIVIDES);
    lines.push([from, fork]);
    for (const end of ends) lines.push([fork, end]);
  };
  for (const part of CORDS) cord([on(sheet.edge, part - APART), on(sheet.edge, part + APART)], part);
  if (sheet.near) for (const [across, down] of STRUTS) cord([downOn(sheet, across, down)], across);
  for (const [width, color, alpha] of [
    [0.42, line, 0.75],
    [0.2, body, 1],
  ] as const) {
    for (const [from, to] of lines) if (from && to) ink.moveTo(...from).lineTo(...to);
    ink.stroke({ width, color, alpha });
  }
}

/** Those behind in the shade of those before them. */
const FAR: Cloth = { alpha: 0.9, dark: 0.34, folded: 0.1 };
const NEAR: Cloth = { alpha: 0.78, dark: 0.08, folded: 0.08 };

/** @param open 0 shut .. 1 open */
export function drawHanging(ink: Graphics, valve: Hanging, open: number, look: Tissue): void {
  const sheets = sheetsOf(valve, open);
  for (const near of [false, true])
    for (const sheet of sheets.filter((each) => each.near === near)) {
      drawSheet(ink, sheet, look, near ? NEAR : FAR);
      drawCords(ink, sheet, valve.heads, look);
    }
  // Its ring's near side, where the leaflets have grown to the heart's wall.
  const ring = Array.from({ length: STEPS + 1 }, (_, i) => {
    const turn = Math.PI * (1 + i / STEPS);
    return valve.at(Math.cos(turn), valve.aslant * Math.sin(turn));
  });
  for (const [width, color] of [
    [1.1, look.edge],
    [0.7, mix(look.body, look.shade, 0.1)],
  ] as const)
    ink.poly(ring.flat(), false).stroke({ width, color, cap: "round" });
}
