/** The ventricle's outflow and the aorta's root as one cutaway: walls that go on into the ventricle's, sinuses, and a rim where the closed vessel begins. */
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import { type HeartShape, inRoot } from "./heart-shape.ts";
import { laidOver, scratch } from "./paint-tube.ts";
import { boundsOf, type Ink, strokes, trace } from "./painted-sheet.ts";
import { smoothLine } from "./placing.ts";
import type { Round } from "./tones.ts";

interface Root {
  readonly heart: HeartShape;
  readonly tones: Round;
  /** half of the ascending aorta's width, in the heart's own lengths */
  readonly half: number;
}

/** How far up from the hinges the root is open at its sides, and by how much further in its middle. */
const OPENED = 12;
const ARCHED = 3.6;
/** Where the two sinuses in front give off the coronary arteries. */
const OSTIUM = 6.4;

/** The vessel's own bend away from the root's axis. */
const bend = (v: number): number => -1.6 * (v / 15) ** 2;

const placed = ({ heart }: Root, points: readonly Point[]): Point[] =>
  points.map(([u, v]) => heart.at(...inRoot(u, v)));

/** The lumen's edge from below the hinge to the closed vessel. */
const edgeOf = (half: number, side: 1 | -1): readonly Point[] => {
  const sinus = sinusOf(half);
  const profile: readonly Point[] = [
    [6, -3],
    [5.9, -0.6],
    [6.9, 1.4],
    [sinus, 4.6],
    [0.93 * sinus, 7.6],
    [half + 0.1, 10],
    [half, 14],
    [half, 17],
  ];
  return smoothLine(
    profile.map(([u, v]) => [side * u + bend(v), v]),
    5,
  );
};

/** Half of the root's width where its sinuses are widest. */
const sinusOf = (half: number): number => Math.max(8, 1.16 * half);

const rimOf = (half: number): readonly Point[] =>
  Array.from({ length: 21 }, (_, i): Point => {
    const u = (1 - i / 10) * (half + 2.6);
    return [u + bend(OPENED), OPENED + ARCHED * Math.cos((Math.PI / 2) * (u / (half + 2.6))) ** 0.8];
  });

function traceWindow(ink: Ink, root: Root): void {
  const reach = root.half + 6;
  const below: readonly Point[] = [
    [-reach, OPENED],
    [-reach, -14],
    [reach, -14],
    [reach, OPENED],
  ];
  trace(ink, placed(root, [...rimOf(root.half), ...below]), true);
}

/** Takes away the front of the closed vessel over the root, and leaves a cut edge. */
export function cutOpen(ink: Ink, root: Root): void {
  const rim = rimOf(root.half);
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  traceWindow(ink, root);
  ink.fill();
  ink.globalCompositeOperation = "source-atop";
  strokes(ink, placed(root, rim), root.heart.size, [
    [2.6, root.tones.wall],
    [1.7, root.tones.light],
  ]);
  ink.restore();
}

export function paintRoot(ink: Ink, root: Root): void {
  const { half } = root;
  const [right, left] = [edgeOf(half, 1), edgeOf(half, -1)];
  const inside = placed(root, [...right, ...[...left].reverse()]);
  ink.save();
  traceWindow(ink, root);
  ink.clip();
  const bounds = boundsOf([inside], 1);
  const own = scratch(ink, bounds);
  paintBack(own, root, inside);
  laidOver(ink, own, bounds);
  for (const [edge, side] of [
    [right, 1],
    [left, -1],
  ] as const)
    paintWall(ink, root, edge, side);
  ink.restore();
}

/** The back wall under the blood: it clears into the outflow below, and turns away towards both sides. */
function paintBack(ink: Ink, root: Root, inside: readonly Point[]): void {
  const { tones, heart } = root;
  trace(ink, inside, true);
  ink.fillStyle = mix(tones.body, tones.light, 0.45);
  ink.fill();
  ink.save();
  ink.clip();
  ink.strokeStyle = tones.edge;
  ink.globalAlpha = 0.1;
  for (let k = 1; k <= 8; k++) {
    ink.lineWidth = 0.85 * k * heart.size;
    ink.stroke();
  }
  for (const u of [-0.72, 0.72])
    strokes(
      ink,
      placed(root, [
        [u * sinusOf(root.half), OSTIUM],
        [0.97 * u * sinusOf(root.half), OSTIUM + 0.3],
      ]),
      heart.size,
      [
        [2.2, tones.light],
        [1.4, tones.wall],
      ],
    );
  // The cut edge's shadow.
  trace(ink, placed(root, rimOf(root.half)));
  ink.strokeStyle = tones.wall;
  ink.globalAlpha = 0.12;
  for (let k = 1; k <= 4; k++) {
    ink.lineWidth = 2.2 * k * heart.size;
    ink.stroke();
  }
  ink.restore();
  const fall = ink.createLinearGradient(...heart.at(...inRoot(0, -3)), ...heart.at(...inRoot(0, 1.6)));
  fall.addColorStop(0, "#000");
  fall.addColorStop(1, "#0000");
  ink.globalCompositeOperation = "destination-out";
  ink.fillStyle = fall;
  trace(ink, inside, true);
  ink.fill();
}

/** The wall in section, from the ring, where it goes on into muscle on one side and into the inlet's valve on the other. */
function paintWall(ink: Ink, root: Root, edge: readonly Point[], side: 1 | -1): void {
  const line = edge.filter(([, v]) => v > -1).map(([u, v]): Point => [u + side * 0.8, v]);
  strokes(ink, placed(root, line), root.heart.size, [
    [2.4, root.tones.wall],
    [1.6, root.tones.light],
  ]);
}
