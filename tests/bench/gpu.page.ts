/** The flow on a computer's GPU in the browser: `LUNGWARD_LONG=1 npx playwright test bench/gpu`; where there is only an imitated one, it says so. */
import { expect, test } from "@playwright/test";
import { build } from "vite";

// The page forbids scripts that are not its own.
test.use({ bypassCSP: true });

test("a browser's GPU computes the flow faster than one core", async ({ page }) => {
  test.skip(!process.env.LUNGWARD_LONG, "a bench, not a guard: some minutes");
  test.setTimeout(300_000);
  await page.goto("/");
  const imitated = await page.evaluate(async () => {
    const adapter = await navigator.gpu?.requestAdapter();
    return !adapter || adapter.info.isFallbackAdapter;
  });
  test.skip(imitated, "this browser has no GPU");
  const made = await build({
    configFile: false,
    logLevel: "error",
    build: {
      write: false,
      target: "es2022",
      minify: false,
      lib: { entry: "tests/bench/gpu-page.ts", formats: ["iife"], name: "bench" },
    },
  });
  const [first] = Array.isArray(made) ? made : [made];
  if (!first || !("output" in first)) throw new Error("nothing was built");
  await page.addScriptTag({ content: first.output[0].code });
  const lines = await page.evaluate(async () => {
    const said: string[] = [];
    const { measured } = window as unknown as { measured(say: (line: string) => void): Promise<void> };
    await measured((line) => said.push(line));
    return said;
  });
  console.log(lines.join("\n"));
  const times = lines.flatMap((line) => line.match(/([\d.]+) times/)?.[1] ?? []).map(Number);
  expect(Math.max(...times)).toBeGreaterThan(1);
});
