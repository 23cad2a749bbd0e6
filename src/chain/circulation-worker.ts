/** The circulation's own thread: one question in, one answer out. */
import { solve } from "../sim/circulation/solve.ts";
import { fromName } from "./first-words.ts";
import type { FromCirculation, ToCirculation } from "./worker-messages.ts";

const say = (message: FromCirculation): void => postMessage(message);

const hear = (data: ToCirculation): void => {
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
};

self.addEventListener("message", ({ data }: MessageEvent<ToCirculation>) => hear(data));
setTimeout(() => fromName<ToCirculation>(self.name).forEach(hear));
