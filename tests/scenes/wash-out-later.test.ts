/** The wash-out's panel is fetched once, and again after a fetch that failed. */
import { expect, test, vi } from "vitest";

let fetches = 0;
vi.mock("../../src/scenes/layers/wash-out-plot.ts", () => {
  fetches++;
  if (fetches === 1) throw new Error("no connection");
  return { drawWashOut: () => undefined, washOutPanels: () => [] };
});

test("a fetch that failed is tried again at a later asking", async () => {
  const { washOutPlots } = await import("../../src/scenes/pathway/wash-out-later.ts");
  expect(washOutPlots()).toBeNull();
  expect(washOutPlots()).toBeNull();
  await vi.waitFor(() => expect(washOutPlots()).not.toBeNull());
  expect(fetches).toBe(2);
});
