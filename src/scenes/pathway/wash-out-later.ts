/** The wash-out's panel, fetched when the first dye is released: each later moment of the curve draws it anew. */
type Plots = typeof import("../layers/wash-out-plot.ts");

let known: Plots | null = null;
let coming: Promise<void> | null = null;

/** Null until it has been fetched; a fetch that failed is tried again at a later asking. */
export function washOutPlots(): Plots | null {
  if (!known && !coming)
    coming = import("../layers/wash-out-plot.ts").then(
      ({ drawWashOut, washOutPanels }) => {
        known = { drawWashOut, washOutPanels };
      },
      () => {
        coming = null;
      },
    );
  return known;
}
