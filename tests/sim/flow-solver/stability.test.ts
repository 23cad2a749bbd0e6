import { expect, test } from "vitest";
import { buildField } from "../../../src/sim/flow-field/index.ts";
import type { StepSettings } from "../../../src/sim/flow-solver/array-layout.ts";
import { plainEngine, SHARED, SINGLE, SOUND } from "../../../src/sim/flow-solver/flow-solver.ts";
import { crossing } from "../flow-field/planes.ts";
import { solverIn } from "./planes.ts";

/** A wave of a uniform flow: its phase from cell to cell, and the flow's Mach number and direction. */
interface Wave {
  readonly x: number;
  readonly y: number;
  readonly mach: number;
  readonly angle: number;
}

const TURN = Math.PI / 8;
const ANGLES = [0, 0.5 * TURN, TURN, 2 * TURN];

/**
 * How much larger a wave is after 400 steps than after 200. Velocities over the speed of sound; pressure a quarter of a turn ahead, so that
 * only the push is complex: [real, imaginary].
 */
function growth(settings: StepSettings, viscosity: number, { x, y, mach, angle }: Wave): number {
  const { soundSteps, soundDamping, upstream } = settings;
  const passed = Math.sqrt(settings.soundSpeedSquared) * settings.dtOverDx;
  const [across, up] = [mach * Math.cos(angle), mach * Math.sin(angle)];
  const turns = across * Math.sin(x) + up * Math.sin(y);
  const [bentX, bentY] = [2 - 2 * Math.cos(x), 2 - 2 * Math.cos(y)];
  const decays =
    upstream * (Math.abs(across) * bentX ** 2 + Math.abs(up) * bentY ** 2) +
    (viscosity / passed) * (bentX + bentY);
  const [slopeX, slopeY] = [2 * Math.sin(x / 2), 2 * Math.sin(y / 2)];
  const u = [1, 0.3];
  const v = [-0.4, 0.8];
  const p = [0.6, -0.5];
  const [pAhead, uAhead, vAhead] = [[...p], [...u], [...v]];
  const push = ([real, imaginary]: number[]) => [
    -decays * real! + turns * imaginary!,
    -decays * imaginary! - turns * real!,
  ];
  const size = () => Math.hypot(...u, ...v, ...p);
  let half = 0;
  for (let step = 0; step < 400; step++) {
    if (step === 200) half = size();
    const [pushX, pushY] = [push(uAhead), push(vAhead)];
    for (let part = 0; part < soundSteps; part++)
      for (const c of [0, 1]) {
        const [du, dv] = [
          passed * (pushX[c]! + slopeX * pAhead[c]!),
          passed * (pushY[c]! + slopeY * pAhead[c]!),
        ];
        u[c]! += du;
        v[c]! += dv;
        uAhead[c] = u[c]! + 0.5 * soundSteps * du;
        vAhead[c] = v[c]! + 0.5 * soundSteps * dv;
        const change = -passed * (slopeX * u[c]! + slopeY * v[c]!);
        p[c]! += change;
        pAhead[c] = p[c]! + soundDamping * change;
      }
  }
  return size() / half;
}

/** Greatest over all waves. */
function greatest(settings: StepSettings, viscosity: number, mach: number): number {
  let most = 0;
  for (let x = -8; x <= 8; x++)
    for (let y = 0; y <= 8; y++)
      for (const angle of ANGLES)
        most = Math.max(most, growth(settings, viscosity, { x: x * TURN, y: y * TURN, mach, angle }));
  return most;
}

const { settings, fastest } = solverIn(crossing(), 1.4, plainEngine, 3);
const live = fastest / Math.sqrt(settings.soundSpeedSquared);
/** Of steps of sound with this damping, as long as they get. */
const stepsOf = (soundSteps: number, soundDamping: number): StepSettings => ({
  ...settings,
  soundSteps,
  soundDamping,
  soundSpeedSquared: (settings.soundSpeedSquared * (1 + 2 * settings.soundDamping)) / (1 + 2 * soundDamping),
});

test("the fastest blood of a live field takes the last way to share a push, and it has the length that is looked at here", () => {
  const { soundSteps, damping } = SHARED.at(-1)!;
  expect(live).toBeGreaterThan(0.2);
  expect(settings).toEqual(stepsOf(soundSteps, damping));
});

test.each(SHARED)(
  "with $soundSteps steps of sound to a push and damping $damping no wave of a uniform flow grows, up to 8 % above Mach number $mach",
  ({ soundSteps, damping, mach }) => {
    const most = Math.min(mach, live);
    for (const viscosity of [0, SOUND[3].viscous])
      for (const part of [0.4, 1, 1.08])
        expect(greatest(stepsOf(soundSteps, damping), viscosity, part * most)).toBeLessThan(1.0001);
  },
);

test("with the damping of single steps sound that blood carries along would grow", () => {
  expect(greatest(stepsOf(3, SINGLE.damping), 0, live)).toBeGreaterThan(1.1);
});

test("the slower blood is beside sound, the more steps share a push", () => {
  const field = buildField(
    crossing(),
    { density: 1060, viscosity: 3.3 },
    { cellsAcross: 8, depth: "round", soundSteps: 3 },
  );
  const { solver } = field.live();
  const sound = Math.sqrt(solver.settings.soundSpeedSquared);
  const steps = [0.1, 0.14, 0.19, 0.22, 0.25].map((mach) => {
    solver.expect(mach * sound);
    return solver.settings.soundSteps;
  });
  expect(steps).toEqual([6, 5, 4, 3, 3]);
});
