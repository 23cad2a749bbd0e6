/** One pane: its geometry, its field worker, its tracers and its dye. */

import { present } from "../sim/checked/present.ts";
import type { FieldReadings } from "../sim/flow-field/flow-field.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import { fromMillipascalSecond } from "../sim/units.ts";
import type { DyePulse } from "./dye-pulse.ts";
import type { Foresee } from "./foreseen.ts";
import type { FlowMoment, Pane } from "./frame.ts";
import { paneClots } from "./pane-clots.ts";
import { type Inflow, type PaneField, paneField } from "./pane-field.ts";
import { type Passing, paneTracers, type Shown } from "./pane-tracers.ts";
import type { Port } from "./port.ts";
import type { GridChoice } from "./worker-messages.ts";

export interface PaneLink {
  show: PaneField["show"];
  drive: PaneField["drive"];
  /** Releases a pulse. */
  dye(): void;
  /** mm each */
  clots(diameters: readonly number[]): void;
  /** Moves what moves; the field is to run at `rate`, where `seen` is asked for. */
  frame(passing: Passing, rate: number, seen: number): Pane;
  watch(now: number): void;
  readings(): FieldReadings | null;
  /** The latest moment of its field. */
  moment(): FlowMoment | null;
  /** blood seconds per wall-clock second that the field's worker can compute */
  readonly capable: number | undefined;
  /** of its field's grid, count across the narrowest opening */
  readonly cellsAcross: number | undefined;
  /** Word keys of the steps down the ladder that this pane has taken. */
  readonly degraded: readonly string[];
  release(): void;
}

const washOutOf = ({ washOut, spread }: DyePulse): Pane["washOut"] =>
  washOut && spread ? { ...washOut, band: spread.band } : washOut;

/** @param tracers how many this pane may show */
export function paneLink(
  startField: () => Port,
  random: () => number,
  tracers: number,
  grid: GridChoice,
  foresee?: Foresee,
): PaneLink {
  const field = paneField(startField, grid, foresee);
  const moving = paneTracers(tracers, random);
  const clots = paneClots(random);
  let inflow: Inflow = { own: null, first: null };

  const clotsIn = ({ shape, field: to, from, blend }: Shown, step: number) => {
    const { geometry, fluid } = present(field.walls);
    const blood = { density: fluid.density, viscosity: fromMillipascalSecond(fluid.viscosity) };
    return clots.follow(geometry, blood, { shape, from, to, blend }, step);
  };

  return {
    show(request: CirculationRequest | null) {
      field.show(request);
      if (!field.walls) clots.release();
    },
    drive(next, more) {
      inflow = next;
      field.drive(next, more);
    },
    dye: moving.dye.begin,
    clots: (diameters) => clots.wish(diameters),
    frame(passing, rate, seen) {
      const { time, step, motion } = passing;
      field.run(time, rate, motion !== "moving", motion === "moving" ? seen : 0);
      const { link, walls } = field;
      // What stands still is first shown as solved.
      const foreseen = motion === "moving" ? field.foreseen : undefined;
      const shown =
        link && walls && (inflow.own || foreseen)
          ? moving.follow(
              link.latest,
              { geometry: walls.geometry, circulation: inflow.own, foreseen: foreseen?.supply },
              passing,
            )
          : null;
      return {
        circulation: inflow.own,
        foreseen: foreseen ?? null,
        equalInflow: field.equalInflow,
        geometry: walls?.geometry ?? null,
        shape: shown?.shape ?? null,
        field: shown?.field ?? null,
        means: shown ? (link?.latest.means ?? null) : null,
        tracers: shown?.tracers ?? null,
        departing: shown?.departing ?? null,
        throughHole: shown?.jet ?? null,
        clots: shown ? clotsIn(shown, motion === "moving" ? step : 0) : [],
        washOut: shown ? washOutOf(moving.dye) : null,
      };
    },
    watch: (now) => field.link?.watch(now),
    readings() {
      const measured = field.link?.latest.field?.readings;
      const { spread } = moving.dye;
      if (!measured) return null;
      return spread ? { ...measured, washOutSeconds: spread.mean, washOutBand: spread.band } : measured;
    },
    moment: field.moment,
    get capable() {
      return field.link?.capable;
    },
    get cellsAcross() {
      return field.link?.cellsAcross;
    },
    get degraded() {
      const { link } = field;
      return [
        ...(link?.restarting ? ["fieldLost"] : []),
        ...(link?.lost ? ["fieldOff"] : []),
        ...(link?.refused === undefined ? [] : ["fieldRefused"]),
      ];
    },
    release() {
      clots.release();
      field.release();
    },
  };
}
