/** Marks of blood in the chests' great vessels, as fast as the computed flow makes them in vessels so wide, slowed for the eye. */
import type { Container } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import { band, type Line, line, spotAt } from "../../sim/geometry/centreline.ts";
import { shapeDistance } from "../../sim/geometry/distance.ts";
import type { PathwayGeometry, Point } from "../../sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import { fromLitresPerMinute, fromSquareMillimetre, toMillimetre } from "../../sim/units.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { isRich, saturationOf } from "../circuit/circuit-blood.ts";
import { part, STEPS } from "../drawing/even-spread.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import { markColour, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { chestOf, type LensPlace, seenAt, trunkOf } from "./lens-place.ts";

/** Times slower than life, alike for all bodies. */
const SLOWED = 9;
/** mm of a way to each mark, and CSS px at least. */
const APART = { mm: 8, px: 11 } as const;
/** CSS px */
const MAX_MARK = 6;
/** Part of a vessel's width by which marks keep to its middle's sides, and mm over which they come and go at its ends. */
const ASIDE = 0.27;
const FADES = 5;

/** Which of a circulation's flows goes there, and whose blood it is. */
const HELD = {
  ivc: { flow: "ivc", blood: "ivc" },
  svc: { flow: "svc", blood: "svc" },
  left: { flow: "left", blood: "pulmonaryArtery" },
  right: { flow: "right", blood: "pulmonaryArtery" },
  aorta: { flow: "systemic", blood: "arterial" },
} as const;
type Vessel = keyof typeof HELD;

/** In mm, the way that the blood goes. */
interface Way {
  readonly vessel: Vessel;
  readonly line: Line;
  /** at even distances along it */
  readonly widths: readonly number[];
  /** whether it lies behind the aorta */
  readonly hidden: (at: Point) => boolean;
}

const known = new WeakMap<CirculationRequest, readonly Way[]>();

/** @param request of a stage with a pathway */
export function waysIn(request: CirculationRequest): readonly Way[] {
  const before = known.get(request);
  if (before) return before;
  const geometry = present(pathwayGeometry(request));
  const { chest } = geometry;
  const aorta = present(anatomyOf(chest).before.find(({ name }) => name === "aorta"));
  const over = shapeDistance({ polygon: { points: band(aorta.line, aorta.from, aorta.to) } });
  const hidden = (at: Point) => over(...at) < 1;
  const ways: Way[] = (["ivc", "svc", "left", "right"] as const).flatMap((vessel) => {
    const tube = tubeAt(geometry, vessel);
    return tube ? [{ vessel, line: line(tube.points), widths: tube.widths, hidden }] : [];
  });
  // Through a chamber it rises to its roof.
  if (chest.chamber) {
    const { line: points, widths } = trunkOf(chest);
    ways.push({ vessel: "ivc", line: line(points), widths, hidden });
  }
  ways.push({
    vessel: "aorta",
    line: line(aorta.line),
    widths: [aorta.from, aorta.to],
    hidden: () => false,
  });
  known.set(request, ways);
  return ways;
}

/** The tube that begins or ends at an opening. */
function tubeAt({ open, chest }: PathwayGeometry, opening: "ivc" | "svc" | "left" | "right") {
  const [x, y] = chest[opening].centre;
  const near = ([px, py]: Point) => Math.hypot(px - x, py - y) < 1;
  for (const shape of open) {
    if (!("tube" in shape)) continue;
    const { points, width } = shape.tube;
    if (!near(entryAt(points, 0)) && !near(lastOf(points))) continue;
    return { points, widths: typeof width === "number" ? [width] : width };
  }
  return null;
}

/** mm/s of a flow (L/min) through a circle so wide (mm). */
export const speedIn = (flow: number, wide: number): number =>
  toMillimetre(fromLitresPerMinute(flow) / fromSquareMillimetre((Math.PI * wide * wide) / 4));

interface Seen {
  readonly point: SweepPoint;
  readonly lens: LensPlace;
}

export interface VesselBlood {
  readonly view: Container;
  /** @param time s of the running clock; `still`: darts in place of moving drops */
  draw(lenses: readonly Seen[], time: number, still: boolean, theme: Theme): void;
  release(): void;
}

export function vesselBlood(): VesselBlood {
  const marks = streaks();
  return {
    view: marks.view,
    draw(lenses, time, still, theme) {
      const moving = lenses.flatMap(({ point: { request, circulation }, lens }) =>
        circulation ? waysIn(request).map((way) => ({ request, circulation, lens, way })) : [],
      );
      const countOf = ({ way, lens }: (typeof moving)[number]) =>
        Math.max(2, Math.round(lastOf(way.line.run) / Math.max(APART.mm, APART.px / lens.perMillimetre)));
      marks.resize(moving.reduce((sum, each) => sum + countOf(each), 0));
      let mark = 0;
      for (const each of moving) {
        const { request, circulation, lens, way } = each;
        const { vessel, widths } = way;
        const [long, count] = [lastOf(way.line.run), countOf(each)];
        const saturation = saturationOf(circulation, HELD[vessel].blood);
        const colour = tintOf(markColour(theme.colour, saturation));
        const rich = vessel === "aorta" && isRich("arterial", saturation);
        const mean = widths.reduce((sum, each) => sum + each, 0) / widths.length;
        // mm passed
        const passed = still ? 0 : (time * speedIn(circulation.flows[HELD[vessel].flow], mean)) / SLOWED;
        const place = seenAt(request, lens);
        const { reach } = chestOf(request);
        for (let k = 0; k < count; k++) {
          const gone = part((k + 0.5) / count + passed / long);
          const { at, along, left } = spotAt(way.line, gone);
          const wide = entryAt(widths, Math.round(gone * (widths.length - 1)));
          const aside = ASIDE * wide * (2 * part((k + 1) * STEPS[0]) - 1);
          const seen: Point = [at[0] + aside * left[0], at[1] + aside * left[1]];
          const size = Math.max(1.8, Math.min(0.24 * wide * lens.perMillimetre, MAX_MARK));
          const [x, y] = place(seen);
          const out = Math.hypot(x - lens.x, y - lens.y) > reach * lens.perMillimetre - size;
          marks.set(mark++, {
            x,
            y,
            angle: -Math.atan2(along[1], along[0]),
            length: (still ? 2.2 : 1.6) * size,
            width: (still ? 1.7 : 1) * size,
            colour,
            shape: shapeOf(rich, still),
            alpha: out || way.hidden(seen) ? 0 : Math.min(1, (Math.min(gone, 1 - gone) * long) / FADES),
          });
        }
      }
    },
    release: () => marks.release(),
  };
}
