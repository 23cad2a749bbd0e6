/** The circulation's own thread: one question in, one answer out. */
import { solve } from "../sim/circulation/solve.ts";
import { fittedProcess, QUANTITIES } from "../sim/hydraulics/loss-law/law-set.ts";
import type { FromCirculation, ToCirculation } from "./worker-messages.ts";

const say = (message: FromCirculation): void => postMessage(message);

self.addEventListener("message", ({ data }: MessageEvent<ToCirculation>) => {
  if (data.kind === "ping") {
    say({ kind: "alive" });
    return;
  }
  const { id, request, from } = data;
  try {
    say({ kind: "solved", id, circulation: solve(request, from ? { start: from } : {}) });
  } catch (error) {
    say({ kind: "failed", id, reason: String(error) });
  }
});

/** What every answer takes is made before the first question comes, a part at a time. */
const prepare = ([next, ...later]: readonly (typeof QUANTITIES)[number][] = QUANTITIES) => {
  if (!next) return;
  fittedProcess(next);
  setTimeout(prepare, 0, later);
};
setTimeout(prepare);
