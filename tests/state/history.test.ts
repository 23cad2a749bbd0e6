import { describe, expect, it } from "vitest";
import { setParameter, togglePause } from "../../src/state/edit.ts";
import { NO_HISTORY, redo, remember, settle, undo } from "../../src/state/history.ts";
import { START } from "../../src/state/scene-state.ts";

const wide = setParameter("conduitDiameter", 24)(START);
const wider = setParameter("conduitDiameter", 26)(wide);

describe("the history", () => {
  it("goes back and forward to the very same state", () => {
    const history = remember(NO_HISTORY, START, "conduitDiameter");
    const back = undo(history, wide)!;
    expect(back.state).toEqual(START);
    const forward = redo(back.history, back.state)!;
    expect(forward.state).toEqual(wide);
    expect(redo(forward.history, forward.state)).toBeUndefined();
  });

  it("makes one entry of a drag, and a new one after it has ended", () => {
    let history = remember(NO_HISTORY, START, "conduitDiameter");
    history = remember(history, wide, "conduitDiameter");
    expect(history.past).toHaveLength(1);
    history = remember(settle(history), wider, "conduitDiameter");
    expect(history.past).toHaveLength(2);
    expect(undo(history, wider)!.state).toEqual(wider);
  });

  it("forgets the future once something else is done", () => {
    const back = undo(remember(NO_HISTORY, START, "a"), wide)!;
    expect(remember(back.history, START, "b").future).toEqual([]);
  });

  it("keeps pause as it is now: going back never starts a stopped scene", () => {
    const back = undo(remember(NO_HISTORY, START, "a"), togglePause(wide))!;
    expect(back.state.view.paused).toBe(true);
  });

  it("with nothing before has nothing to go back to", () => {
    expect(undo(NO_HISTORY, START)).toBeUndefined();
  });
});
