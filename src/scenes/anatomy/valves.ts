/** The valves' leaflets: each a thin sickle that turns about its hinge between shut and open, with cords to the papillary muscles. */
import { Container, Graphics } from "pixi.js";
import type { Theme } from "../theme/theme.ts";
import { ATRIOVENTRICULAR, PAPILLARY, type Ring, SEMILUNAR } from "./heart-shape.ts";
import type { Standing } from "./motion.ts";
import { tissue } from "./tones.ts";

interface Leaflet {
  readonly view: Graphics;
  readonly hinge: number;
  readonly length: number;
  /** 1 at the lower hinge, -1 at the upper one */
  readonly side: 1 | -1;
  /** rad from the base's line, towards the apex: shut and open */
  readonly shut: number;
  readonly open: number;
}

/** In the ventricle's own lengths, in its frame: x along the axis, y across. */
export interface Valves {
  readonly view: Container;
  set(theme: Theme): void;
  move(standing: Standing): void;
}

/** Shut leaflets of the inlet meet a little below the base; those of the outflow bulge back towards the ventricle. */
const INLET = { shut: 0.3, open: 1.25 } as const;
const OUTLET = { shut: -0.22, open: -1.25 } as const;

const pair = (ring: Ring, angles: { readonly shut: number; readonly open: number }): readonly Leaflet[] =>
  ([1, -1] as const).map((side) => ({
    view: new Graphics(),
    hinge: side === 1 ? ring.from : ring.to,
    length: ((ring.to - ring.from) / 2 / Math.cos(angles.shut)) * 1.03,
    side,
    ...angles,
  }));

export function valves(): Valves {
  const view = new Container();
  const cords = new Graphics();
  const [inlet, outlet] = [pair(ATRIOVENTRICULAR, INLET), pair(SEMILUNAR, OUTLET)];
  view.addChild(cords, ...[...inlet, ...outlet].map((leaflet) => leaflet.view));
  let colour = "";
  return {
    view,
    set(theme) {
      const look = tissue("muscle", theme);
      colour = look.edge;
      for (const { view: sickle, length, side } of [...inlet, ...outlet]) {
        sickle.clear();
        // From the hinge along y: a belly towards the apex, a free edge at its end.
        const bend = length * 0.2;
        sickle
          .moveTo(-0.9, -0.6 * side)
          .quadraticCurveTo(bend * 0.8, side * length * 0.5, -0.1, side * length)
          .lineTo(0.9, side * length * 0.985)
          .quadraticCurveTo(bend + 2, side * length * 0.5, 1.3, -0.6 * side)
          .closePath()
          .fill({ color: theme.name === "dark" ? "#f3dccb" : "#fff6ee" })
          .stroke({ color: look.shade, width: 0.35 });
      }
    },
    move({ atrioventricular, semilunar }) {
      cords.clear();
      const tip = (leaflet: Leaflet, opened: number): readonly [number, number] => {
        const angle = leaflet.shut + (leaflet.open - leaflet.shut) * opened;
        leaflet.view.position.set(0, leaflet.hinge);
        leaflet.view.rotation = -leaflet.side * angle;
        return [
          leaflet.length * Math.sin(angle),
          leaflet.hinge + leaflet.side * leaflet.length * Math.cos(angle),
        ];
      };
      for (const leaflet of outlet) tip(leaflet, semilunar);
      for (const leaflet of inlet) {
        const [x, y] = tip(leaflet, atrioventricular);
        for (const [px, py] of PAPILLARY)
          if (Math.sign(py) === -leaflet.side || leaflet.side === -1)
            cords.moveTo(x, y).lineTo(px, py).stroke({ width: 0.35, color: colour, alpha: 0.75 });
      }
    },
  };
}
