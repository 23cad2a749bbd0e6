/** Kind "field": steady flow in any plane of shapes and openings. */
import type { Checked } from "../circulation/check-request.ts";
import type { Fault } from "../faults.ts";
import { flowShares, recirculatingArea } from "../field/pathlines.ts";
import { planeFaults } from "../field/plane-faults.ts";
import { balance, openingReading } from "../field/readings.ts";
import { settle } from "../field/settle.ts";
import { fromMillipascalSecond } from "../units.ts";
import { checkField, type FieldRequest, refuseTooMany } from "./field-request.ts";
import { fieldSchema } from "./field-schema.ts";
import type { Kind, Outcome } from "./kind.ts";
import { MOST_WALL_SECONDS, secondsNow } from "./stopwatch.ts";

/** Cell updates after which a flow is answered as it stands, "steady": false; by the clock after MOST_WALL_SECONDS or three times the blood's. */
const MOST_UPDATES = 4e9;

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

function faultsOfPlane({ geometry, cell, cellsAcross, depth }: FieldRequest): readonly Fault[] {
  return planeFaults(geometry, { cell, depth }, (count) => refuseTooMany(count, cellsAcross));
}

function answerField(request: FieldRequest, progress?: (done: number) => void): Outcome {
  const { geometry, fluid, depth, cell, cellsAcross, maxSeconds, steadyTolerance } = request;
  const viscosity = fromMillipascalSecond(fluid.viscosity);
  const began = secondsNow();
  const wallLimit = Math.max(MOST_WALL_SECONDS, 3 * maxSeconds);
  const settled = settle(
    { geometry, density: fluid.density, viscosity, cellsAcross },
    {
      cell,
      depth,
      maxSeconds,
      tolerance: steadyTolerance,
      mostUpdates: MOST_UPDATES,
      enough: () => secondsNow() - began > wallLimit,
    },
    progress,
  );
  if (settled.reason) return { reason: settled.reason };
  const { lattice, moment, steady, steps, updates } = settled;
  const wallSeconds = secondsNow() - began;
  const readings = moment.openings.map((mean, n) =>
    openingReading(lattice, mean, geometry.openings[n]!.width, fluid.density, viscosity),
  );
  const { powerLoss, dissipation, auditPercent } = balance(moment.openings, moment.dissipation);
  const names = geometry.openings.map(({ name }) => name);
  return {
    answer: {
      openings: readings.map(({ flow, pressure, totalPressure }, n) => ({
        name: names[n]!,
        flow,
        pressure,
        totalPressure,
      })),
      loss: { power: powerLoss, dissipation, auditPercent },
      shares: flowShares(lattice, 400),
      reynolds: Object.fromEntries(readings.map(({ reynolds }, n) => [names[n]!, reynolds])),
      recirculatingArea: recirculatingArea(lattice, lattice.cells > 60000 ? 2 : 1),
      run: {
        cells: lattice.cells,
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
