/**
 * How finely a field is solved, chosen by the speed at which it is computed here: finer only where the speed asked for would still be held,
 * coarser where it is not. It knows no clock: what was computed, and how long that took, comes from outside.
 */

/** Cells across the narrowest opening, coarsest first. */
export const RUNGS: readonly number[] = [12, 16, 20, 24];

/** What a second of blood costs grows with the cells across to this power (16 to 28, all pathways): cells and steps, less what a row costs anyhow. */
const GROWTH = 2.6;
/** Blood seconds in a second that a finer grid must hold, however slow the motion asked for: the page opens with it. */
const USUAL = 0.5;
/** Part of its ability that a field is asked for, so that it keeps up. */
export const RESERVE = 0.92;
/** A finer grid must promise that much over what it needs: the drawing beside it takes more as well. */
const MARGIN = 1.12;
/** Part of the speed asked for below which the picture is behind. */
const BEHIND = 0.96;
/** s of blood, a beat and more, after which a finer grid is thought of */
const MEASURED = 1;
/** s of computing on end over which a field that falls behind is judged; then judging starts over */
const JUDGED = 4;

export interface GridLadder {
  /** count across the narrowest opening */
  readonly cellsAcross: number;
  /** New walls: what they are solved on. Those of the same pathway (`again`) keep the grid that has been found, unless fewer cells are asked for than before. None goes beyond `finest`. */
  begin(cellsAcross: number, again: boolean, finest?: number): number;
  /** What flows in has changed: what was too fine may be tried again. */
  changed(): void;
  /** Blood seconds in a second that are to be seen from now on; 0 while nothing moves or nobody looks. */
  ask(speed: number): void;
  /** `passed` s of blood have taken `busy` s: the grid to go on with, where that is another one. */
  note(passed: number, busy: number): number | undefined;
  /** It is laid. */
  laid(cellsAcross: number): void;
}

/** Part by which the ability changes from one grid to another. */
export const costs = (from: number, to: number): number => (from / to) ** GROWTH;

export function gridLadder(rungs = RUNGS): GridLadder {
  let cellsAcross = 0;
  let asFirst = 0;
  let finest = Number.POSITIVE_INFINITY;
  let tooFine = Number.POSITIVE_INFINITY;
  let asked = 0;
  /** the last speed that was asked for while something moved */
  let seen = 0;
  let passed = 0;
  let busy = 0;

  const restart = () => {
    passed = 0;
    busy = 0;
  };
  const changed = () => {
    tooFine = Number.POSITIVE_INFINITY;
    restart();
  };
  /** Speed that the page would show, as far as this computer goes. */
  const shown = (across: number) => (RESERVE * costs(cellsAcross, across) * passed) / busy;

  return {
    get cellsAcross() {
      return cellsAcross;
    },
    begin(first, again, limit = Number.POSITIVE_INFINITY) {
      finest = limit;
      if (!again || first !== asFirst) cellsAcross = again ? Math.min(first, cellsAcross) : first;
      asFirst = first;
      changed();
      return cellsAcross;
    },
    changed,
    ask(speed) {
      if (speed === asked) return;
      asked = speed;
      restart();
      if (speed === 0 || speed === seen) return;
      seen = speed;
      changed();
    },
    note(seconds, spent) {
      if (asked === 0) return undefined;
      passed += seconds;
      busy += spent;
      if (busy <= 0) return undefined;
      const finer = rungs.findLast(
        (across) =>
          across > cellsAcross &&
          across <= finest &&
          across < tooFine &&
          shown(across) >= MARGIN * Math.max(asked, USUAL),
      );
      if (passed >= MEASURED && finer !== undefined) return finer;
      if (busy < JUDGED) return undefined;
      const coarser = rungs.filter((across) => across < cellsAcross);
      const next =
        shown(cellsAcross) < BEHIND * asked
          ? (coarser.findLast((across) => shown(across) >= asked) ?? coarser[0])
          : undefined;
      if (next !== undefined) tooFine = cellsAcross;
      restart();
      return next;
    },
    laid(across) {
      cellsAcross = across;
      restart();
    },
  };
}
