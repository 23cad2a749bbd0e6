/** Several circulation workers for one long job: each question goes to the first that is free, from the state it last found. */

import { entryAt } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import { type CirculationLink, circulationLink } from "./circulation-link.ts";
import type { Port } from "./port.ts";

export interface WorkerPool {
  /** workers, and so questions that may usefully be open at once */
  readonly size: number;
  /** An answer that did not settle arrives as it is; rejects when its worker died of it. Call no more than `size` at a time. */
  answer(request: CirculationRequest): Promise<Circulation>;
  /** As the chain looks at its own worker; `now` in s. */
  watch(now: number): void;
  release(): void;
}

export function workerPool(start: () => Port, size: number): WorkerPool {
  const members: { readonly link: CirculationLink; from?: readonly number[]; busy: boolean }[] = Array.from(
    { length: size },
    () => ({ link: circulationLink(start), busy: false }),
  );
  return {
    size,
    answer(request) {
      const member = members.find(({ busy }) => !busy) ?? entryAt(members, 0);
      member.busy = true;
      return new Promise((resolve, reject) => {
        member.link.ask("pool", request, member.from, (reply) => {
          member.busy = false;
          if ("reason" in reply) {
            reject(new Error(reply.reason));
            return;
          }
          if (reply.circulation.run.converged) member.from = reply.circulation.state;
          resolve(reply.circulation);
        });
      });
    },
    watch(now) {
      for (const { link } of members) link.watch(now);
    },
    release() {
      for (const { link } of members) link.release();
    },
  };
}
