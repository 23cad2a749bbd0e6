/** Who wants the stage's frames, and the calls at each screen frame while anybody does. */

/** How many want something; each leaves by the function that it is given. */
export function counted(onAdd: () => void) {
  let count = 0;
  return {
    any: () => count > 0,
    add() {
      count++;
      onAdd();
      return () => {
        count--;
      };
    },
  };
}

interface ScreenFrames {
  begin(): void;
  /** Ends a rest: the next screen frame is called for. */
  hurry(): void;
}

/** Once begun, calls at each screen frame for as long as it is wanted; `rest`: ms until the next one is of use, 0 = at once. */
export function screenFrames(wanted: () => boolean, turn: () => void, rest: () => number): ScreenFrames {
  let running = false;
  let resting: ReturnType<typeof setTimeout> | undefined;
  const ask = () => {
    resting = undefined;
    requestAnimationFrame(next);
  };
  const next = () => {
    running = wanted();
    if (!running) return;
    const pause = rest();
    if (pause > 0) resting = setTimeout(ask, pause);
    else ask();
    turn();
  };
  const hurry = () => {
    if (resting === undefined) return;
    clearTimeout(resting);
    ask();
  };
  return {
    begin() {
      if (running) hurry();
      else ask();
      running = true;
    },
    hurry,
  };
}
