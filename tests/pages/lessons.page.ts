import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "@playwright/test";
import { expectAccessible, watchPage } from "./page.ts";

test.use({ reducedMotion: "reduce" });

const SIZES = [
  [1280, 720],
  [820, 1180],
  [390, 844],
] as const;

const languages = readdirSync("lessons", { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

/** English whole and the first lesson of each translation; all of them with LUNGWARD_LONG=1. */
const opened = (language: string, file: string): boolean =>
  Boolean(process.env.LUNGWARD_LONG) || language === "en" || file.startsWith("01-");

for (const language of languages) {
  const files = readdirSync(`lessons/${language}`).filter((name) => name.endsWith(".md"));
  for (const file of files.filter((name) => opened(language, name))) {
    const id = file.replace(".md", "");
    const source = readFileSync(`lessons/en/${file}`, "utf8");
    const steps = [...source.matchAll(/^## .*\{#([^}]+)\}/gm)].map((match) => match[1]!);
    const predictions = source
      .split(/^## /m)
      .filter((step) => /^kind: predict/m.test(step))
      .map((step) => /\{#([^}]+)\}/.exec(step)![1]!);

    test(`U10 every step of ${language} ${id} opens without a fault and fits three sizes`, async ({
      page,
    }) => {
      test.setTimeout(240_000);
      const unfaulted = watchPage(page);
      // Predictions already made, so that every step can be opened by its address.
      const answers = Object.fromEntries(
        predictions.map((step) => [step, { given: "a", right: false, tries: 1, day: "2026-01-01" }]),
      );
      const done = {
        version: 1,
        lessons: { [id]: { step: steps[0], seen: [], finished: true, answers, recalled: {} } },
      };
      await page.addInitScript(
        (progress) => localStorage.setItem("lungward.progress", progress),
        JSON.stringify(done),
      );
      await page.goto(`?setting=study&language=${language}&lesson=${id}&step=${steps[0]}`);
      await expect(page.locator(".lesson-words h2")).toBeVisible({ timeout: 30_000 });
      for (const step of steps) {
        await page.evaluate((query) => {
          history.pushState(null, "", query);
          dispatchEvent(new PopStateEvent("popstate"));
        }, `?setting=study&language=${language}&lesson=${id}&step=${step}`);
        await expect.poll(() => new URL(page.url()).searchParams.get("step")).toBe(step);
        for (const [width, height] of SIZES) {
          await page.setViewportSize({ width, height });
          const found = await page.evaluate(() => ({
            wide: document.documentElement.scrollWidth - innerWidth,
            cut: [
              ...document.querySelectorAll<HTMLElement>(
                ".lesson-words p, .lesson-words h2, .lesson-words button, .lesson-words label",
              ),
            ]
              .filter(
                (element) =>
                  element.scrollWidth > element.clientWidth + 1 &&
                  getComputedStyle(element).display !== "inline",
              )
              .map((element) => element.textContent),
            keys: document.body.textContent.match(/\[[a-z]+(\.[A-Za-z]+)+\]/g),
          }));
          expect(found, `${step} at ${width} x ${height}`).toEqual({
            wide: expect.any(Number),
            cut: [],
            keys: null,
          });
          expect(found.wide).toBeLessThanOrEqual(0);
        }
      }
      await page.setViewportSize({ width: 1280, height: 720 });
      // Every number has come.
      await expect(page.locator(".script .live-number", { hasText: "…" })).toHaveCount(0, {
        timeout: 20_000,
      });
      await expectAccessible(page);
      unfaulted();
    });
  }
}
