/** `npm run -s compute -- FILE` (or `-`), `--csv`, `--schema`. */
import { readFileSync } from "node:fs";
import { entryAt } from "../sim/checked/present.ts";
import { compute, schemaText } from "../sim/compute/run-request.ts";

const USAGE = "allowed: FILE or - for standard input, with --csv if wanted; or --schema";

function usageFault(found: string): never {
  process.stderr.write(`arguments: found ${found}; ${USAGE}\n`);
  process.exit(2);
}

const tellInPlace = (done: number): void => {
  process.stderr.write(`\r${Math.round(100 * done)} %${done === 1 ? "\n" : ""}`);
};

/** ms between two lines of progress where lines stay, as in a log; a shorter run reports none */
const SELDOM = 5000;

function tellNowAndThen(): (done: number) => void {
  let last = Date.now();
  return (done) => {
    if (Date.now() - last < SELDOM) return;
    last = Date.now();
    process.stderr.write(`progress: ${Math.round(100 * done)} %\n`);
  };
}

async function main(words: readonly string[]): Promise<void> {
  const flags = words.filter((word) => word.startsWith("--"));
  const files = words.filter((word) => !word.startsWith("--"));
  const unknown = flags.find((flag) => flag !== "--csv" && flag !== "--schema");
  if (unknown) usageFault(unknown);
  if (flags.includes("--schema")) {
    process.stdout.write(schemaText());
    return;
  }
  if (files.length !== 1) usageFault(files.length === 0 ? "no file" : files.join(" "));
  let text: string;
  try {
    text = readFileSync(files[0] === "-" ? 0 : entryAt(files, 0), "utf8");
  } catch (error) {
    return usageFault((error as Error).message);
  }
  const progress = process.stderr.isTTY ? tellInPlace : tellNowAndThen();
  const { output, errors, exit } = await compute(text, flags.includes("--csv") ? "csv" : "json", progress);
  for (const line of errors) process.stderr.write(`${line.replaceAll("\n", " ")}\n`);
  process.exitCode = exit;
  process.stdout.write(output);
}

// The reader may stop early (`| head`): that is not an error.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});
await main(process.argv.slice(2));
