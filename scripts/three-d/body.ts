/** From the project's plane of a pathway to the solver's files of its body. */
import { writeFileSync } from "node:fs";
import { shapeBounds, shapeDistance } from "../../src/sim/geometry/distance.ts";
import type { Opening, Shape } from "../../src/sim/geometry/geometry.ts";
import { inscribedBalls, type Sheet } from "./balls.ts";

/** mm: step of the plane; and of how many of its points the body keeps one. */
const STEP = 0.1;
const KEPT = 2;

/** Lengths of the straight extensions over the opening's width: long enough for the given inflow profile, and for no backflow at the outlets. */
const EXTENSION: Readonly<Record<string, number>> = {
  ivc: 1.2,
  svc: 1.2,
  left: 2.6,
  right: 2.6,
  fenestration: 1.6,
};

export interface SolidBody {
  readonly sheet: Sheet;
  readonly openings: readonly (Opening & { readonly extension: number })[];
}

export function solidBody(open: readonly Shape[], openings: readonly Opening[]): SolidBody {
  const longer = openings.map((opening) => ({
    ...opening,
    extension: EXTENSION[opening.name]! * opening.width,
  }));
  const tubes = longer.map(({ centre, normal, width, extension }): Shape => {
    // a diameter beyond the end, so that the end itself is not a wall
    const reach = extension + width;
    return {
      tube: { points: [centre, [centre[0] + reach * normal[0], centre[1] + reach * normal[1]]], width },
    };
  });
  return { sheet: kept(inscribedBalls(plane([...open, ...tubes]))), openings: longer };
}

function plane(shapes: readonly Shape[]): Sheet {
  const distances = shapes.map(shapeDistance);
  const distance = (x: number, y: number) => Math.min(...distances.map((of) => of(x, y)));
  const boxes = shapes.map(shapeBounds);
  const x0 = Math.floor(Math.min(...boxes.map((box) => box[0]))) - 2;
  const y0 = Math.floor(Math.min(...boxes.map((box) => box[1]))) - 2;
  const block = 16;
  const count = (low: number, high: number) => Math.ceil((Math.ceil(high) + 2 - low) / STEP / block) * block;
  const nx = count(x0, Math.max(...boxes.map((box) => box[2])));
  const ny = count(y0, Math.max(...boxes.map((box) => box[3])));
  const value = new Float32Array(nx * ny);
  for (let J = 0; J < ny; J += block)
    for (let I = 0; I < nx; I += block) {
      const middle = distance(x0 + (I + block / 2) * STEP, y0 + (J + block / 2) * STEP);
      const far = Math.abs(middle) > 0.8 * block * STEP;
      for (let j = J; j < J + block; j++)
        for (let i = I; i < I + block; i++)
          value[j * nx + i] = far ? middle : distance(x0 + i * STEP, y0 + j * STEP);
    }
  return { nx, ny, step: STEP, x0, y0, value };
}

function kept({ nx, ny, step, x0, y0, value }: Sheet): Sheet {
  const width = Math.floor(nx / KEPT);
  const height = Math.floor(ny / KEPT);
  const out = new Float32Array(width * height);
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) out[j * width + i] = value[j * KEPT * nx + i * KEPT]!;
  return { nx: width, ny: height, step: step * KEPT, x0, y0, value: out };
}

/** `path`.meta and `path`.i16: F in whole parts of a scale that its largest value sets. */
export function writeBody(path: string, { sheet, openings }: SolidBody): void {
  const { nx, ny, step, x0, y0, value } = sheet;
  const scale = value.reduce((most, each) => Math.max(most, each), 0) / 32000;
  const whole = Int16Array.from(value, (each) => Math.max(-32000, Math.round(each / scale)));
  const rows = openings.map(({ name, centre, normal, width, extension }) =>
    [name, ...centre, ...normal, width, extension].join(" "),
  );
  writeFileSync(
    `${path}.meta`,
    [[nx, ny, step, x0, y0, scale].join(" "), openings.length, ...rows, ""].join("\n"),
  );
  writeFileSync(`${path}.i16`, new Uint8Array(whole.buffer));
}

/** A straight round pipe that lies across the grid, its ends named as a vein and a pulmonary artery. */
export function pipeBody(diameter: number, length: number): SolidBody {
  const angle = (17 * Math.PI) / 180;
  const along = [Math.cos(angle), Math.sin(angle)] as const;
  const end = [length * along[0], length * along[1]] as const;
  return solidBody(
    [{ tube: { points: [[0, 0], end], width: diameter } }],
    [
      { name: "ivc", centre: [0, 0], normal: [-along[0], -along[1]], width: diameter },
      { name: "right", centre: end, normal: along, width: diameter },
    ],
  );
}
