/** The upper valve under a lens, as it stands in the leg at the moment: shut, blood that would fall back is held; open, it passes; while it closes, it stands. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Streaks, streaks } from "../drawing/streaks.ts";
import type { Theme } from "../theme/theme.ts";
import type { BloodColumn } from "./blood-column.ts";
import { type LegState, placeBlood } from "./leg-blood.ts";
import { legTissue } from "./leg-tones.ts";
import { cuspOf, placeInLeg, VALVES, type ValveStands } from "./vein.ts";

/** Along the vein: what the lens shows, plane units. */
const { at: VALVE } = VALVES[0];
export const LENS_AT = VALVE - 20;
const REACH = 46;

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

/** @param leg what is drawn in the leg, which the lens shows again */
export function valveLens(leg: Readonly<Record<"vein" | "farCusps" | "cusps", Graphics>>): Lens {
  const [view, plane] = [new Container(), new Container()];
  const [ground, rim, mask, arrow] = [new Graphics(), new Graphics(), new Graphics(), new Graphics()];
  const blood: Streaks = streaks();
  const again = (ink: Graphics) => new Graphics(ink.context);
  const [middleX, middleY] = placeInLeg(LENS_AT, 0).spot;
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
      plane.scale.set(radius / REACH);
    },
    draw(column, state, { open, stands }, theme) {
      if (!view.visible || radius === 0) return;
      const { colour } = theme;
      blood.resize(column.count);
      placeBlood(
        blood,
        column,
        state,
        { open, from: LENS_AT - 1.2 * REACH, to: LENS_AT + 1.2 * REACH },
        theme,
      );
      ground.clear().circle(middleX, middleY, REACH).fill(legTissue("fascia", theme).body);
      rim.clear().circle(0, 0, radius).stroke({ color: colour.accent, width: 3 });
      drawWay(arrow.clear(), entryAt(open, 0), entryAt(stands, 0), theme);
    },
    release: () => blood.release(),
  };
}

/** Plane units of an arrow's shaft and head, and of the rim around it. */
const ARROW = { long: 20, half: 1.7, head: 5.2, wide: 4.6, rim: 1.4 } as const;

/** Through the open valve towards the heart; back towards the shut one, and there no further. */
function drawWay(ink: Graphics, open: number, stands: ValveStands, { colour }: Theme): void {
  if (stands === "closing") return;
  const [, , , [, edge]] = cuspOf(VALVE, open);
  const shut = stands === "shut";
  const tip = shut ? edge - 3 : edge - 26;
  const way = shut ? -1 : 1;
  const spot = (up: number, across: number) => placeInLeg(tip + way * up, across).spot;
  const { long, half, head, wide, rim } = ARROW;
  ink
    .poly(
      [
        spot(0, 0),
        spot(head, wide),
        spot(head, half),
        spot(long, half),
        spot(long, -half),
        spot(head, -half),
        spot(head, -wide),
      ].flat(),
    )
    .fill({ color: colour.ink })
    .stroke({ color: colour.stage, width: rim, join: "round" });
  if (!shut) return;
  const [left, right] = [placeInLeg(edge - 1, -8).spot, placeInLeg(edge - 1, 8).spot];
  for (const [color, width] of [
    [colour.stage, 5],
    [colour.caution, 2.6],
  ] as const)
    ink
      .moveTo(...left)
      .lineTo(...right)
      .stroke({ color, width, cap: "round" });
}
