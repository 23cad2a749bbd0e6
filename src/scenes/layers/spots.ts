/** Where a name that is pointed at lies in a pathway's plane. */
import type { PathwayGeometry, Place } from "../../sim/geometry/geometry.ts";

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
