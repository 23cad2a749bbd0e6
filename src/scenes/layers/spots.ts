/** Where a name that is pointed at lies in a pathway's plane. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { PathwayGeometry, Place, Point } from "../../sim/geometry/geometry.ts";

/** The pressure that belongs to a place. */
export const PRESSURE_AT: Readonly<Record<string, keyof Circulation["pressures"]>> = {
  svc: "svc",
  ivc: "ivc",
  hepaticVein: "hepaticVein",
  leftPulmonaryArtery: "pulmonaryArteryLeft",
  rightPulmonaryArtery: "pulmonaryArteryRight",
  atrium: "atrium",
  conduit: "pathway",
  tunnel: "pathway",
  chamber: "pathway",
};

export interface Lit {
  /** mm */
  readonly centre: readonly [number, number];
  readonly radius: number;
}

/** Names that mean several places at once. */
const GROUPS: Readonly<Record<string, readonly string[]>> = { greatVeins: ["svc", "ivc"] };

/** mm around the spot of a place */
const PLACE_RADIUS = 10;

/** The places of that name; several when it is a group's. */
export const placesNamed = (places: readonly Place[], name: string): readonly Place[] => {
  const names = GROUPS[name] ?? [name];
  return places.filter((place) => names.includes(place.name));
};

/** An element's own area, or the places of that name; empty where the plane has neither. */
export function spotsOf({ path, places }: PathwayGeometry, focus: string | null): readonly Lit[] {
  if (!focus) return [];
  const area = path.find(({ element }) => element === focus)?.area;
  if (area) return [area];
  return placesNamed(places, focus).map(({ at, radius }) => ({ centre: at, radius: radius ?? PLACE_RADIUS }));
}

/** The element whose area a point of the plane lies in; of several the one whose middle is nearest, in radii. */
export function elementAt({ path }: PathwayGeometry, [x, y]: Point): string | null {
  let best: string | null = null;
  let nearest = 1;
  for (const { element, area } of path) {
    if (!area) continue;
    const distance = Math.hypot(x - area.centre[0], y - area.centre[1]) / area.radius;
    if (distance < nearest) {
      nearest = distance;
      best = element;
    }
  }
  return best;
}
