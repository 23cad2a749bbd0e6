/** The model's answers that a lesson has asked for so far, as a signal: a number appears in the words when its answer comes. */
import { signal } from "@preact/signals";
import type { Chain } from "../../../chain/contract.ts";
import type { Answered } from "../../../lesson/model/situation.ts";
import type { CirculationRequest } from "../../../sim/parameters/request.ts";

type Circulation = Awaited<ReturnType<Chain["answer"]>>;

export interface KnownAnswers {
  /** Asks once; the answer comes when it comes. */
  want(request: CirculationRequest): void;
  /** Resolves when each is there or has failed: the chain says why, and it is asked again the next time. */
  fetch(requests: readonly CirculationRequest[]): Promise<void>;
  /** The answer to exactly this request. */
  readonly exactly: Answered;
  /** As `exactly`; for the panes, the latest answer while a new one is under way, so that words do not flicker under a moving slider. */
  readonly answered: Answered;
  /** Another step's scene is shown: until it is answered, the latest answer is none of its numbers. */
  leave(): void;
}

export function knownAnswers(chain: Chain): KnownAnswers {
  const answers = signal<ReadonlyMap<string, Circulation>>(new Map());
  const asked = new Map<string, Promise<void>>();
  let arrived = false;
  const keyOf = (request: CirculationRequest) => JSON.stringify(request);
  const ask = (request: CirculationRequest): Promise<void> => {
    const key = keyOf(request);
    const known = asked.get(key);
    if (known) return known;
    const arrival = chain.answer(request).then(
      (answer) => {
        answers.value = new Map(answers.peek()).set(key, answer);
      },
      () => {
        asked.delete(key);
      },
    );
    asked.set(key, arrival);
    return arrival;
  };
  const exactly: Answered = (request) => answers.value.get(keyOf(request)) ?? null;
  return {
    want: (request) => void ask(request),
    fetch: async (requests) => {
      await Promise.all(requests.map(ask));
    },
    exactly,
    answered(request) {
      const wanted = keyOf(request);
      const isFirst = keyOf(chain.scene.value.request) === wanted;
      const pane = chain.circulations.value.find((each) => each && keyOf(each.request) === wanted);
      if (pane) {
        arrived ||= isFirst;
        return pane;
      }
      return exactly(request) ?? (isFirst && arrived ? (chain.circulations.value[0] ?? null) : null);
    },
    leave() {
      arrived = false;
    },
  };
}
