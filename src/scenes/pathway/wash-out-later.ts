/** The wash-out's panel, fetched when the first dye is released: each later moment of the curve draws it anew. */
type Plots = typeof import("../layers/wash-out-plot.ts");

let known: Plots | null = null;

/** Null until it has been fetched. */
export function washOutPlots(): Plots | null {
  if (!known)
    void import("../layers/wash-out-plot.ts").then(({ drawWashOut, washOutPanels }) => {
      known = { drawWashOut, washOutPanels };
    });
  return known;
}
