/** One end of a line to a worker, so that the chain can be wired to real workers, to fakes, or to this very thread. */
export interface Port {
  post(message: unknown, transfer?: Transferable[]): void;
  /** Set by whoever listens; called with what the other end posts. */
  onMessage: (message: unknown) => void;
  /** The other end has died or could not be started. */
  onFailure: (reason: string) => void;
  close(): void;
}

/** A real worker as a port. `start` may throw where workers are forbidden; the port then fails at once. */
export function workerPort(start: () => Worker): Port {
  const port: Port = { post() {}, onMessage() {}, onFailure() {}, close() {} };
  try {
    const worker = start();
    worker.onmessage = ({ data }) => port.onMessage(data);
    worker.onerror = (event) => {
      event.preventDefault?.();
      port.onFailure(event.message || "worker lost");
    };
    worker.onmessageerror = () => port.onFailure("unreadable message");
    port.post = (message, transfer = []) => worker.postMessage(message, transfer);
    port.close = () => worker.terminate();
  } catch (error) {
    queueMicrotask(() => port.onFailure(String(error)));
  }
  return port;
}
