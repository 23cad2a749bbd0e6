/** One pane: its geometry, its field worker, its tracers and its dye. */
import type { Circulation } from "../sim/circulation/answer.ts";
import type { FieldReadings } from "../sim/flow-field/flow-field.ts";
import type { PathwayGeometry } from "../sim/geometry/geometry.ts";
import { pathwayGeometry } from "../sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import { fromMillipascalSecond } from "../sim/units.ts";
import { boundaryConditions, sharesInflow } from "./field-boundary.ts";
import { type FieldLink, fieldLink } from "./field-link.ts";
import { fluidOf } from "./fluid.ts";
import type { Pane } from "./frame.ts";
import { paneClots } from "./pane-clots.ts";
import { type Motion, paneTracers, type Shown } from "./pane-tracers.ts";
import type { Port } from "./port.ts";
import type { Fluid } from "./worker-messages.ts";

export interface PaneLink {
  /** What to show; null ends the field (a scene without one, or a stage without a pathway). */
  show(request: CirculationRequest | null): void;
  /**
   * The latest answers of this pane and of the first, whose inflow it takes where the two are near. A first field waits while
   * `more` answers are to come: it would only take the solver's time.
   */
  circulate(own: Circulation | null, first: Circulation | null, more: boolean): void;
  /** Releases a pulse. */
  dye(): void;
  /** mm each */
  clots(diameters: readonly number[]): void;
  /** Moves what moves by `step` s of blood time; the field is to run at `rate`. */
  frame(time: number, step: number, rate: number, motion: Motion): Pane;
  watch(now: number): void;
  readings(): FieldReadings | null;
  readonly capable: number | undefined;
  readonly restarting: boolean;
  readonly lost: boolean;
  readonly refused: boolean;
  release(): void;
}

/** s of a field's time after which its readings know of a new drive */
const HEARD = 0.3;

/**
 * @param tracers     how many this pane may show
 * @param cellsAcross solver cells across the narrowest opening of a great vessel
 */
export function paneLink(
  startField: () => Port,
  random: () => number,
  tracers: number,
  cellsAcross: number,
): PaneLink {
  let link: FieldLink | null = null;
  let geometry: PathwayGeometry | null = null;
  let geometryKey = "";
  let fluid: Fluid | undefined;
  let own: Circulation | null = null;
  let first: Circulation | null = null;
  let waits = true;
  let clock = 0;
  /** when the field was last driven anew: its shape, and s of its own time */
  let driven = { shapeId: -1, time: 0 };
  const moving = paneTracers(tracers, random);
  const clots = paneClots(random);

  const shares = () => own !== null && first !== null && sharesInflow(own, first);

  const boundary = () => {
    if (!link || !own || !geometry) return;
    const leaks = geometry.openings.some(({ name }) => name === "fenestration");
    driven = { shapeId: link.shapeId, time: link.field?.time ?? 0 };
    // The field counts from when it was built, the page's clock from the start.
    link.boundary(boundaryConditions(own, shares() ? first! : own, leaks, clock - (link.field?.time ?? 0)));
  };

  const build = () => {
    if (!geometry || !fluid || (!link && (waits || !own))) return;
    link ??= fieldLink(startField);
    link.build({ geometry, fluid, cellsAcross });
    boundary();
  };

  /** A picture that stands still needs no flow beyond the settled one. */
  const mayRest = ({ shapeId, field }: FieldLink) =>
    field?.readings.settled === true && field.time > (driven.shapeId === shapeId ? driven.time + HEARD : 0);

  const carried = (shown: Shown, plane: PathwayGeometry, { density, viscosity }: Fluid, step: number) => {
    const { shape, field, from, blend } = shown;
    const blood = { density, viscosity: fromMillipascalSecond(viscosity) };
    return clots.follow(plane, blood, { shape, from, to: field, blend }, step);
  };

  const end = () => {
    clots.release();
    link?.release();
    link = null;
    geometry = null;
    geometryKey = "";
  };

  return {
    show(request) {
      const next = request && pathwayGeometry(request);
      if (!next || !request) {
        end();
        return;
      }
      const key = JSON.stringify([next, request.body.haemoglobin]);
      if (key === geometryKey) return;
      geometryKey = key;
      geometry = next;
      fluid = fluidOf(request);
      build();
    },
    circulate(ownNow, firstNow, more) {
      const same = own === ownNow && first === firstNow;
      own = ownNow;
      first = firstNow;
      waits = more;
      if (!link) build();
      else if (!same) boundary();
    },
    dye: moving.dye,
    clots: (diameters) => clots.wish(diameters),
    frame(time, step, rate, motion) {
      clock = time;
      link?.run(motion !== "moving" && mayRest(link) ? 0 : rate);
      const shown = link && geometry ? moving.follow(link, geometry, own, time, step, motion) : null;
      return {
        circulation: own,
        equalInflow: shares(),
        geometry,
        shape: shown?.shape ?? null,
        field: shown?.field ?? null,
        means: shown ? (link?.means ?? null) : null,
        tracers: shown?.tracers ?? null,
        throughHole: shown?.jet ?? null,
        clots:
          shown && geometry && fluid ? carried(shown, geometry, fluid, motion === "moving" ? step : 0) : [],
        washOut: shown ? moving.washOut : null,
      };
    },
    watch: (now) => link?.watch(now),
    readings() {
      const measured = link?.field?.readings;
      const seconds = moving.washOutTime;
      if (!measured) return null;
      return seconds === undefined ? measured : { ...measured, washOutSeconds: seconds };
    },
    get capable() {
      return link?.capable;
    },
    get restarting() {
      return link?.restarting ?? false;
    },
    get lost() {
      return link?.lost ?? false;
    },
    get refused() {
      return link?.refused !== undefined;
    },
    release: end,
  };
}
