/** The heart's valves: leaflets that turn about their hinges, and cords from those of the inlet to the papillary muscles. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Theme } from "../theme/theme.ts";
import { PAPILLARY } from "./heart-shape.ts";
import { LEAFLETS, leafletAt, turnOf } from "./leaflets.ts";
import type { Standing } from "./standing.ts";
import { tissue } from "./tones.ts";

/** In the ventricle's own lengths, in its frame: x along the axis, y across. */
export interface Valves {
  readonly view: Container;
  set(theme: Theme): void;
  move(standing: Standing): void;
}

export function valves(): Valves {
  const view = new Container();
  const cords = new Graphics();
  const drawn = LEAFLETS.map((leaflet) => ({ leaflet, sickle: new Graphics() }));
  view.addChild(cords, ...drawn.map(({ sickle }) => sickle));
  let colour = "";
  return {
    view,
    set(theme) {
      const look = tissue("valve", theme);
      colour = look.edge;
      for (const { leaflet, sickle } of drawn)
        sickle
          .clear()
          .poly(leaflet.sickle.flat())
          .fill({ color: look.body })
          .stroke({ color: look.shade, width: 0.3 });
    },
    move(standing) {
      cords.clear();
      for (const { leaflet, sickle } of drawn) {
        sickle.position.set(0, leaflet.hinge);
        sickle.rotation = turnOf(leaflet, standing);
        if (leaflet.valve === "semilunar") continue;
        // Each leaflet is held from both sides, most of all from its own.
        for (const [head, parts] of [
          [leaflet.side === 1 ? 0 : 1, [1, 0.84, 0.62]],
          [leaflet.side === 1 ? 1 : 0, [1]],
        ] as const)
          for (const part of parts)
            cords.moveTo(...leafletAt(leaflet, standing, part)).lineTo(...entryAt(PAPILLARY, head));
        cords.stroke({ width: 0.36, color: colour, alpha: 0.8 });
      }
    },
  };
}
