/**
 * Every step of every lesson in every language, opened one after another in one page: its own words, all its numbers, no fault,
 * nothing cut at three sizes. The picture's shading is switched off, since words are judged here; all else runs as it does.
 */
import { readdirSync, readFileSync } from "node:fs";
import { expect, type Frame, type Page } from "@playwright/test";
import { expectAccessible, watchPage } from "./page.ts";
import { test } from "./resting-field.ts";

type Size = readonly [width: number, height: number];
const SIZES: readonly Size[] = [
  [390, 844],
  [820, 1180],
  [1280, 720],
];
/** Holds each of them. */
const WINDOW = { width: 1280, height: 1180 };

/** Every number in every language, and axe on every step; else in English, and on a step of some lessons. */
const LONG = Boolean(process.env.LUNGWARD_LONG);

interface StepOnPage {
  readonly lesson: string;
  readonly id: string;
  readonly title: string;
}

const languages = readdirSync("lessons", { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

const headings = (language: string, file: string): readonly StepOnPage[] =>
  [...readFileSync(`lessons/${language}/${file}`, "utf8").matchAll(/^## (.*?)\s*\{#([^}]+)\}/gm)].map(
    ([, title, id]) => ({ lesson: file.replace(".md", ""), id: id!, title: title! }),
  );

/** Predictions already made, so that every step opens by its address. */
const progressDone = (steps: readonly StepOnPage[]) => ({
  version: 1,
  lessons: Object.fromEntries(
    [...new Set(steps.map(({ lesson }) => lesson))].map((lesson) => {
      const own = steps.filter((step) => step.lesson === lesson);
      const given = { given: "a", right: false, tries: 1, day: "2026-01-01" };
      const answers = Object.fromEntries(own.map(({ id }) => [id, given]));
      return [lesson, { step: own[0]!.id, seen: [], finished: true, answers, recalled: {} }];
    }),
  ),
});

/** As a link within the page does. */
const go = (page: Page, query: string) =>
  page.evaluate((wanted) => {
    history.pushState(null, "", wanted);
    dispatchEvent(new PopStateEvent("popstate"));
  }, query);

/** The kit in a frame, whose size a step can change without being opened again. */
async function openFrame(page: Page, query: string): Promise<Frame> {
  await page.setViewportSize(WINDOW);
  await page.goto("LICENSE.txt");
  const come = page.waitForEvent("framenavigated", (frame) => frame.parentFrame() !== null);
  await page.evaluate((address) => {
    const frame = Object.assign(document.createElement("iframe"), { src: address });
    frame.style.cssText = "position: fixed; inset: 0; border: 0";
    document.body.replaceChildren(frame);
  }, query);
  return come;
}

/** Goes through the steps inside the page, looks at each in all sizes (in a frame) or as it stands; what is wrong, as text. */
const walk = (
  page: Page | Frame,
  language: string,
  steps: readonly StepOnPage[],
  sizes: readonly Size[],
  numbersToo = false,
): Promise<readonly string[]> =>
  page.evaluate(
    async ({ language, steps, sizes, numbersToo }) => {
      const wrong: string[] = [];
      const until = async (holds: () => boolean): Promise<boolean> => {
        for (const end = performance.now() + 20_000; performance.now() < end; ) {
          if (holds()) return true;
          await new Promise((resolve) => setTimeout(resolve, 4));
        }
        return false;
      };
      const texts = (selector: string, wanted: (element: HTMLElement) => boolean) =>
        [...document.querySelectorAll<HTMLElement>(selector)]
          .filter(wanted)
          .map((element) => element.textContent);
      const resize = ([width, height]: Size) =>
        Object.assign((frameElement as HTMLElement).style, { width: `${width}px`, height: `${height}px` });
      if (sizes[0]) resize(sizes[0]);
      for (const { lesson, id, title } of steps) {
        history.pushState(null, "", `?mode=study&language=${language}&lesson=${lesson}&step=${id}`);
        dispatchEvent(new PopStateEvent("popstate"));
        const waiting = () => texts(".live-number", (each) => /…/.test(each.textContent));
        const heading = () => document.querySelector(".lesson-words h2")?.textContent;
        const come = await until(() => heading() === title && !(numbersToo && waiting().length > 0));
        const look = (wanted: number) => {
          const found = {
            heading: heading() === title ? [] : [heading()],
            width: innerWidth === wanted ? [] : [innerWidth],
            numbers: come ? [] : waiting(),
            cut: texts(
              ".lesson-words :is(p, li, h2, button, label, .note)",
              (each) =>
                each.scrollWidth > each.clientWidth + 1 && getComputedStyle(each).display !== "inline",
            ),
            sideways:
              document.documentElement.scrollWidth > innerWidth ? [document.documentElement.scrollWidth] : [],
            unmarked:
              language === "en" || document.querySelector(".translation-note") ? [] : ["not yet reviewed"],
            keys: document.body.textContent.match(/\[[a-z]+(\.[A-Za-z]+)+\]/g) ?? [],
          };
          for (const [what, list] of Object.entries(found))
            if (list.length > 0) wrong.push(`${lesson} ${id} at ${wanted}: ${what} ${JSON.stringify(list)}`);
        };
        if (sizes.length === 0) look(innerWidth);
        for (const size of sizes) {
          resize(size);
          look(size[0]);
        }
        if (sizes.length > 1) resize(sizes[0]!);
      }
      return wrong;
    },
    { language, steps, sizes, numbersToo },
  );

for (const language of languages) {
  test(`U10 U21 every step of every lesson in ${language} opens with its words and numbers and fits three sizes`, async ({
    page,
  }) => {
    test.setTimeout(LONG ? 1_800_000 : 300_000);
    const files = readdirSync(`lessons/${language}`).filter((name) => name.endsWith(".md"));
    const steps = files.flatMap((file) => headings(language, file));
    const unfaulted = watchPage(page);
    // The scenes are the same in every language: beyond the first one, and after its first size, only words are judged, as if the tab lay behind another.
    const slow = LONG || language === "en";
    const hide = () => Object.defineProperty(document, "hidden", { get: () => true, configurable: true });
    if (!slow) await page.addInitScript(hide);
    await page.addInitScript(
      (progress) => localStorage.setItem("lungward.progress", progress),
      JSON.stringify(progressDone(steps)),
    );
    const start = `./?mode=study&language=${language}&lesson=${steps[0]!.lesson}&step=${steps[0]!.id}`;
    const opened = (where: Page | Frame) =>
      expect(where.locator(".lesson-words h2")).toHaveText(steps[0]!.title, { timeout: 60_000 });
    const frame = await openFrame(page, start);
    await opened(frame);
    const [narrow, ...wider] = SIZES;
    if (slow) {
      expect(await walk(frame, language, steps, [narrow!], true)).toEqual([]);
      if (!LONG) await frame.evaluate(hide);
      expect(await walk(frame, language, steps, wider)).toEqual([]);
      await frame.evaluate(() => localStorage.setItem("lungward.telling", '"technical"'));
      await frame.goto(start);
      if (!LONG) await frame.evaluate(hide);
      expect(await walk(frame, language, steps, [narrow!])).toEqual([]);
    } else expect(await walk(frame, language, steps, SIZES)).toEqual([]);
    const [width, height] = (slow ? narrow : wider.at(-1))!;
    await page.setViewportSize({ width, height });
    await page.goto(start);
    if (!LONG) await page.evaluate(hide);
    await opened(page);
    const firsts = steps.filter(({ lesson }, index) => lesson !== steps[index - 1]?.lesson);
    for (const step of LONG ? steps : slow ? firsts : firsts.slice(0, 2)) {
      expect(await walk(page, language, [step], [])).toEqual([]);
      await expectAccessible(page);
    }
    for (const file of readdirSync(`lessons/${language}/pages`)) {
      await go(page, `?mode=study&language=${language}&page=${file.replace(".md", "")}`);
      const title = /^# (.*)$/m.exec(readFileSync(`lessons/${language}/pages/${file}`, "utf8"))![1]!;
      await expect(page.locator("h1")).toHaveText(title);
      await expect(page.locator(".translation-note")).toHaveCount(language === "en" ? 0 : 1);
      await expectAccessible(page);
    }
    unfaulted();
  });
}
