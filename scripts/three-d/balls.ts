/** Union of the balls inscribed in a plane's lumen: tubes come out round, and z^2 < F(x, y) is the body. */

/** Signed distance or F on a grid, row by row, `step` mm apart. */
export interface Sheet {
  readonly nx: number;
  readonly ny: number;
  readonly step: number;
  readonly x0: number;
  readonly y0: number;
  readonly value: Float32Array;
}

/** F in mm2: the largest of d^2 - |x - p|^2 over all places p of the lumen, d their distance to the wall. */
export function inscribedBalls(plane: Sheet): Sheet {
  const { nx, ny, step } = plane;
  const value = wallDistanceSquared(plane);
  for (let at = 0; at < value.length; at++) value[at] = plane.value[at]! < 0 ? -value[at]! / step ** 2 : FAR;
  envelope(value, nx, ny);
  for (let at = 0; at < value.length; at++) value[at] = -value[at]! * step ** 2;
  return { ...plane, value };
}

/** Stands for "no ball here"; above every squared distance of a sheet in steps. */
const FAR = 1e12;

/** To the nearest of the places where the wall crosses the grid's lines, handed on from neighbour to neighbour (Danielsson 1980). */
function wallDistanceSquared({ nx, ny, step, value }: Sheet): Float32Array {
  const sx = new Float32Array(nx * ny).fill(Number.NaN);
  const sy = new Float32Array(nx * ny);
  const best = new Float32Array(nx * ny).fill(Number.POSITIVE_INFINITY);
  const offer = (at: number, i: number, j: number, x: number, y: number) => {
    const far = (x - i) ** 2 + (y - j) ** 2;
    if (far >= best[at]!) return;
    best[at] = far;
    sx[at] = x;
    sy[at] = y;
  };
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++)
      for (const [di, dj] of [
        [1, 0],
        [0, 1],
      ] as const) {
        if (i + di >= nx || j + dj >= ny) continue;
        const at = j * nx + i;
        const next = at + dj * nx + di;
        const a = value[at]!;
        const b = value[next]!;
        if (a < 0 === b < 0) continue;
        const t = a / (a - b);
        offer(at, i, j, i + di * t, j + dj * t);
        offer(next, i + di, j + dj, i + di * t, j + dj * t);
      }
  const hand = (i: number, j: number, di: number, dj: number) => {
    const a = i + di;
    const b = j + dj;
    if (a < 0 || b < 0 || a >= nx || b >= ny) return;
    const from = b * nx + a;
    if (best[from]! < Number.POSITIVE_INFINITY) offer(j * nx + i, i, j, sx[from]!, sy[from]!);
  };
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) for (const di of [-1, 0, 1]) hand(i, j, di, -1);
    for (let i = 1; i < nx; i++) hand(i, j, -1, 0);
    for (let i = nx - 2; i >= 0; i--) hand(i, j, 1, 0);
  }
  for (let j = ny - 1; j >= 0; j--) {
    for (let i = 0; i < nx; i++) for (const di of [-1, 0, 1]) hand(i, j, di, 1);
    for (let i = 1; i < nx; i++) hand(i, j, -1, 0);
    for (let i = nx - 2; i >= 0; i--) hand(i, j, 1, 0);
  }
  for (let at = 0; at < best.length; at++) best[at] = best[at]! * step ** 2;
  return best;
}

/** In place: the smallest of f(q) + |x - q|^2 over all q, lengths in steps (Felzenszwalb & Huttenlocher 2012). */
function envelope(f: Float32Array, nx: number, ny: number): void {
  const longest = Math.max(nx, ny);
  const line = new Float64Array(longest);
  const out = new Float64Array(longest);
  const place = new Int32Array(longest + 1);
  const edge = new Float64Array(longest + 2);
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) line[i] = f[j * nx + i]!;
    lowest(line, nx, place, edge, out);
    for (let i = 0; i < nx; i++) f[j * nx + i] = out[i]!;
  }
  for (let i = 0; i < nx; i++) {
    for (let j = 0; j < ny; j++) line[j] = f[j * nx + i]!;
    lowest(line, ny, place, edge, out);
    for (let j = 0; j < ny; j++) f[j * nx + i] = out[j]!;
  }
}

function lowest(f: Float64Array, n: number, place: Int32Array, edge: Float64Array, out: Float64Array): void {
  let k = -1;
  for (let q = 0; q < n; q++) {
    if (f[q]! >= FAR) continue;
    let s = Number.NEGATIVE_INFINITY;
    while (k >= 0) {
      const p = place[k]!;
      s = (f[q]! + q * q - f[p]! - p * p) / (2 * (q - p));
      if (s > edge[k]!) break;
      k--;
    }
    k++;
    place[k] = q;
    edge[k] = k === 0 ? Number.NEGATIVE_INFINITY : s;
    edge[k + 1] = Number.POSITIVE_INFINITY;
  }
  if (k < 0) {
    out.fill(FAR, 0, n);
    return;
  }
  let m = 0;
  for (let q = 0; q < n; q++) {
    while (edge[m + 1]! < q) m++;
    out[q] = f[place[m]!]! + (q - place[m]!) ** 2;
  }
}
