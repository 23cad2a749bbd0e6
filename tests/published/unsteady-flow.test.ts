import { expect, test } from "vitest";
import { buildMesh } from "../../src/sim/flow-solver/cut-cell-mesh.ts";
import { chooseEngine } from "../../src/sim/flow-solver/engine.ts";
import { buildFlowSolver, runFlowSolver, type SoundSteps } from "../../src/sim/flow-solver/flow-solver.ts";
import { fillCoefficients } from "../../src/sim/flow-solver/stencil-coefficients.ts";
import type { FlowGeometry } from "../../src/sim/geometry/geometry.ts";

/**
 * One vortex of the array in a box that slips: Taylor & Green, Proc R Soc A 158:499 (1937), in the plane. Error of its energy after two
 * turnovers, with sound `faster` than the fastest blood.
 */
function decayError(
  cells: number,
  faster: number,
  { viscosity = 0.01, soundSteps = 1 as SoundSteps } = {},
): number {
  const box = {
    polygon: {
      points: [
        [0, 0],
        [1000, 0],
        [1000, 1000],
        [0, 1000],
      ] as const,
    },
  };
  const choice = { dx: 1000 / cells, depth: "uniform" as const };
  const mesh = buildMesh({ open: [box], solid: [], openings: [] }, choice);
  const engine = chooseEngine(mesh.nx * mesh.ny, "doubles");
  const a = engine.arrays;
  fillCoefficients(mesh, [], false, a);
  // A wall that slips rubs nothing along itself; what is left is half of the stretching between it and the first face.
  for (let k = mesh.nx; k < a.u.length - mesh.nx; k++) {
    a.uFriction[k] = mesh.west[k]! > 0 && (mesh.west[k - 1] === 0 || mesh.west[k + 1] === 0) ? 0.5 : 0;
    a.vFriction[k] =
      mesh.south[k]! > 0 && (mesh.south[k - mesh.nx] === 0 || mesh.south[k + mesh.nx] === 0) ? 0.5 : 0;
  }
  for (let j = 0; j < mesh.ny; j++)
    for (let i = 0; i < mesh.nx; i++) {
      const k = j * mesh.nx + i;
      const x = (Math.PI * (mesh.originX + i * mesh.dx)) / 1000;
      const y = (Math.PI * (mesh.originY + j * mesh.dx)) / 1000;
      const half = (0.5 * Math.PI) / cells;
      if (a.uInverse[k]! > 0) a.u[k] = Math.sin(x - half) * Math.cos(y);
      if (a.vInverse[k]! > 0) a.v[k] = -Math.cos(x) * Math.sin(y - half);
      if (a.pInverse[k]! > 0) a.p[k] = 0.25 * (Math.cos(2 * x) + Math.cos(2 * y));
    }
  a.uAhead.set(a.u);
  a.vAhead.set(a.v);
  a.pAhead.set(a.p);
  const fluid = { kinematicViscosity: viscosity, soundSpeedRatio: faster, soundSteps };
  const solver = runFlowSolver({ mesh, choice, openings: [] }, fluid, 1, engine);
  const energy = () => [...a.u, ...a.v].reduce((sum, speed) => sum + speed * speed, 0);
  const before = energy();
  solver.advance(Math.ceil(2 / solver.step));
  const exact = Math.exp(-4 * Math.PI ** 2 * viscosity * solver.time);
  return Math.abs(energy() / before / exact - 1);
}

// What is left is the finite sound speed: its square is what the error falls with.
test("A Taylor-Green vortex loses its energy at the exact rate: within 1 % at the live sound speed, 0.25 % at twice that", () => {
  const live = decayError(48, 4);
  const twice = decayError(48, 8);
  expect(live).toBeLessThan(0.01);
  expect(twice).toBeLessThan(0.0025);
  expect(live / twice).toBeGreaterThan(3);
}, 60_000);

test("with one advection for three steps of sound it loses what it loses with one for each", () => {
  // Thin enough that sound, not viscosity, sets the step; 4 % of the energy go.
  const each = decayError(48, 4, { viscosity: 0.0005 });
  const shared = decayError(48, 4, { viscosity: 0.0005, soundSteps: 3 });
  expect(each).toBeLessThan(4e-4);
  expect(shared).toBeLessThan(4e-4);
  expect(Math.abs(shared - each)).toBeLessThan(5e-5);
}, 60_000);

/** First harmonic of samples over one period, as [cosine, sine]. */
const harmonic = (samples: readonly number[]): [number, number] => {
  const angle = (n: number) => (2 * Math.PI * n) / samples.length;
  return [
    samples.reduce((sum, value, n) => sum + (2 * value * Math.cos(angle(n))) / samples.length, 0),
    samples.reduce((sum, value, n) => sum + (2 * value * Math.sin(angle(n))) / samples.length, 0),
  ];
};

test("Womersley flow between plates (J Physiol 127:553, 1955; plates: Loudon & Tordesillas 1998) has the exact profile and lag", () => {
  const [width, cells, viscosity, period] = [10, 24, 4e-6, 1];
  const geometry: FlowGeometry = {
    open: [
      {
        tube: {
          points: [
            [-15, 0],
            [15, 0],
          ],
          width,
        },
      },
    ],
    solid: [],
    openings: [
      { name: "in", centre: [-15, 0], normal: [-1, 0], width, pressure: 0 },
      { name: "out", centre: [15, 0], normal: [1, 0], width, pressure: 0 },
    ],
  };
  const choice = { dx: width / cells, depth: "uniform" as const };
  const mesh = buildMesh(geometry, choice);
  const engine = chooseEngine(mesh.nx * mesh.ny, "doubles");
  const solver = buildFlowSolver(
    { geometry, mesh, choice, rules: ["pressure", "pressure"] },
    // Sound has to pass the tube in a small part of a period: at the live four times the blood's speed the error is 4 %.
    { kinematicViscosity: viscosity, soundSpeedRatio: 16 },
    0.05,
    engine,
  );
  const omega = (2 * Math.PI) / period;
  const boundary = (time: number) => {
    solver.openings[0]!.target = 0.002 * Math.cos(omega * time);
  };
  const { nx, dx, originX, originY } = mesh;
  const column = Math.round(-originX / dx + 0.5);
  const rows = [2, 6, 11].map((n) => Math.round((-0.5 * width + (n + 0.5) * dx - originY) / dx));
  const slopes: number[] = [];
  const speeds: number[][] = rows.map(() => []);
  const samples = 40;
  for (let n = 0; n < 8 * samples; n++) {
    while (solver.time < (n * period) / samples) solver.advance(1, boundary);
    if (n < 7 * samples) continue;
    const k = rows[2]! * nx + column;
    slopes.push((solver.arrays.p[k - 8]! - solver.arrays.p[k + 7]!) / (15 * dx * 1e-3));
    rows.forEach((row, m) => {
      speeds[m]!.push(solver.arrays.u[row * nx + column]!);
    });
  }
  const [gc, gs] = harmonic(slopes);
  rows.forEach((row, m) => {
    const y = (originY + row * dx) * 1e-3;
    // u = Re{ G e^(i w t) / (i w) [1 - cosh(L y)/cosh(L H/2)] }, L = sqrt(i w / nu); harmonic pairs hold G = gc - i gs.
    const l = Math.sqrt(omega / (2 * viscosity));
    const cosh = (z: number): [number, number] => [
      Math.cosh(l * z) * Math.cos(l * z),
      Math.sinh(l * z) * Math.sin(l * z),
    ];
    const [a, b] = cosh(y);
    const [c, d] = cosh(0.5e-3 * width);
    const size = c * c + d * d;
    const real = 1 - (a * c + b * d) / size;
    const imaginary = -(b * c - a * d) / size;
    // (gc - i gs)(real + i imaginary) / (i omega)
    const top = [gc * real + gs * imaginary, gc * imaginary - gs * real] as const;
    const exact = [top[1] / omega, -top[0] / omega] as const;
    const [uc, us] = harmonic(speeds[m]!);
    const scale = Math.hypot(exact[0], exact[1]);
    expect(Math.hypot(uc - exact[0], -us - exact[1]) / scale).toBeLessThan(0.02);
  });
}, 120_000);
