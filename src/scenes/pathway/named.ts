/** Which labels a plane carries: the one thing pointed at, or its places. */
import type { Pane } from "../../chain/frame.ts";
import type { PathwayGeometry } from "../../sim/geometry/geometry.ts";
import { elementLabel, type Label, labelsOf } from "../layers/labels.ts";
import { placesNamed } from "../layers/spots.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";

type ToScreen = (point: readonly [number, number]) => readonly [number, number];

/** While one thing is pointed at, only it is named; undefined when nothing in this plane is. */
export function pointed(
  focus: string | null,
  { places, path }: PathwayGeometry,
  { circulation }: Pane,
  toScreen: ToScreen,
  crowded: boolean,
  sizes: Sizes,
  theme: Theme,
): Label[] | undefined {
  if (!focus) return undefined;
  const place = placesNamed(places, focus);
  const brief = crowded && place.every(({ name }) => CHIEF.includes(name));
  const found =
    place.length > 0
      ? labelsOf(place, circulation, toScreen, sizes, brief, theme)
      : elementLabel(focus, path, circulation, toScreen, sizes, theme);
  return found.length > 0 ? found : undefined;
}

export function listed(
  { places }: PathwayGeometry,
  { circulation }: Pane,
  crowded: boolean,
  toScreen: ToScreen,
  sizes: Sizes,
  theme: Theme,
): Label[] {
  const chief = crowded ? places.filter(({ name }) => CHIEF.includes(name)) : places;
  return labelsOf(chief, circulation, toScreen, sizes, crowded, theme);
}

/** Places that keep their label where room is short. */
const CHIEF = ["svc", "ivc", "leftLungArtery", "rightLungArtery", "atrium", "fenestration"];
