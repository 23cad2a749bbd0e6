/** Answers beside the panes, kept by request so that a number that compares is computed once. */
import type { Circulation } from "../sim/circulation/answer.ts";
import type { CirculationRequest } from "../sim/request.ts";
import type { CirculationLink } from "./circulation-link.ts";

/** Answers kept; a lesson's steps compare with a dozen states or so. */
const KEPT = 24;

export interface AnswerBook {
  /** An answer that did not settle arrives as it is, with `run.converged` false; when the solver itself is lost the promise waits for the next worker. */
  answer(request: CirculationRequest): Promise<Circulation>;
}

export function answerBook(link: CirculationLink): AnswerBook {
  const kept = new Map<string, Promise<Circulation>>();
  return {
    answer(request) {
      const key = JSON.stringify(request);
      const known = kept.get(key);
      if (known) return known;
      const answer = new Promise<Circulation>((resolve) => {
        link.ask(`answer ${key}`, request, undefined, (reply) => {
          if ("circulation" in reply) resolve(reply.circulation);
          else kept.delete(key);
        });
      });
      kept.set(key, answer);
      const oldest = kept.keys().next().value;
      if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
      return answer;
    },
  };
}
