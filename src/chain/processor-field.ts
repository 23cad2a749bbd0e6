/** Fields on the processor, in a piece of their own: the page does not wait for it. */
import FieldWorker from "./field-worker.ts?worker&inline";

/** Starts a worker that computes on the processor, under this name. */
export const processorField = (name: string): Worker => new FieldWorker({ name });
