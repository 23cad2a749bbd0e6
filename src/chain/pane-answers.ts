/** The circulation of every pane: asked for when its request changes, from the last answer of the same stage on. */
import { batch, computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import type { CirculationLink } from "./circulation-link.ts";
import { type SolvedStates, solvedStates } from "./solved-states.ts";

export interface PaneAnswers {
  /** One for each pane; null until the first answer. */
  readonly circulations: ReadonlySignal<readonly (Circulation | null)[]>;
  /** True while an answer is under way. */
  readonly solving: ReadonlySignal<boolean>;
  /** Keeps the answers of so many panes. */
  keep(count: number): void;
  /** Asks for a pane's circulation where its request has changed. */
  ask(index: number, request: CirculationRequest): void;
  release(): void;
}

/** An answer has come or will not come; `reason`: why there is none. */
export type Heard = (reason: string | undefined) => void;

/** Where a search begins that has no earlier answer to go on from. */
export type FirstStart = (request: CirculationRequest) => readonly number[] | undefined;

/** `heard` is called within a batch with the change that it reports. */
export function paneAnswers(
  solver: CirculationLink,
  heard: Heard,
  firstStart: FirstStart = () => undefined,
  known: SolvedStates = solvedStates(),
): PaneAnswers {
  const circulations = signal<readonly (Circulation | null)[]>([]);
  const open = signal(0);
  const askedKeys: string[] = [];
  const unanswered = new Set<number>();

  const settle = (index: number, key: string, answer: Circulation | undefined, reason?: string) => {
    if (askedKeys[index] !== key) return;
    unanswered.delete(index);
    batch(() => {
      open.value = unanswered.size;
      if (answer) circulations.value = circulations.value.map((old, i) => (i === index ? answer : old));
      heard(reason);
    });
  };

  return {
    circulations,
    solving: computed(() => open.value > 0),
    keep(count) {
      askedKeys.length = Math.min(askedKeys.length, count);
      for (const index of unanswered) if (index >= count) unanswered.delete(index);
      open.value = unanswered.size;
      circulations.value = Array.from({ length: count }, (_, i) => circulations.peek()[i] ?? null);
    },
    ask(index, request) {
      const key = JSON.stringify(request);
      if (askedKeys[index] === key) return;
      askedKeys[index] = key;
      const before = circulations.peek()[index];
      const from = before?.request.stage === request.stage ? before.state : firstStart(request);
      unanswered.add(index);
      open.value = unanswered.size;
      const found = known.find(request);
      if (found) {
        queueMicrotask(() => settle(index, key, found));
        return;
      }
      solver.ask(`pane ${index}`, request, from, (reply) => {
        if ("reason" in reply) {
          settle(index, key, undefined, reply.reason);
          return;
        }
        known.note(reply.circulation);
        const { converged, reason } = reply.circulation.run;
        if (converged) settle(index, key, reply.circulation);
        else settle(index, key, undefined, reason ?? "no periodic answer");
      });
    },
    release() {
      askedKeys.length = 0;
    },
  };
}
