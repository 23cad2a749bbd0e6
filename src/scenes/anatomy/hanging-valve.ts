/** An atrioventricular valve, whole: seen from before and beneath, its leaflets hang from an oval ring into the ventricle, held by cords. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import type { Tissue } from "./tones.ts";

/** From and to as turns (times pi) on its ring: 0 at the second hinge, the far side up to 1, the near side from there to 2; and how long it is in its middle, in halves of the ring. */
type Leaflet = readonly [from: number, to: number, long: number];

/** Where each leaflet meets its neighbours, and where all of them meet: across, and towards the far side. */
export interface Leaflets {
  /** the last one before the blood that passes */
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
  return each.map(([from, to, long], k) => {
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
      edge,
      near: k === each.length - 1,
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

/** Parts of a sheet's breadth and of its way down that lie in the shade: beneath its ring, and folds away from the light. */
const SHADES = [
  [0, 1, 0, 0.4],
  [0, 1, 0, 0.24],
  [0, 1, 0, 0.12],
  [0.1, 0.22, 0.1, 1],
  [0.42, 0.54, 0.1, 1],
  [0.78, 0.9, 0.1, 1],
] as const;

/** How much of it is painted, and how dark it is against its tissue. */
export interface Cloth {
  readonly alpha: number;
  readonly dark: number;
}

export function drawSheet(
  ink: Graphics,
  sheet: Pick<Sheet, "joint" | "edge">,
  { body, shade }: Tissue,
  { alpha, dark }: Cloth,
): void {
  ink
    .poly([...sheet.edge, ...[...sheet.joint].reverse()].flat())
    .fill({ color: mix(body, shade, dark), alpha })
    .stroke({ color: shade, width: 0.3, alpha: 0.75 });
  const steps = Array.from({ length: 9 }, (_, i) => i / 8);
  for (const [from, to, top, low] of SHADES) {
    const row = (down: number) => steps.map((part) => downOn(sheet, from + part * (to - from), down));
    ink.poly([...row(top), ...row(low).reverse()].flat()).fill({ color: shade, alpha: 0.1 });
  }
}

/** Parts of a free edge from which cords go. */
const CORDS = [0.08, 0.26, 0.42, 0.58, 0.74, 0.92];
/** Part of the way from a muscle's head at which a cord divides, and half of the edge's part between its ends. */
const DIVIDES = 0.6;
const APART = 0.04;

/** Each half of a leaflet is held by the muscle of its side; each cord begins at a place of its own on that one's head. */
function drawCords(ink: Graphics, sheet: Sheet, heads: Hanging["heads"], { body, edge: line }: Tissue): void {
  const lines: (readonly Point[])[] = [];
  for (const part of CORDS) {
    const ends = [part - APART, part + APART].map((at) => on(sheet.edge, at));
    const [hx, hy] = entryAt(heads, sheet.held(part));
    const from: Point = [hx + 2.2 * (part - 0.5), hy + 0.5 - 1.2 * Math.abs(part - 0.5)];
    const fork = between(from, on(sheet.edge, part), DIVIDES);
    lines.push([from, fork], ...ends.map((end) => [fork, end]));
  }
  for (const [width, color, alpha] of [
    [0.42, line, 0.75],
    [0.2, body, 1],
  ] as const) {
    for (const [from, to] of lines) if (from && to) ink.moveTo(...from).lineTo(...to);
    ink.stroke({ width, color, alpha });
  }
}

/** Those behind in the shade of those before them. */
const FAR: Cloth = { alpha: 0.9, dark: 0.34 };
const NEAR: Cloth = { alpha: 0.78, dark: 0.08 };

/** @param open 0 shut .. 1 open */
export function drawHanging(ink: Graphics, valve: Hanging, open: number, look: Tissue): void {
  for (const sheet of sheetsOf(valve, open)) {
    drawSheet(ink, sheet, look, sheet.near ? NEAR : FAR);
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
