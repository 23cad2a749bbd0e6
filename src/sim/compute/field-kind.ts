/** Kind "field": steady flow in any plane of shapes and openings. */

import { entryAt } from "../checked/present.ts";
import type { Fault } from "../faults.ts";
import { recirculatingArea } from "../flow-field/eddies.ts";
import { flowShares } from "../flow-field/pathlines.ts";
import { planeFaults } from "../flow-field/plane-faults.ts";
import { balance, openingReading } from "../flow-field/readings.ts";
import { settle } from "../flow-field/steady-state.ts";
import type { Checked } from "../input-checks.ts";
import { fromMillipascalSecond } from "../units.ts";
import { checkField, type FieldRequest, refuseTooMany } from "./field-request.ts";
import { fieldSchema } from "./field-schema.ts";
import type { Kind, Outcome } from "./kind.ts";
import { MAX_WALL_SECONDS, secondsNow } from "./stopwatch.ts";

/** Cell updates after which a flow is answered as it is, "steady": false; by the clock after MAX_WALL_SECONDS, or three times the blood time. */
const MAX_UPDATES = 4e9;

export const FIELD_KIND: Kind<FieldRequest> = {
  kind: "field",
  schema: fieldSchema(),
  check(input): Checked<FieldRequest> {
    const checked = checkField(input);
    if ("faults" in checked) return checked;
    const faults = faultsOfPlane(checked.request);
    return faults.length > 0 ? { faults } : checked;
  },
  run: answerField,
  unitOf: fieldUnit,
};

function faultsOfPlane({ geometry, dx, cellsAcross, depth }: FieldRequest): readonly Fault[] {
  return planeFaults(geometry, { dx, depth }, (count) => refuseTooMany(count, cellsAcross));
}

function answerField(request: FieldRequest, progress?: (done: number) => void): Outcome {
  const { geometry, fluid, depth, dx, cellsAcross, maxSeconds, steadyTolerance } = request;
  const viscosity = fromMillipascalSecond(fluid.viscosity);
  const began = secondsNow();
  const wallLimit = Math.max(MAX_WALL_SECONDS, 3 * maxSeconds);
  const settled = settle(
    { geometry, density: fluid.density, viscosity, cellsAcross },
    {
      dx,
      depth,
      maxSeconds,
      tolerance: steadyTolerance,
      maxUpdates: MAX_UPDATES,
      enough: () => secondsNow() - began > wallLimit,
    },
    progress,
  );
  if (settled.reason) return { reason: settled.reason };
  const { solver, moment, steady, steps, updates } = settled;
  const wallSeconds = secondsNow() - began;
  const readings = moment.openings.map((mean, n) =>
    openingReading(solver, mean, entryAt(geometry.openings, n).width, fluid.density, viscosity),
  );
  const { powerLoss, dissipation, auditPercent } = balance(moment.openings, moment.dissipation);
  const names = geometry.openings.map(({ name }) => name);
  return {
    answer: {
      openings: readings.map(({ flow, pressure, totalPressure }, n) => ({
        name: entryAt(names, n),
        flow,
        pressure,
        totalPressure,
      })),
      loss: { power: powerLoss, dissipation, auditPercent },
      shares: flowShares(solver, 400),
      reynolds: Object.fromEntries(readings.map(({ reynolds }, n) => [entryAt(names, n), reynolds])),
      recirculatingArea: recirculatingArea(solver, solver.cells > 60000 ? 2 : 1),
      run: {
        cells: solver.cells,
        steps,
        steady,
        wallSeconds,
        cellUpdatesPerSecond: updates / Math.max(wallSeconds, 1e-9),
      },
    },
  };
}

function fieldUnit(path: string): string | undefined {
  if (/ressure$/.test(path)) return "mmHg";
  if (path.endsWith("auditPercent")) return "%";
  if (path.endsWith("wallSeconds")) return "s";
  if (path.endsWith("cellUpdatesPerSecond")) return "1/s";
  if (path.endsWith(".flow")) return "m2/s, or mL/s when round";
  if (path.startsWith("loss.")) return "mW/m, or mW when round";
  return undefined;
}
