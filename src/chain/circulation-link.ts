/** The line to the circulation's worker: one question at a time, the latest for each caller wins, a lost worker is replaced. */

import { present } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import type { Port } from "./port.ts";
import type { FromCirculation, ToCirculation } from "./worker-messages.ts";

/** s: an idle worker answers a ping within this, or is replaced. */
const PING_TIMEOUT = 1.2;
/** s between pings */
const PING_EVERY = 0.5;
/** s: the longest that any solve may take. */
const SOLVE_TIMEOUT = 12;

type Reply = { readonly circulation: Circulation } | { readonly reason: string };

interface Question {
  readonly id: number;
  readonly caller: string;
  readonly request: CirculationRequest;
  readonly from: readonly number[] | undefined;
  readonly reply: (reply: Reply) => void;
}

export interface CirculationLink {
  /** Replaces an unsent question of the same caller, whose reply then never comes. Callers are served in the order of asking. */
  ask(
    caller: string,
    request: CirculationRequest,
    from: readonly number[] | undefined,
    reply: (reply: Reply) => void,
  ): void;
  /** Looks whether the worker lives; called every few tenths of a second. `now` in s. */
  watch(now: number): void;
  /** How often a worker had to be replaced. */
  readonly losses: number;
  /** What is still unanswered is answered with a reason. */
  release(): void;
}

export function circulationLink(start: () => Port): CirculationLink {
  let port: Port | null = null;
  let losses = 0;
  let count = 0;
  let asked: Question | null = null;
  let waiting: Question[] = [];
  /** s on the watch's clock; undefined when nothing is awaited */
  let awaitedSince: number | undefined;
  let pinged = false;
  let lastWatch: number | undefined;
  let lastPing = Number.NEGATIVE_INFINITY;

  const send = (message: ToCirculation) => present(port).post(message);

  const next = () => {
    if (asked || !port) return;
    asked = waiting.shift() ?? null;
    if (!asked) return;
    awaitedSince = undefined;
    pinged = false;
    const { id, request, from } = asked;
    send(from ? { kind: "solve", id, request, from } : { kind: "solve", id, request });
  };

  const hear = (message: FromCirculation) => {
    pinged = false;
    awaitedSince = undefined;
    if (message.kind === "alive" || message.id !== asked?.id) return;
    const { reply } = asked;
    asked = null;
    reply(message.kind === "solved" ? { circulation: message.circulation } : { reason: message.reason });
    next();
  };

  const begin = () => {
    const fresh = start();
    port = fresh;
    fresh.onMessage = (message) => fresh === port && hear(message as FromCirculation);
    fresh.onFailure = (reason) => fresh === port && replace(reason);
    next();
  };

  const replace = (reason = "the solver stopped") => {
    losses++;
    port?.close();
    port = null;
    if (asked) waiting.unshift(asked);
    asked = null;
    pinged = false;
    awaitedSince = undefined;
    // A worker that dies of its question would die again: three times is enough.
    if (losses % 4 === 3) {
      const failed = waiting.shift();
      failed?.reply({ reason });
    }
    begin();
  };

  begin();
  return {
    ask(caller, request, from, reply) {
      waiting = waiting.filter((question) => question.caller !== caller);
      waiting.push({ id: ++count, caller, request, from, reply });
      next();
    },
    watch(now) {
      // After sleep the worker's answer may be queued behind this call: look again next time.
      const slept = lastWatch !== undefined && now - lastWatch > PING_TIMEOUT;
      lastWatch = now;
      if (slept) awaitedSince = undefined;
      if (asked || pinged) {
        awaitedSince ??= now;
        if (now - awaitedSince > (asked ? SOLVE_TIMEOUT : PING_TIMEOUT)) replace();
      } else if (now - lastPing >= PING_EVERY) {
        lastPing = now;
        pinged = true;
        awaitedSince = now;
        send({ kind: "ping" });
      }
    },
    get losses() {
      return losses;
    },
    release() {
      port?.close();
      port = null;
      const open = asked ? [asked, ...waiting] : waiting;
      waiting = [];
      asked = null;
      for (const { reply } of open) reply({ reason: "the solver was released" });
    },
  };
}
