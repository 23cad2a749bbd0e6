/** The jet through a pane's fenestration: its hole from the geometry, its speed from the circulation. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { PathwayGeometry } from "../sim/geometry/geometry.ts";
import { numberSetting } from "../sim/parameters/parameters.ts";
import { farWall, type Hole } from "../sim/tracers/index.ts";
import { fromLitresPerMinute } from "../sim/units.ts";
import { traceAt } from "./field-boundary.ts";

/** mm that a jet may go where no atrium lies before it */
const FREE = 25;

/** m2, of a round hole */
const areaOf = (width: number): number => (Math.PI / 4) * (width * 1e-3) ** 2;

const dischargeOf = ({ request }: Circulation): number => numberSetting(request, "fenestrationDischarge");

/** Null where the wall is closed. */
export function holeOf({ openings, chest }: PathwayGeometry, circulation: Circulation | null): Hole | null {
  const opening = openings.find(({ name }) => name === "fenestration");
  if (!opening || !circulation) return null;
  const { centre, normal, width } = opening;
  return {
    centre,
    normal,
    stream: width * Math.sqrt(dischargeOf(circulation)),
    reach: farWall(chest.atrium, centre, normal) ?? FREE,
  };
}

/** m/s with which blood leaves the hole by the orifice law, at `time` (s) of the page's clock; without one, for the mean flow. */
export function jetSpeed(geometry: PathwayGeometry, circulation: Circulation | null, time?: number): number {
  const opening = geometry.openings.find(({ name }) => name === "fenestration");
  if (!opening || !circulation) return 0;
  const { traces, flows } = circulation;
  const trace = traces.flows.fenestration;
  const flow = trace && time !== undefined ? traceAt(traces, trace, time) : flows.fenestration;
  return fromLitresPerMinute(Math.max(0, flow)) / (dischargeOf(circulation) * areaOf(opening.width));
}
