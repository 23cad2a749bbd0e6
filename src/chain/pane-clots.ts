/** Clots of one pane: let in below, carried by the field, let in again when the last has gone. */

import { present } from "../sim/checked/present.ts";
import type { Blood, Clot, ClotWorld, Surroundings } from "../sim/clots/index.ts";
import type { PathwayGeometry } from "../sim/geometry/geometry.ts";

/** s of blood time between the last clot's leaving and the next round; between one clot and the next */
const PAUSE = 1.5;
const APART = 0.4;

export interface PaneClots {
  /** mm each; another list replaces them, an empty one clears */
  wish(diameters: readonly number[]): void;
  /** Moves them by `seconds` of blood time. */
  follow(geometry: PathwayGeometry, blood: Blood, around: Surroundings, seconds: number): readonly Clot[];
  release(): void;
}

export function paneClots(random: () => number): PaneClots {
  let wished: readonly number[] = [];
  let waiting: number[] = [];
  let untilNext = 0;
  let World: typeof ClotWorld | null = null;
  let world: ClotWorld | null = null;
  let madeFor: PathwayGeometry | null = null;

  const clear = () => {
    world?.clear();
    world = null;
    madeFor = null;
  };

  /** What moves clots is fetched with the first of them; where it does not come, with the next list. */
  const fetchWorld = async () => {
    ({ ClotWorld: World } = await import("../sim/clots/index.ts"));
  };

  /** New walls keep the clots that are on their way. */
  const rebuild = (Made: typeof ClotWorld, geometry: PathwayGeometry, blood: Blood) => {
    const before = world?.clots ?? [];
    clear();
    world = new Made(geometry, blood);
    madeFor = geometry;
    for (const { place, diameter, x, y } of before) if (place === "pathway") world.place(diameter, x, y);
  };

  const letIn = (seconds: number) => {
    untilNext -= seconds;
    const onTheWay = present(world).clots.some(({ place }) => place === "pathway");
    if (waiting.length === 0 && !onTheWay) {
      if (untilNext > 0) return;
      waiting = [...wished];
      untilNext = PAUSE;
    }
    if (waiting.length === 0 || untilNext > 0) return;
    present(world).release(present(waiting.shift()), "ivc", random);
    untilNext = waiting.length > 0 ? APART : PAUSE;
  };

  return {
    wish(diameters) {
      if (diameters.join() === wished.join()) return;
      wished = diameters;
      waiting = [...diameters];
      untilNext = 0;
      clear();
      if (wished.length > 0 && !World) fetchWorld().catch(() => {});
    },
    follow(geometry, blood, around, seconds) {
      if (wished.length === 0 || !World) return [];
      if (geometry !== madeFor) rebuild(World, geometry, blood);
      if (seconds > 0) {
        letIn(seconds);
        present(world).advance(around, seconds);
      }
      return present(world).clots;
    },
    release: clear,
  };
}
