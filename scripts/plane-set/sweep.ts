/** Runs cases by closures on several processes; one JSON line each, written as it ends. */
import { fork } from "node:child_process";
import { appendFileSync } from "node:fs";
import { readSet } from "../three-d/fit-set.ts";
import type { Closure } from "./closure.ts";
import type { Mixing } from "./origin.ts";
import { type PlaneLine, runCase } from "./run-case.ts";

export interface PlaneJob {
  readonly name: string;
  readonly closure: Closure;
  readonly mixings: readonly Mixing[];
  /** cells across the narrowest opening */
  readonly across: number;
}

/** What a child process of the sweep does: jobs in, lines out, until it is let go. */
export function answerJobs(): void {
  const set = new Map(readSet().map((one) => [one.stored.name, one]));
  process.on("message", ({ name, closure, mixings, across }: PlaneJob) => {
    const one = set.get(name);
    if (!one) throw new Error(`${name} is not in the set`);
    process.send?.(runCase(one, closure, mixings, across));
  });
}

/**
 * @param file lines are added to it
 * @param processes count
 * @param until ms since 1970: no job is begun after it
 */
export function sweep(
  jobs: readonly PlaneJob[],
  file: string,
  processes: number,
  until: number,
): Promise<PlaneLine[]> {
  const lines: PlaneLine[] = [];
  let given = 0;
  const work = () =>
    new Promise<void>((resolve, reject) => {
      const child = fork(process.argv[1]!, ["work"]);
      const next = () => {
        const job = Date.now() < until ? jobs[given++] : undefined;
        if (job) child.send(job);
        else child.disconnect();
      };
      child.on("message", (line: PlaneLine) => {
        lines.push(line);
        appendFileSync(file, `${JSON.stringify(line)}\n`);
        next();
      });
      child.on("error", reject);
      child.on("exit", (code, signal) =>
        code === 0 ? resolve() : reject(new Error(`a process ended with ${code ?? signal}`)),
      );
      next();
    });
  return Promise.all(Array.from({ length: processes }, work)).then(() => lines);
}
