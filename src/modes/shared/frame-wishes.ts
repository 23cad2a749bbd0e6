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

/** Once begun, calls at each screen frame for as long as it is wanted. */
export function screenFrames(wanted: () => boolean, turn: () => void): () => void {
  let running = false;
  const next = () => {
    running = wanted();
    if (!running) return;
    requestAnimationFrame(next);
    turn();
  };
  return () => {
    if (!running) requestAnimationFrame(next);
    running = true;
  };
}
