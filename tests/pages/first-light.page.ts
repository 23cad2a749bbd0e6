import { expect, type Page, test } from "@playwright/test";
import { solve } from "../../src/sim/circulation/solve.ts";
import { PATHWAY_STAGES, type PathwayStage } from "../../src/sim/parameters/request.ts";
import { writeAddress } from "../../src/state/address.ts";
import { type SceneState, START } from "../../src/state/scene-state.ts";
import { figure, watchPage } from "./page.ts";

test.setTimeout(240_000);
// The flow is as large in a small window, and the processor is left to it.
test.use({ viewport: { width: 640, height: 400 } });

const stateOf = (stage: PathwayStage, dye = 0): SceneState => ({
  ...START,
  request: { ...START.request, stage },
  view: { ...START.view, dye, playSpeed: 1 },
});
const open = (page: Page, state: SceneState) => page.goto(`?mode=bench&state=${writeAddress(state)}`);

test("each pathway opens, and the drop it shows is the one that compute answers", async ({ page }) => {
  const sound = watchPage(page);
  for (const stage of PATHWAY_STAGES) {
    const state = stateOf(stage);
    await open(page, state);
    const shown = await figure(page, "pressureDrop");
    const computed = solve(state.request).pathway.pressureDrop;
    // Both start from other places; the search stops within its tolerance of the same answer.
    expect(Math.abs(shown - computed), `${stage}: ${shown} beside ${computed}`).toBeLessThan(0.005);
  }
  sound();
});

test("dye crosses from the lower vein to the lungs, and leaves the chamber last: measured, not scripted", async ({
  page,
}) => {
  // What is timed is the blood, computed the same whether it is painted or not: until it has settled the picture stands still.
  const washOut = async (stage: PathwayStage): Promise<number> => {
    const state = stateOf(stage);
    await open(page, state);
    await figure(page, "pressureDrop");
    const reading = page.locator("#scene-reading");
    await expect(reading).toContainText(/eddies/, { timeout: 120_000 });
    await page.getByRole("button", { name: "Play" }).click();
    await page.getByRole("button", { name: "Release dye" }).click();
    await expect(reading).toContainText(/dye takes [\d.]+\ss \([\d.]+ to [\d.]+\) to wash out/, {
      timeout: 120_000,
    });
    return Number(/dye takes ([\d.]+)/.exec((await reading.textContent())!)![1]);
  };
  const chamber = await washOut("atriopulmonary");
  const conduit = await washOut("extracardiac");
  expect(conduit).toBeGreaterThan(0.2);
  expect(chamber).toBeGreaterThan(1.1 * conduit);
});
