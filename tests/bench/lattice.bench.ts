/**
 * Cell updates a second: vector kernel and plain sweep in Node and in Chromium, the same step in C at the same vector width and with all
 * the machine has, and what the memory would allow. One table, one run; of many short slices the fastest counts.
 * Run: npx vitest bench --run tests/bench/lattice
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { build } from "vite";
import { bench } from "vitest";
import { plainEngine } from "../../src/sim/lattice/lattice.ts";
import { ARRAYS } from "../../src/sim/lattice/layout.ts";
import {
  copyBandwidth,
  lay,
  plainRate,
  raster,
  SLICE,
  SLICES,
  vectorRate,
  visited,
} from "./lattice-trial.ts";

/** Cell updates a second of the same step compiled by gcc; undefined without a compiler. */
function inC(flags: readonly string[]): number | undefined {
  const folder = mkdtempSync(join(tmpdir(), "lattice-"));
  try {
    execFileSync("gcc", [...flags, "-o", join(folder, "sweep"), "tests/bench/lattice-sweep.c", "-lm"], {
      stdio: "pipe",
    });
  } catch {
    return undefined;
  }
  const lattice = lay(plainEngine(raster.nx * raster.ny));
  const s = lattice.settings;
  const head = Float64Array.of(
    raster.nx,
    raster.ny,
    SLICE,
    s.stepOverCell,
    s.viscosityOverCell,
    s.soundSquared,
    s.soundDamping,
    s.upstream,
    SLICES,
  );
  const file = join(folder, "state");
  writeFileSync(
    file,
    Buffer.concat(
      [head, lattice.spans, ...ARRAYS.map((name) => lattice.arrays[name])].map((array) =>
        Buffer.from(array.buffer, array.byteOffset, array.byteLength),
      ),
    ),
  );
  const least = Number(execFileSync(join(folder, "sweep"), [file], { encoding: "utf8" }));
  const u = new Float64Array(readFileSync(file).buffer.slice(0));
  if (!u.every(Number.isFinite)) throw new Error("the step in C did not stay finite");
  return (visited(lattice) * SLICE) / least;
}

type Page = Window & { lattice: { vector(): number; plain(): number } };

/** The two rates in a browser; undefined where none can be started. */
async function inChromium(): Promise<{ vector: number; plain: number } | undefined> {
  const made = await build({
    configFile: false,
    logLevel: "error",
    build: {
      write: false,
      target: "es2022",
      lib: { entry: "tests/bench/lattice-page.ts", formats: ["iife"], name: "lattice" },
    },
  });
  const [first] = Array.isArray(made) ? made : [made];
  if (!first || !("output" in first)) throw new Error("nothing was built");
  const browser = await chromium
    .launch({
      executablePath: process.env.LUNGWARD_CHROMIUM ?? "/usr/bin/chromium",
      args: ["--no-sandbox", "--disable-gpu"],
    })
    .catch(() => undefined);
  if (!browser) return undefined;
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: first.output[0].code });
    return await page.evaluate(() => {
      const { lattice } = window as unknown as Page;
      return { vector: lattice.vector(), plain: lattice.plain() };
    });
  } finally {
    await browser.close();
  }
}

const now = () => performance.now();

async function table(): Promise<string> {
  const vector = vectorRate(now);
  const browser = await inChromium();
  const rows: [string, number | undefined][] = [
    ["vector kernel (2 doubles wide), Node", vector],
    ["vector kernel, Chromium", browser?.vector],
    ["plain sweep, Node", plainRate(now)],
    ["plain sweep, Chromium", browser?.plain],
    ["C, gcc -O3 (2 doubles wide)", inC(["-O3"])],
    ["C, gcc -O3 -march=native -ffast-math", inC(["-O3", "-march=native", "-ffast-math"])],
    // Each visit reads 24 numbers and writes 6.
    ["limit of memory at 240 bytes a cell, from a measured copy", copyBandwidth(now) / 240],
  ];
  const lines = rows.map(
    ([name, rate]) =>
      `${name.padEnd(60)} ${rate === undefined ? "not here" : `${(rate / 1e6).toFixed(1).padStart(7)} M/s  ${(rate / vector).toFixed(2)}`}`,
  );
  return [
    `${raster.nx} x ${raster.ny} cells, ${visited(lay(plainEngine(raster.nx * raster.ny)))} visited`,
    ...lines,
  ].join("\n");
}

bench(
  "cell updates a second (the table above)",
  async () => {
    console.log(await table());
  },
  { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 },
);
