/** Answers beside the panes, kept by request so that a number that compares is computed once. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import type { CirculationLink } from "./circulation-link.ts";

/** Answers kept; a lesson's steps compare with a dozen states or so. */
const KEPT = 24;

export interface AnswerCache {
  /**
   * An answer that did not settle arrives as it is, with `run.converged` false. A lost solver is replaced and asked again; rejects when
   * that has failed too often or the solver gave a reason, and the next equal request is asked again.
   */
  answer(request: CirculationRequest): Promise<Circulation>;
}

export function answerCache(link: CirculationLink): AnswerCache {
  const kept = new Map<string, Promise<Circulation>>();
  let asked = 0;
  return {
    answer(request) {
      const key = JSON.stringify(request);
      const known = kept.get(key);
      if (known) return known;
      const answer = new Promise<Circulation>((resolve, reject) => {
        // A caller of its own: a question that has left the cache unanswered may not be replaced by an equal one.
        link.ask(`answer ${++asked}`, request, undefined, (reply) => {
          if ("circulation" in reply) {
            resolve(reply.circulation);
            return;
          }
          if (kept.get(key) === answer) kept.delete(key);
          reject(new Error(reply.reason));
        });
      });
      kept.set(key, answer);
      const oldest = kept.keys().next().value;
      if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
      return answer;
    },
  };
}
