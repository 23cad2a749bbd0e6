/** One pane's walls and the field between them: it flows when an answer says what flows in, with new boundary conditions when that changes. */

import { present } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { PathwayGeometry } from "../sim/geometry/geometry.ts";
import { pathwayGeometry } from "../sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import { boundaryConditions, sharesInflow } from "./field-boundary.ts";
import { type FieldLink, fieldLink } from "./field-link.ts";
import { fluidOf } from "./fluid.ts";
import type { Foresee, Foreseen } from "./foreseen.ts";
import type { FlowMoment } from "./frame.ts";
import type { Port } from "./port.ts";
import type { Fluid, GridChoice } from "./worker-messages.ts";

/** s of a field's time after which its readings know of new boundary conditions */
const HEARD = 0.3;

/** The latest answers of this pane and of the first, whose inflow it takes where the two are near. */
export interface Inflow {
  readonly own: Circulation | null;
  readonly first: Circulation | null;
}

export interface PaneField {
  /** null before the first build and where there is no field */
  readonly link: FieldLink | null;
  readonly walls: { readonly geometry: PathwayGeometry; readonly fluid: Fluid } | null;
  /** until the answer has come */
  readonly foreseen: Foreseen | undefined;
  /** null without a field */
  moment(): FlowMoment | null;
  /** it takes the first pane's inflow */
  readonly equalInflow: boolean;
  /** Null ends the field: a scene without one, or a stage without a pathway. */
  show(request: CirculationRequest | null): void;
  /** Beside others a first field waits while `more` answers are to come: it would only take the solver's time. */
  drive(inflow: Inflow, more: boolean): void;
  /** The field is to run at `rate` from `time` (s of the page's clock); a `still` picture needs no flow beyond the settled one, `seen` says for how much its grid is to do. */
  run(time: number, rate: number, still: boolean, seen: number): void;
  release(): void;
}

export function paneField(
  startField: () => Port,
  grid: GridChoice,
  foresee: Foresee = () => undefined,
): PaneField {
  let link: FieldLink | null = null;
  let walls: PaneField["walls"] = null;
  let key = "";
  let inflow: Inflow = { own: null, first: null };
  let foreseen: Foreseen | undefined;
  let waits = true;
  let clock = 0;
  /** when the field last got new boundary conditions: its shape, and s of its own time */
  let driven = { shapeId: -1, time: 0 };
  /** the same, kept while other walls have no moment yet: s of its own time, which goes on where only sizes change */
  let changedAt = 0;

  const shares = ({ own, first }: Inflow) => own !== null && first !== null && sharesInflow(own, first);

  const setBoundary = () => {
    const { own, first } = inflow;
    if (link && !own && foreseen) link.boundary(foreseen.boundary);
    if (!link || !own || !walls) return;
    const leaks = walls.geometry.openings.some(({ name }) => name === "fenestration");
    const { shapeId, field } = link.latest;
    const time = field?.time ?? 0;
    driven = { shapeId, time };
    if (field) changedAt = time;
    // The field counts from when it was built, the page's clock from the start.
    link.boundary(boundaryConditions(own, shares(inflow) ? present(first) : own, leaks, clock - time));
  };

  /** Alone it is built while the solver still works, to flow once there is an answer. */
  const mayBegin = () => grid.lead !== undefined || (!waits && inflow.own !== null);

  const build = () => {
    if (!walls || (!link && !mayBegin())) return;
    link ??= fieldLink(startField);
    link.build({ ...walls, ...grid });
    setBoundary();
  };

  const mayRest = ({ latest: { shapeId, field } }: FieldLink) =>
    field?.readings.settled === true && field.time > (driven.shapeId === shapeId ? driven.time + HEARD : 0);

  const release = () => {
    link?.release();
    link = null;
    walls = null;
    key = "";
  };

  return {
    get link() {
      return link;
    },
    get walls() {
      return walls;
    },
    get foreseen() {
      return inflow.own ? undefined : foreseen;
    },
    moment() {
      const field = link?.latest.field;
      // Begun from rest since: its time counts from there.
      return field
        ? { time: field.time, unchanged: field.time - (changedAt <= field.time ? changedAt : 0) }
        : null;
    },
    get equalInflow() {
      return shares(inflow);
    },
    show(request) {
      const geometry = request && pathwayGeometry(request);
      if (!geometry || !request) {
        release();
        return;
      }
      const next = JSON.stringify([geometry, request.body.haemoglobin]);
      if (next === key) return;
      key = next;
      walls = { geometry, fluid: fluidOf(request) };
      foreseen = foresee(request);
      build();
    },
    drive(next, more) {
      const same = inflow.own === next.own && inflow.first === next.first;
      inflow = next;
      waits = more;
      if (!link) build();
      else if (!same) setBoundary();
    },
    run(time, rate, still, seen) {
      clock = time;
      link?.run(still && mayRest(link) ? 0 : rate, seen);
    },
    release,
  };
}
