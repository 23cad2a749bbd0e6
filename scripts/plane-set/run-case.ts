/** The plane field on one case of the set: same shape, same flows; filled, then averaged. */

import { present } from "../../src/sim/checked/present.ts";
import { applyBoundary, boundarySpeed, openingRule } from "../../src/sim/flow-field/boundary-conditions.ts";
import type { BoundaryConditions } from "../../src/sim/flow-field/flow-field.ts";
import { gauge, type Moment, momentsMean } from "../../src/sim/flow-field/measure.ts";
import { trackPassage } from "../../src/sim/flow-field/parcel-passage.ts";
import { sharesOf } from "../../src/sim/flow-field/periods.ts";
import { buildMesh } from "../../src/sim/flow-solver/cut-cell-mesh.ts";
import { chooseEngine } from "../../src/sim/flow-solver/engine.ts";
import { buildFlowSolver, type FlowSolver } from "../../src/sim/flow-solver/flow-solver.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import type { SetCase } from "../three-d/fit-set.ts";
import { atCells } from "./at-cells.ts";
import { applyClosure, type Closure } from "./closure.ts";
import { type Mixing, type Origin, trackOrigin } from "./origin.ts";

/** Flush times (the body's volume over the veins' flow) until readings begin, and over which they are means. */
const FILLED = 3;
const AVERAGED = 3;
const MOMENTS = 64;
/** Steps in which the origin of blood moves on. */
const STRIDE = 5;

/** One case by one closure: shares are a vein's part to the left lung. */
export interface PlaneLine {
  readonly name: string;
  readonly closure: Closure;
  readonly across: number;
  /** mW */
  readonly power: number;
  /** % of the loss that no counted friction explains */
  readonly audit: number;
  /** by parcels, without mixing */
  readonly parcels: { readonly ivc: number; readonly svc: number };
  readonly mixed: readonly (Mixing & { readonly ivc: number; readonly svc: number })[];
  readonly seconds: number;
}

export function runCase(
  one: SetCase,
  closure: Closure,
  mixings: readonly Mixing[],
  across: number,
): PlaneLine {
  const began = performance.now();
  const { solver, boundary, flush, density, viscosity } = planeOf(one, closure.momentum, across);
  const here = atCells(solver);
  const close = applyClosure(solver, here, closure);
  const origins = mixings.map((mixing) => trackOrigin(solver, here, mixing));
  const passage = trackPassage(solver);
  const drive = (time: number) => applyBoundary(solver, boundary, time);
  const moments: Moment[] = [];
  let moved = 0;
  const measure = gauge(solver, density, viscosity);
  let filling = true;
  const end = (FILLED + AVERAGED) * flush;
  let due = 0;
  for (let n = 0; solver.time < end; n++) {
    const before = solver.time;
    solver.advance(STRIDE, drive);
    here.look();
    for (const origin of origins) origin.advance((solver.time - before) / closure.momentum);
    if (n % 2 === 0) close();
    if (solver.time < due) continue;
    due = solver.time + (AVERAGED * flush) / MOMENTS;
    passage.advance((solver.time - moved) / closure.momentum, flush);
    moved = solver.time;
    if (filling && solver.time >= FILLED * flush) {
      filling = false;
      passage.taken();
      for (const origin of origins) origin.taken();
    }
    if (filling) continue;
    moments.push(measure(["left", "right"]));
  }
  const mean = momentsMean(moments);
  const shares = sharesOf(passage.taken());
  return {
    name: one.stored.name,
    closure,
    across,
    power: (powerOf(solver, mean) * 1e3) / closure.momentum ** 2,
    audit: 100 * (1 - mean.dissipation / mean.openings.reduce((sum, { power }) => sum + power, 0)),
    parcels: { ivc: shares.ivc?.left ?? 0, svc: shares.svc?.left ?? 0 },
    mixed: origins.map((origin) => mixedShares(solver, mean, origin, one)),
    seconds: Math.round(performance.now() - began) / 1000,
  };
}

/**
 * The solver at rest. A momentum factor b is the plane's own flow at b times the speed, its pressures divided by b and its speeds by b: no
 * term of its own.
 */
function planeOf(one: SetCase, momentum: number, across: number) {
  const geometry = present(pathwayGeometry(one.request) ?? undefined);
  const { density, viscosity } = one.fluid;
  const constant = (flow: number) => Float32Array.of(flow * 1e6 * momentum);
  const { ivc, svc, left, right } = one.flows;
  const leak = (one.stored.flows.fenestration ?? 0) * 1e-6;
  const boundary: BoundaryConditions = {
    period: 1,
    inflow: { ivc: constant(ivc), svc: constant(svc) },
    split: { left: left / (left + right), right: right / (left + right) },
    outflow: leak > 0 ? { fenestration: constant(leak) } : {},
  };
  const widths = geometry.openings.filter(({ name }) => name !== "fenestration").map(({ width }) => width);
  const choice = { dx: Math.min(...widths) / across, depth: "round" } as const;
  const mesh = buildMesh(geometry, choice);
  const rules = geometry.openings.map((opening) => openingRule(opening, boundary));
  const solver = buildFlowSolver(
    { geometry, mesh, choice, rules },
    { kinematicViscosity: viscosity / density },
    0.02,
    chooseEngine(mesh.nx * mesh.ny, "doubles"),
  );
  solver.expect(boundarySpeed(solver, boundary));
  let volume = 0;
  for (let k = 0; k < mesh.area.length; k++)
    if (mesh.beyond[k]! < 0) volume += mesh.area[k]! * mesh.depth[k]!;
  const flush = (volume * mesh.dx ** 2 * 1e-9) / (ivc + svc);
  return { solver, boundary, flush, density, viscosity };
}

/** W: as the set counts it, blood through a fenestration with the total pressure with which it came in below. */
function powerOf({ openings }: FlowSolver, mean: Moment): number {
  const of = (name: string) => mean.openings[openings.findIndex(({ opening }) => opening.name === name)];
  const power = (name: string) => of(name)?.power ?? 0;
  const below = of("ivc")!;
  const leak = of("fenestration")?.flow ?? 0;
  return power("ivc") + power("svc") + power("left") + power("right") + (leak * below.power) / below.flow;
}

function mixedShares({ openings }: FlowSolver, mean: Moment, origin: Origin, { flows }: SetCase) {
  const taken = origin.taken();
  const place = (name: string) => openings.findIndex(({ opening }) => opening.name === name);
  const entered = -taken[place("ivc")]!;
  const ivc = taken[place("left")]! / entered;
  const leftFlow = -mean.openings[place("left")]!.flow / mean.openings[place("ivc")]!.flow;
  return {
    ...origin.mixing,
    ivc,
    svc: ((leftFlow - ivc) * flows.ivc) / flows.svc,
  };
}
