/** What the bench of frames runs inside a browser: one pathway with its computed field, drawn and moved apart from each other. */
import type { Frame } from "../../src/chain/frame.ts";
import { setLanguage, t } from "../../src/i18n/index.ts";
import { createStage } from "../../src/scenes/stage.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { buildField } from "../../src/sim/flow-field/index.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { seededRandom } from "../../src/sim/random.ts";
import { advance, fill, TracerCloud, tracerPlane } from "../../src/sim/tracers/index.ts";
import { START } from "../../src/state/scene-state.ts";

/** frames drawn before any is measured: code and pictures are made at the first */
const WARM = 20;
/** s of blood time in one frame at the usual play speed and 60 frames a second */
const STEP = START.view.playSpeed / 60;

export interface Measured {
  /** ms, medians: tracers moved; our own drawing; until the pixels are there */
  readonly advection: number;
  readonly draw: number;
  readonly painted: number;
}

export interface Bench {
  prepare(count: number): void;
  measure(turns: number): Measured;
}

async function frames(host: HTMLElement, way: "webgl" | "canvas"): Promise<Bench> {
  await setLanguage("en");
  const stage = await createStage(host, { theme: darkTheme(t), clock: () => performance.now() / 1000, way });
  const circulation = solve(START.request);
  const geometry = pathwayGeometry(START.request)!;
  const session = buildField(
    geometry,
    { density: 1060, viscosity: 3.3 },
    { cellsAcross: 12, depth: "round" },
  );
  const { flows } = circulation;
  const millilitres = (flow: number) => Float32Array.of((flow * 1000) / 60);
  session.setBoundary({
    period: 1,
    inflow: { ivc: millilitres(flows.ivc), svc: millilitres(flows.svc) },
    split: { left: 0.45, right: 0.55 },
    outflow: {},
  });
  session.advanceSeconds(0.4);
  const [field, shape] = [session.read(), session.shape()];
  session.release();
  const plane = tracerPlane(shape, geometry.openings);
  const inflow = Object.fromEntries(field.readings.openings.map(({ name, flow }) => [name, flow]));
  const supply = { inflow, hepaticShare: 0.5 };
  const random = seededRandom(7);
  let cloud = new TracerCloud(1);
  let time = 0;

  const move = () => {
    time += STEP;
    advance(cloud, plane, { from: field, to: field, blend: 1, seconds: STEP, supply }, random);
  };
  const draw = () => {
    const frame: Frame = {
      state: START,
      panes: [{ circulation, geometry, shape, field, tracers: cloud, clots: [], washOut: null }],
      time,
      pace: START.view.playSpeed,
      degraded: [],
      still: false,
    };
    stage.draw(frame);
  };
  const canvas = host.querySelector("canvas")!;
  const pixel = new Uint8Array(4);
  /** Asking for a pixel waits until all that was drawn is there. */
  const wait = () => {
    const gl = way === "webgl" ? canvas.getContext("webgl2") : null;
    if (gl) gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
    else canvas.getContext("2d")!.getImageData(0, 0, 1, 1);
  };
  const median = (turns: number, act: () => void): number => {
    const taken = Array.from({ length: turns }, () => {
      const before = performance.now();
      act();
      return performance.now() - before;
    });
    return taken.sort((a, b) => a - b)[turns >> 1]!;
  };
  return {
    prepare(count) {
      cloud = new TracerCloud(count);
      fill(cloud, plane, count, supply, random);
      for (let n = 0; n < 60; n++) move();
      for (let n = 0; n < WARM; n++) {
        move();
        draw();
        wait();
      }
    },
    measure(turns) {
      const advection = median(turns, move);
      // What the last drawing left to the painter is not counted to the next.
      const drawn: number[] = [];
      const painted: number[] = [];
      for (let n = 0; n < turns; n++) {
        move();
        const before = performance.now();
        draw();
        const between = performance.now();
        wait();
        drawn.push(between - before);
        painted.push(performance.now() - between);
      }
      const middle = (values: number[]) => values.sort((a, b) => a - b)[turns >> 1]!;
      return { advection, draw: middle(drawn), painted: middle(painted) };
    },
  };
}

Object.assign(globalThis, { frames });
