/** Workers, a clock and a timer that tests drive by hand. */

import type { Port } from "../../src/chain/port.ts";
import type { FromCirculation, FromField, ToCirculation, ToField } from "../../src/chain/worker-messages.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import type { FieldShape } from "../../src/sim/flow-field/flow-field.ts";
import { planeDistance } from "../../src/sim/geometry/distance.ts";
import type { PathwayGeometry } from "../../src/sim/geometry/geometry.ts";

export interface FakePort extends Port {
  readonly sent: unknown[];
  say(message: FromCirculation | FromField): void;
  closed: boolean;
}

function fakePort(react: (message: unknown, port: FakePort) => void = () => {}): FakePort {
  const port: FakePort = {
    sent: [],
    closed: false,
    post(message) {
      port.sent.push(message);
      react(message, port);
    },
    say: (message) => port.onMessage(message),
    onMessage() {},
    onFailure() {},
    close() {
      port.closed = true;
    },
  };
  return port;
}

/** Answers with the real solver, at once or when `release` is called. */
export function solverPorts() {
  const ports: FakePort[] = [];
  const waiting: (() => void)[] = [];
  let held = false;
  const start = () => {
    const port = fakePort((message) => {
      const asked = message as ToCirculation;
      if (asked.kind === "ping") {
        queueMicrotask(() => port.say({ kind: "alive" }));
        return;
      }
      const answer = () =>
        port.say({
          kind: "solved",
          id: asked.id,
          circulation: solve(asked.request, asked.from ? { start: asked.from } : {}),
        });
      if (held) waiting.push(answer);
      else queueMicrotask(answer);
    });
    ports.push(port);
    return port;
  };
  return {
    ports,
    start,
    hold: () => {
      held = true;
    },
    release: () => {
      held = false;
      for (const answer of waiting.splice(0)) answer();
    },
    asked: () =>
      ports
        .flatMap(({ sent }) => sent as ToCirculation[])
        .flatMap((message) => (message.kind === "solve" ? [message] : [])),
  };
}

/** A field worker that builds a coarse shape and on request sends a uniform flow: upward, and sideways where asked. */
export function fieldPorts() {
  const ports: FakePort[] = [];
  const start = () => {
    const port = fakePort((message) => {
      const asked = message as ToField;
      if (asked.kind !== "build") return;
      queueMicrotask(() =>
        port.say({ kind: "built", shapeId: asked.shapeId, shape: coarse(asked.geometry) }),
      );
    });
    ports.push(port);
    return port;
  };
  const flow = (port: FakePort, time: number, capable = 1.5, settled = false, sideways = 0) => {
    const build = (port.sent as ToField[]).findLast((message) => message.kind === "build");
    if (build?.kind !== "build") throw new Error("nothing was built");
    const { nx, ny } = coarse(build.geometry);
    port.say({
      kind: "field",
      capable,
      cellsAcross: 6,
      field: {
        shapeId: build.shapeId,
        time,
        u: new Float32Array(nx * ny).fill(sideways),
        v: new Float32Array(nx * ny).fill(0.2),
        pressure: new Float32Array(nx * ny),
        readings: {
          openings: [{ name: "ivc", flow: 20, pressure: 0, totalPressure: 0, reynolds: 300 }],
          powerLoss: 1,
          dissipation: 1,
          auditPercent: 0,
          massBalancePercent: 0,
          shares: {},
          recirculatingArea: 0,
          settled,
          pace: capable,
          cellUpdatesPerSecond: 1,
        },
      },
    });
  };
  return { ports, start, flow };
}

const built = new WeakMap<PathwayGeometry, FieldShape>();

export function coarse(geometry: PathwayGeometry): FieldShape {
  const known = built.get(geometry);
  if (known) return known;
  const dx = 1.5;
  const [left, bottom, right, top] = geometry.bounds;
  const nx = Math.ceil((right - left) / dx) + 4;
  const ny = Math.ceil((top - bottom) / dx) + 4;
  const [originX, originY] = [left - 2 * dx, bottom - 2 * dx];
  const at = planeDistance(geometry, 4);
  const distance = Float32Array.from({ length: nx * ny }, (_, k) =>
    at(originX + (k % nx) * dx, originY + Math.floor(k / nx) * dx),
  );
  const shape = { nx, ny, dx, originX, originY, distance, depth: new Float32Array(nx * ny).fill(10) };
  built.set(geometry, shape);
  return shape;
}

/** A clock set by hand, with a timer that rings when it passes. */
export function handClock() {
  let now = 0;
  const timers: { every: number; next: number; call: () => void }[] = [];
  return {
    clock: () => now,
    every: (seconds: number, call: () => void) => {
      const timer = { every: seconds, next: now + seconds, call };
      timers.push(timer);
      return () => void timers.splice(timers.indexOf(timer), 1);
    },
    /** Moves on in small steps, letting what was posted arrive in between. */
    async pass(seconds: number, step = 0.02) {
      const end = now + seconds;
      while (now < end - 1e-9) {
        now = Math.min(end, now + step);
        for (const timer of [...timers]) {
          while (timer.next <= now) {
            timer.next += timer.every;
            timer.call();
          }
        }
        await Promise.resolve();
        await Promise.resolve();
      }
    },
  };
}
