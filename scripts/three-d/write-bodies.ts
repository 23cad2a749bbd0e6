/** Every body of the cases once, and the jobs, the most expensive first. */
import { writeFileSync } from "node:fs";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { pipeBody, solidBody, writeBody } from "./body.ts";
import { allCases } from "./cases.ts";
import { bodyName, jobOf, requestOf } from "./jobs.ts";
import { PIPE, pipeJobs } from "./pipe.ts";

export function writeBodies(folder: string, part: number, of: number): void {
  const cases = allCases();
  if (part === 0) {
    const jobs = [...cases.map(jobOf), ...pipeJobs()].sort((a, b) => b.cost - a.cost);
    const line = ({ body, name, keys, cost }: (typeof jobs)[number]) =>
      [cost.toFixed(2), body, name, ...Object.entries(keys).map(([key, value]) => `${key}=${value}`)].join(
        " ",
      );
    writeFileSync(`${folder}/jobs`, `${jobs.map(line).join("\n")}\n`);
    writeBody(`${folder}/pipe`, pipeBody(PIPE.diameter, PIPE.length));
  }
  const bodies = new Map(cases.map((one) => [bodyName(one), one]));
  for (const [name, one] of [...bodies].filter((_, at) => at % of === part)) {
    const { open, openings } = pathwayGeometry(requestOf(one))!;
    writeBody(`${folder}/${name}`, solidBody(open, openings));
  }
}
