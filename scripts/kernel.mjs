// Compiles the vector kernel to a TypeScript module that holds it in hexadecimal, which packs smaller than base64, so that page, worker, single file, command line and tests import it in the same way.
// node scripts/kernel.mjs          writes src/sim/flow-solver/kernel.wasm.ts
// node scripts/kernel.mjs --print  prints the digits instead
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import asc from "assemblyscript/asc";

const source = (name) => fileURLToPath(new URL(`../src/sim/flow-solver/kernel/${name}`, import.meta.url));
const target = fileURLToPath(new URL("../src/sim/flow-solver/kernel.wasm.ts", import.meta.url));
const wasm = "kernel.wasm";

let binary;
const { error, stderr } = await asc.main(
  [
    "time-step-kernel.ts",
    "-o",
    wasm,
    "--runtime",
    "stub",
    "--noAssert",
    "-O3",
    "--enable",
    "simd",
    "--importMemory",
  ],
  {
    readFile: (name) => (existsSync(source(name)) ? readFileSync(source(name), "utf8") : null),
    writeFile: (name, contents) => {
      if (name === wasm) binary = contents;
    },
    listFiles: () => [],
  },
);
if (error) {
  process.stderr.write(`${stderr.toString()}\n${error.message}\n`);
  process.exit(1);
}
const digits = Buffer.from(binary).toString("hex");
if (process.argv.includes("--print")) process.stdout.write(digits);
else
  writeFileSync(
    target,
    `/** The vector kernel (kernel/time-step-kernel.ts) as compiled by \`node scripts/kernel.mjs\`; not edited by hand. */\nexport const KERNEL_WASM =\n  "${digits}";\n`,
  );
