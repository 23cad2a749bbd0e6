import { present } from "../sim/checked/present.ts";
import { asName } from "./first-words.ts";

/** One end of a line to a worker, so that the chain can be wired to real workers, to fakes, or to this very thread. */
export interface Port {
  post(message: unknown, transfer?: Transferable[]): void;
  /** Set by whoever listens; called with what the other end posts. */
  onMessage: (message: unknown) => void;
  /** The other end has died or could not be started. */
  onFailure: (reason: string) => void;
  close(): void;
}

/** A real worker as a port. `start` may fail where workers are forbidden; the port then fails too. What is posted early waits. */
export function workerPort(start: () => Worker | Promise<Worker>): Port {
  const started = (async () => {
    const worker = await start();
    worker.onmessage = ({ data }) => port.onMessage(data);
    worker.onerror = (event) => {
      event.preventDefault?.();
      port.onFailure(event.message || "worker lost");
    };
    worker.onmessageerror = () => port.onFailure("unreadable message");
    return worker;
  })();
  const port: Port = {
    post: (message, transfer = []) => then((worker) => worker.postMessage(message, transfer)),
    onMessage() {},
    onFailure() {},
    close: () => then((worker) => worker.terminate()),
  };
  const then = (call: (worker: Worker) => void) => {
    started.then(call, () => {});
  };
  started.catch((error) => port.onFailure(String(error)));
  return port;
}

/** Starts a worker under a name that {@link asName} made. */
export type Named = (name: string) => Worker | undefined;

/** As {@link workerPort}, but the worker starts with what is said first, once there is its code. */
export function namedPort(code: Named | Promise<Named>): Port {
  let make: Named | null = null;
  let served: Port | null = null;
  let early: unknown[] | null = [];
  const begin = () => {
    if (!make || !early?.length) return;
    const [start, name] = [make, asName(early)];
    early = null;
    served = workerPort(() => present(start(name)));
    served.onMessage = (message) => port.onMessage(message);
    served.onFailure = (reason) => port.onFailure(reason);
  };
  const port: Port = {
    post(message, transfer) {
      if (served) served.post(message, transfer);
      else early?.push(message);
      begin();
    },
    onMessage() {},
    onFailure() {},
    close() {
      early = null;
      served?.close();
    },
  };
  const known = (named: Named) => {
    make = named;
    begin();
  };
  if (code instanceof Promise) code.then(known, (error) => port.onFailure(String(error)));
  else known(code);
  return port;
}

/** The first serves until a better worker is known, which then starts with all that was said so far, but for what was given away. */
export function givingWay(first: Port, better: Promise<Named | null | undefined>): Port {
  let now: Port | null = null;
  let said: unknown[] | null = [];
  const serve = (next: Port) => {
    now = next;
    next.onMessage = (message) => now === next && port.onMessage(message);
    next.onFailure = (reason) => now === next && port.onFailure(reason);
  };
  const port: Port = {
    post(message, transfer = []) {
      if (transfer.length === 0) said?.push(message);
      now?.post(message, transfer);
    },
    onMessage() {},
    onFailure() {},
    close() {
      now?.close();
      now = null;
    },
  };
  serve(first);
  better.then((make) => {
    const worker = now && make?.(asName(said ?? []));
    said = null;
    if (!worker) return;
    now?.close();
    serve(workerPort(() => worker));
  });
  return port;
}
