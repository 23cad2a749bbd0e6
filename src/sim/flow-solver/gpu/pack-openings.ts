/** Openings as one array of 32-bit words for a GPU; their slow numbers as pairs of single precision. */
import type { SolverArrays } from "../array-layout.ts";
import type { SolverOpening } from "../openings.ts";

/** Words of an opening's head: where its lists begin and how long they are, then numbers. */
export const HEAD = {
  width: 12,
  pressure: 0,
  faces: 1,
  faceCount: 2,
  held: 3,
  heldCount: 4,
  cells: 5,
  cellCount: 6,
  area: 7,
  slope: 8,
  open: 9,
} as const;
/** Words of a face between the blood and beyond; `area` is its open width times depth. */
export const FACE = {
  width: 8,
  face: 0,
  vertical: 1,
  into: 2,
  area: 3,
  inside: 4,
  insideBeyond: 5,
  outsideBeyond: 6,
} as const;
/** Words of a held face. */
export const HELD = { width: 4, face: 0, from: 1, shape: 2, vertical: 3 } as const;
/** Words of a held cell; `faces`: up to four faces of the opening beside it, by where they lie, 0 for none. */
export const CELL = { width: 6, cell: 0, beyond: 1, faces: 2 } as const;
/** Numbers of an opening in one step: its flow into the blood, or the speed outward that is wanted. */
export const INPUT_WIDTH = 1;
/** Numbers of an opening that change slowly: target, slow mean and shift, each with its rest; whether it follows a flow; steps done. */
export const STATE_WIDTH = 8;

/** Words whose bits hold a number in single precision. */
const bits = (value: number): number => new Uint32Array(Float32Array.of(value).buffer)[0]!;

/** All openings: indices, lengths in cells, areas in cells times mm. */
export function packOpenings(openings: readonly SolverOpening[], a: SolverArrays): Uint32Array {
  const words: number[] = new Array(openings.length * HEAD.width).fill(0);
  openings.forEach((opening, n) => {
    const { crossing, held, heldShape, repeats, cells, cellBeyond } = opening;
    const head = n * HEAD.width;
    const faces = words.length;
    let open = 0;
    crossing.face.forEach((k, i) => {
      const area = crossing.vertical[i] ? a.southArea[k]! : a.westArea[k]!;
      open += area;
      const face = [k, crossing.vertical[i]!, bits(crossing.into[i]!), bits(area), crossing.inside[i]!];
      words.push(...face, bits(crossing.insideBeyond[i]!), bits(crossing.outsideBeyond[i]!), 0);
    });
    const helds = words.length;
    held.u.forEach((k, i) => {
      words.push(k, repeats.u[i] ?? 0, bits(heldShape.u[i]!), 0);
    });
    held.v.forEach((k, i) => {
      words.push(k, repeats.v[i] ?? 0, bits(heldShape.v[i]!), 1);
    });
    const first = words.length;
    cells.forEach((k, i) => {
      const beside: number[] = [];
      crossing.outside.forEach((cell, face) => {
        if (cell === k) beside.push(faces + face * FACE.width);
      });
      words.push(k, bits(cellBeyond[i]!), ...[0, 1, 2, 3].map((side) => beside[side] ?? 0));
    });
    const counts = [crossing.face.length, held.u.length + held.v.length, cells.length] as const;
    words.splice(
      head,
      HEAD.width,
      ...[opening.rule === "pressure" ? 1 : 0, faces, counts[0], helds, counts[1], first, counts[2]],
      ...[bits(opening.area), bits(opening.slope), bits(open), 0, 0],
    );
  });
  return Uint32Array.from(words);
}

const pair = (value: number): readonly [number, number] => [Math.fround(value), value - Math.fround(value)];

/** What the openings start a batch with: m2/s2 and m/s. */
export const packState = (openings: readonly SolverOpening[]): Float32Array =>
  Float32Array.from(
    openings.flatMap(({ target, slowSpeed, shift, wanted }) => [
      ...pair(target),
      ...pair(slowSpeed),
      ...pair(shift),
      wanted === undefined ? 0 : 1,
      0,
    ]),
  );

/** What a batch has made of them: `state` as of {@link packState}, m2/s2 and m/s. */
export function unpackState(state: Float32Array, openings: readonly SolverOpening[]): void {
  openings.forEach((opening, n) => {
    if (opening.rule !== "pressure") return;
    const at = (place: number) => state[n * STATE_WIDTH + place]! + state[n * STATE_WIDTH + place + 1]!;
    opening.target = at(0);
    opening.slowSpeed = at(2);
    opening.shift = at(4);
  });
}
