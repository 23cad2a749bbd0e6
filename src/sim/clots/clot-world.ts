/** Owns a rigid-body world: clots in a plane, moved by the flow, stopped by walls and by the fenestration's rim. */
import Matter from "matter-js";
import type { FlowGeometry, Opening } from "../geometry/geometry.ts";
import type { RandomSource } from "../random.ts";
import { type Blood, driven, type Felt, feel, relaxationTime, type Surroundings } from "./forces.ts";
import { gate, UNITS, wallBodies } from "./wall-bodies.ts";

/** Plain record of one clot for a picture; the same fields that a frame carries. */
export interface Clot {
  /** mm: centre */
  readonly x: number;
  readonly y: number;
  /** mm */
  readonly diameter: number;
  /** radians */
  readonly angle: number;
  /** "pathway", or the name of the opening through which it has gone */
  readonly place: string;
}

/** s of blood time of the engine's longest step, and mm that a clot may move in it: less than a wall is thick */
const LONGEST_STEP = 1 / 480;
const LONGEST_MOVE = 0.4;
/** ms passed to the engine as a step's length: its velocities are then in units per step */
const ENGINE_STEP = 1000 / 60;
/** s: after a longer pause the clots continue from where they were */
const LONGEST_CALL = 0.25;

/** Collision category of walls and clots; the gates' categories follow it. */
const EVERYTHING = 1;

interface Moving {
  readonly body: Matter.Body;
  readonly diameter: number;
  place: string;
  /** m/s */
  u: number;
  v: number;
}

/**
 * The clots of one plane. Positions and diameters in mm, time in s of blood time. Diameters may be up to the opening's width; larger ones are
 * reduced on release. Call `clear` when done: the engine holds memory.
 */
export class ClotWorld {
  readonly #engine = Matter.Engine.create({
    gravity: { x: 0, y: 0 },
    positionIterations: 12,
    velocityIterations: 10,
  });
  readonly #geometry: FlowGeometry;
  readonly #exits: readonly Opening[];
  readonly #blood: Blood;
  readonly #clots: Moving[] = [];
  readonly #felt: Felt = { u: 0, v: 0, gradientX: 0, gradientY: 0 };

  /** Clots may leave through the pulmonary arteries and the fenestration, never back into a vein. */
  constructor(geometry: FlowGeometry, blood: Blood) {
    this.#geometry = geometry;
    this.#blood = blood;
    this.#exits = geometry.openings.filter(({ name }) => name !== "ivc" && name !== "svc");
    Matter.Composite.add(
      this.#engine.world,
      wallBodies(
        geometry,
        this.#exits.map(({ name }) => name),
      ),
    );
    Matter.Composite.add(
      this.#engine.world,
      this.#exits.map((exit, n) => gate(exit, EVERYTHING << (n + 1))),
    );
  }

  get clots(): readonly Clot[] {
    return this.#clots.map(({ body, diameter, place }) => ({
      x: body.position.x / UNITS,
      y: body.position.y / UNITS,
      diameter,
      angle: body.angle,
      place,
    }));
  }

  /** Puts a clot just inside an opening, at a random place across it. @param diameter mm, at most the opening's width */
  release(diameter: number, opening: string, random: RandomSource): void {
    const cut = this.#geometry.openings.find(({ name }) => name === opening);
    if (!cut) return;
    const size = Math.min(diameter, 0.9 * cut.width);
    const inside = 0.7 * size;
    const aside = (random() - 0.5) * (cut.width - 1.1 * size);
    this.place(
      size,
      cut.centre[0] - inside * cut.normal[0] - aside * cut.normal[1],
      cut.centre[1] - inside * cut.normal[1] + aside * cut.normal[0],
    );
  }

  /** Puts a clot at rest at (x, y). All in mm. */
  place(diameter: number, x: number, y: number): void {
    const body = Matter.Bodies.circle(UNITS * x, UNITS * y, (UNITS * diameter) / 2, {
      friction: 0.05,
      frictionAir: 0,
      restitution: 0.1,
      slop: 0.02,
      collisionFilter: { mask: this.#solidFor(diameter) },
    });
    Matter.Composite.add(this.#engine.world, body);
    this.#clots.push({ body, diameter, place: "pathway", u: 0, v: 0 });
  }

  /** Walls and clots are solid for all; an exit's gate only for clots at least as wide as the exit. */
  #solidFor(diameter: number): number {
    return this.#exits.reduce(
      (mask, { width }, n) => (diameter >= width ? mask | (EVERYTHING << (n + 1)) : mask),
      EVERYTHING,
    );
  }

  /** Moves all clots by `seconds` of blood time. */
  advance(around: Surroundings, seconds: number): void {
    let left = Math.min(seconds, LONGEST_CALL);
    while (left > 1e-9) {
      const inside = this.#clots.filter(({ place }) => place === "pathway");
      if (inside.length === 0) return;
      const fastest = Math.max(...inside.map(({ u, v }) => Math.hypot(u, v)));
      const step = Math.min(left, LONGEST_STEP, LONGEST_MOVE / (1500 * fastest + 50));
      // Engine velocities are units a step; ours m/s.
      const perStep = 1e3 * UNITS * step;
      for (const clot of inside) this.#drive(clot, around, step, perStep);
      Matter.Engine.update(this.#engine, ENGINE_STEP);
      for (const clot of inside) {
        clot.u = clot.body.velocity.x / perStep;
        clot.v = clot.body.velocity.y / perStep;
        this.#leave(clot);
      }
      left -= step;
    }
  }

  /** Releases the engine's memory. */
  clear(): void {
    Matter.Engine.clear(this.#engine);
    Matter.Composite.clear(this.#engine.world, false);
    this.#clots.length = 0;
  }

  #drive(
    { body, diameter, u: ownU, v: ownV }: Moving,
    around: Surroundings,
    step: number,
    perStep: number,
  ): void {
    const { x, y } = body.position;
    const { u, v, gradientX, gradientY } = feel(around, x / UNITS, y / UNITS, diameter, this.#felt);
    const time = relaxationTime(Math.hypot(u - ownU, v - ownV), diameter * 1e-3, this.#blood);
    const { density } = this.#blood;
    Matter.Body.setVelocity(body, {
      x: perStep * driven(ownU, u, gradientX / density, time, step),
      y: perStep * driven(ownV, v, gradientY / density, time, step),
    });
  }

  #leave(clot: Moving): void {
    const x = clot.body.position.x / UNITS;
    const y = clot.body.position.y / UNITS;
    for (const { name, centre, normal, width } of this.#exits) {
      const beyond = (x - centre[0]) * normal[0] + (y - centre[1]) * normal[1];
      const across = (y - centre[1]) * normal[0] - (x - centre[0]) * normal[1];
      if (beyond <= 0 || beyond > width || Math.abs(across) > width / 2) continue;
      clot.place = name;
      Matter.Composite.remove(this.#engine.world, clot.body);
    }
  }
}
