/**
 * Cell updates a second: vector kernel in both precisions, the earlier one and the plain time step in Node and in Chromium, the same step in
 * C in doubles and with all the machine has, and what the memory would allow. One table, one run; of many short slices the fastest counts.
 * Run: npx vitest bench --run tests/bench/flow-solver
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { build } from "vite";
import { bench } from "vitest";
import { ARRAYS } from "../../src/sim/flow-solver/array-layout.ts";
import { plainEngine } from "../../src/sim/flow-solver/flow-solver.ts";
import { copyBandwidth, lay, mesh, rates, SLICE, SLICES, visited } from "./flow-solver-trial.ts";

/** Cell updates a second of the same step compiled by gcc; undefined without a compiler. */
function inC(flags: readonly string[]): number | undefined {
  const folder = mkdtempSync(join(tmpdir(), "flow-solver-"));
  try {
    execFileSync("gcc", [...flags, "-o", join(folder, "sweep"), "tests/bench/time-step.c", "-lm"], {
      stdio: "pipe",
    });
  } catch {
    return undefined;
  }
  const solver = lay(plainEngine(mesh.nx * mesh.ny));
  const s = solver.settings;
  const head = Float64Array.of(
    mesh.nx,
    mesh.ny,
    SLICE,
    s.dtOverDx,
    s.viscosityOverDx,
    s.soundSpeedSquared,
    s.soundDamping,
    s.upstream,
    SLICES,
  );
  const file = join(folder, "state");
  writeFileSync(
    file,
    Buffer.concat(
      [head, solver.spans, ...ARRAYS.map((name) => solver.arrays[name])].map((array) =>
        Buffer.from(array.buffer, array.byteOffset, array.byteLength),
      ),
    ),
  );
  const least = Number(execFileSync(join(folder, "sweep"), [file], { encoding: "utf8" }));
  const u = new Float64Array(readFileSync(file).buffer.slice(0));
  if (!u.every(Number.isFinite)) throw new Error("the step in C did not stay finite");
  return (visited(solver) * SLICE) / least;
}

type Page = Window & { solver: { measured(): ReturnType<typeof rates> } };

/** The same rates in a browser; undefined where none can be started. */
async function inChromium(): Promise<ReturnType<typeof rates> | undefined> {
  const made = await build({
    configFile: false,
    logLevel: "error",
    build: {
      write: false,
      target: "es2022",
      lib: { entry: "tests/bench/flow-solver-page.ts", formats: ["iife"], name: "solver" },
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
    return await page.evaluate(() => (window as unknown as Page).solver.measured());
  } finally {
    await browser.close();
  }
}

const now = () => performance.now();

async function table(): Promise<string> {
  const node = rates(now);
  const browser = await inChromium();
  const rows: [string, number | undefined][] = [
    ["vector kernel, singles, Node", node.singles],
    ["vector kernel, singles, Chromium", browser?.singles],
    ["vector kernel, doubles, Node", node.doubles],
    ["vector kernel, doubles, Chromium", browser?.doubles],
    ["earlier vector kernel, Node", node.earlier],
    ["earlier vector kernel, Chromium", browser?.earlier],
    ["plain time step, Node", node.plain],
    ["plain time step, Chromium", browser?.plain],
    ["C, gcc -O3 (2 doubles wide)", inC(["-O3"])],
    ["C, gcc -O3 -march=native -ffast-math", inC(["-O3", "-march=native", "-ffast-math"])],
    // Each visit of the kernel in singles reads 28 numbers and writes 8.
    ["limit of memory at 144 bytes a cell, from a measured copy", copyBandwidth(now) / 144],
  ];
  const lines = rows.map(
    ([name, rate]) =>
      `${name.padEnd(60)} ${rate === undefined ? "not here" : `${(rate / 1e6).toFixed(1).padStart(7)} M/s  ${(rate / node.earlier).toFixed(2)}`}`,
  );
  return [
    `${mesh.nx} x ${mesh.ny} cells, ${visited(lay(plainEngine(mesh.nx * mesh.ny)))} visited`,
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
