/** Which labels a plane carries, the one thing pointed at or its places, where they come to lie, and whose blood there is to name. */
import type { Pane } from "../../chain/frame.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { PathwayGeometry } from "../../sim/geometry/geometry.ts";
import { hasPlane } from "../../sim/parameters/request.ts";
import { ORIGINS } from "../../sim/tracers/tracers.ts";
import type { Colouring } from "../../state/scene-state.ts";
import type { Look } from "../drawing/drawing-sheet.ts";
import { keepOff } from "../layers/keep-off.ts";
import { elementLabel, type Label, labelsOf, type ToScreen } from "../layers/labels.ts";
import type { Occupied } from "../layers/occupied.ts";
import { placesNamed } from "../layers/spots.ts";
import type { Box } from "../scene.ts";
import { onPlane, type Projection } from "./pathway-layout.ts";

/** A plane whose places and elements can be named. */
export interface NamedPlane {
  readonly geometry: PathwayGeometry;
  readonly circulation: Circulation | null;
  readonly earlier?: Circulation | null | undefined;
  readonly toScreen: ToScreen;
  /** room is short: chief places alone, by short names */
  readonly crowded: boolean;
}

/** While one thing is pointed at, only it is named; undefined when nothing in this plane is. */
export function pointed(
  focus: string | null,
  { geometry: { places, path }, circulation, earlier, toScreen, crowded }: NamedPlane,
  look: Look,
): Label[] | undefined {
  if (!focus) return undefined;
  const place = placesNamed(places, focus);
  const brief = crowded && place.every(({ name }) => CHIEF.includes(name));
  const found =
    place.length > 0
      ? labelsOf(place, circulation, toScreen, brief, { ...look, earlier })
      : elementLabel(focus, path, circulation, toScreen, look);
  return found.length > 0 ? found : undefined;
}

export function listed(
  { geometry, circulation, earlier, toScreen, crowded }: NamedPlane,
  look: Look,
): Label[] {
  const { places } = geometry;
  const chief = crowded ? places.filter(({ name }) => CHIEF.includes(name)) : places;
  return labelsOf(chief, circulation, toScreen, crowded, { ...look, earlier });
}

/** Places that keep their label where room is short. */
const CHIEF = ["svc", "ivc", "leftPulmonaryArtery", "rightPulmonaryArtery", "atrium", "fenestration"];

/** Heights of a plate that hairlines are long at most where room is short: longer ones run across the heart and each other. */
const SHORT = 1.5;
/** Parts of the room's height, elsewhere: beyond it a plate seems to speak of what it lies by. */
const LONG = 0.36;

/** Where labels may lie (CSS px), what is taken of it, and whether it is short. */
interface Room {
  readonly box: Box;
  readonly taken: readonly Box[];
  readonly crowded: boolean;
}

/** The labels that have room, where no plate covers blood or a part that is not its own; a spot that a close camera has left behind needs none. */
export function placed(
  labels: readonly Label[],
  parts: Occupied,
  projection: Projection,
  { box, taken, crowded }: Room,
): Label[] {
  const seen = ({ at: [x, y] }: Label) =>
    x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
  const covers = coverIn(parts, projection);
  const place = (some: readonly Label[], longest?: (label: Label) => number) =>
    keepOff(
      some.filter(seen),
      box,
      taken,
      ({ name, x, y, width, height }) => covers({ x: x - width / 2, y: y - height / 2, width, height }, name),
      longest,
    );
  const near = place(labels, ({ height }) => (crowded ? SHORT * height : LONG * box.height));
  // At least one is named, and whatever is named alone, however far its plate.
  return near.length > 0 ? near : place(labels).slice(0, 1);
}

/** Whether a box (CSS px) lies on blood or on a part that is not its own. */
export const coverIn =
  (parts: Occupied, projection: Projection) =>
  ({ x, y, width, height }: Box, own: string): boolean => {
    const [left, bottom] = onPlane(projection, x, y + height);
    const [right, top] = onPlane(projection, x + width, y);
    return parts.covers(left, bottom, right, top, own);
  };

/** By ORIGINS: whether blood from there is in the picture, in a field, in a drawn vein or, while it moves, in a heart with two ventricles. */
export function originsIn(panes: readonly Pane[], still: boolean): boolean[] {
  const lower = (pane: Pane) => opens(pane, "ivc") || pane.geometry?.chest.lowerVein !== undefined;
  return ORIGINS.map((origin) =>
    panes.some(
      (pane) => (isPumped(pane) && !still) || (origin === "upper" ? opens(pane, "svc") : lower(pane)),
    ),
  );
}

/** Heart and lungs in place of a pathway. */
export const isPumped = ({ circulation }: Pane): boolean =>
  circulation !== null && !hasPlane(circulation.request.stage);

const opens = ({ geometry }: Pane, opening: string): boolean =>
  geometry?.openings.some(({ name }) => name === opening) === true;

/** How long blood has been on its way belongs to a field: without one its origin is shown. */
export const colouredBy = (colouring: Colouring, computed: boolean): Colouring =>
  computed || colouring !== "age" ? colouring : "origin";
