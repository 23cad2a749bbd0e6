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
