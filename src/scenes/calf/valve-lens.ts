/** A valve under a lens, as it stands in the leg at the moment: shut, blood that would fall back is held; open, it passes; while it closes, it stands. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Streaks, streaks } from "../drawing/streaks.ts";
import type { Theme } from "../theme/theme.ts";
import type { BloodColumn } from "./blood-column.ts";
import { type LegState, placeBlood } from "./leg-blood.ts";
import { legTissue } from "./leg-tones.ts";
import { cuspOf, freeHalf, HALF, placeInLeg, VALVES, type ValveStands } from "./vein.ts";

/** Along the vein, plane units: how far above a valve of the widest vein the lens has its middle, and what it shows about that. */
const [ABOVE, REACH] = [20, 46];

/** Along the vein, plane units: the middle of what a lens on a valve shows, and how far it reaches. @param valve by VALVES */
export function seenBy(valve: number): { readonly at: number; readonly reach: number } {
  const { at } = entryAt(VALVES, valve);
  const size = freeHalf(at) / HALF;
  return { at: at - ABOVE * size, reach: REACH * size };
}

/** By VALVES: how far each stands open, 0..1, and how it stands. */
interface Valves {
  readonly open: readonly number[];
  readonly stands: readonly ValveStands[];
}

interface Lens {
  readonly view: Container;
  /** Where it lies, CSS px; null: nowhere. */
  lay(place: { readonly x: number; readonly y: number; readonly radius: number } | null): void;
  draw(column: BloodColumn, state: LegState, valves: Valves, theme: Theme): void;
  release(): void;
}

/** @param leg what is drawn in the leg, which the lens shows again. @param valve by VALVES */
export function valveLens(
  leg: Readonly<Record<"vein" | "farCusps" | "cusps", Graphics>>,
  valve: number,
): Lens {
  const { at, reach } = seenBy(valve);
  const [view, plane] = [new Container(), new Container()];
  const [ground, rim, mask, arrow] = [new Graphics(), new Graphics(), new Graphics(), new Graphics()];
  const blood: Streaks = streaks();
  const again = (ink: Graphics) => new Graphics(ink.context);
  const [middleX, middleY] = placeInLeg(at, 0).spot;
  plane.pivot.set(middleX, middleY);
  plane.addChild(ground, again(leg.vein), again(leg.farCusps), blood.view, again(leg.cusps), arrow);
  mask.circle(0, 0, 1).fill(0xffffff);
  plane.mask = mask;
  view.addChild(mask, plane, rim);
  let radius = 0;
  return {
    view,
    lay(place) {
      view.visible = place !== null;
      if (!place) return;
      view.position.set(place.x, place.y);
      radius = place.radius;
      mask.scale.set(radius);
      plane.scale.set(radius / reach);
    },
    draw(column, state, { open, stands }, theme) {
      if (!view.visible || radius === 0) return;
      const { colour } = theme;
      blood.resize(column.count);
      placeBlood(blood, column, state, { open, from: at - 1.2 * reach, to: at + 1.2 * reach }, theme);
      ground.clear().circle(middleX, middleY, reach).fill(legTissue("fascia", theme).body);
      rim.clear().circle(0, 0, radius).stroke({ color: colour.accent, width: 3 });
      drawWay(arrow.clear(), valve, entryAt(open, valve), entryAt(stands, valve), theme);
    },
    release: () => blood.release(),
  };
}

/** Plane units in the widest vein, in others by their width: an arrow's shaft and head and the rim around it, and how far from the cusps' edge it begins. */
const ARROW = { long: 22, half: 2.4, head: 8, wide: 6.6, rim: 1.4, off: 26 } as const;
/** Into each pocket of a shut one: by how much smaller, from the vein's middle, and back from the cusps' edge to its tip. */
const HELD = { size: 0.62, aside: 10.5, deep: 11 } as const;

/** Through the open valve towards the heart; into the pockets of the shut one, which that presses together. @param valve by VALVES */
function drawWay(ink: Graphics, valve: number, open: number, stands: ValveStands, { colour }: Theme): void {
  if (stands === "closing") return;
  const { at } = entryAt(VALVES, valve);
  const size = freeHalf(at) / HALF;
  const [, , , [, edge]] = cuspOf(at, open);
  const { long, half, head, wide, rim, off } = ARROW;
  const outline: readonly (readonly [up: number, across: number])[] = [
    [0, 0],
    [head, wide],
    [head, half],
    [long, half],
    [long, -half],
    [head, -half],
    [head, -wide],
  ];
  const arrow = (tip: number, aside: number, of: number) =>
    ink
      .poly(
        outline.flatMap(
          ([up, across]) => placeInLeg(edge + size * (of * up + tip), size * (aside + of * across)).spot,
        ),
      )
      .fill({ color: colour.ink })
      .stroke({ color: colour.stage, width: size * rim, join: "round" });
  if (stands !== "shut") return void arrow(-off, 0, 1);
  for (const side of [-1, 1]) arrow(HELD.deep, side * HELD.aside, -HELD.size);
}
